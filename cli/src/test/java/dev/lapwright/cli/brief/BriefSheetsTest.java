package dev.lapwright.cli.brief;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Chromium;
import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.report.JsonLayout;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;

/** Two sheets of A4 for others than the car of the guide: another discipline, an open run, long names, little to turn. */
@TestInstance(Lifecycle.PER_CLASS)
class BriefSheetsTest {
    private static final String LONG =
            "A name as long as a document may have one, such as people give who write down all";

    private Chromium browser;

    private static Path brief(Path folder, String... more) {
        Run run = Run.of(Stream.concat(
                        Stream.of("brief"),
                        Stream.concat(
                                Stream.of(more),
                                Stream.of("--out", folder.resolve("page.html").toString())))
                .toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return folder.resolve("page.html");
    }

    /** A demo document under the longest name that it may have, of at most so many adjustments, which have long names too. */
    @SuppressWarnings("unchecked")
    private static String longNamed(Path folder, String demo, int adjustments) throws IOException {
        Path copies = folder.resolve("copy-" + demo);
        assertThat(Run.of("demo", demo, "--to", copies.toString()).code()).isZero();
        Path copy;
        try (Stream<Path> files = Files.walk(copies)) {
            copy = files.filter(file -> file.getFileName().toString().equals(demo + ".json"))
                    .findFirst()
                    .orElseThrow();
        }
        Map<String, Object> tree = JsonTree.object(Files.readString(copy));
        tree.put("name", LONG);
        if (tree.get("adjustments") instanceof List<?> all) {
            List<Object> few = new ArrayList<>(all.subList(0, Math.min(adjustments, all.size())));
            few.forEach(one -> ((Map<String, Object>) one).put("label", LONG));
            tree.put("adjustments", few);
        }
        Path file = folder.resolve(demo + "-long.json");
        Files.writeString(file, JsonLayout.text(tree));
        return file.toString();
    }

    @Test
    @Tag("long")
    void longNamesAndLittleToTurn(@TempDir Path folder) throws IOException, InterruptedException {
        Path page = brief(
                folder,
                longNamed(folder, "student-pipit", 3),
                longNamed(folder, "harrowmere", 0),
                "--line",
                "middle",
                "--draws",
                "0");
        assertThat(Files.readString(page)).contains(LONG);
        looksAndPrints(page);
    }

    @Test
    @Tag("long")
    void anOpenRunForACarWithManyAdjustments(@TempDir Path folder) throws IOException, InterruptedException {
        looksAndPrints(brief(folder, "touring-merrow", "skarnfell", "--draws", "20", "--test-laps", "400"));
    }

    private void looksAndPrints(Path page) throws IOException, InterruptedException {
        if (browser == null) {
            browser = new Chromium();
        }
        for (int width : new int[] {320, 360, 1200}) {
            browser.medium(width == 360, false);
            browser.width(width);
            browser.open(page);
            assertThat(browser.faults(Chromium.checks()))
                    .as("%d px wide", width)
                    .isEmpty();
        }
        browser.medium(false, true);
        // The width between the margins of an A4 sheet (ISO 216: 210 mm), 184 mm at 96 px to 25.4 mm.
        browser.width(695);
        browser.open(page);
        assertThat(browser.faults(Chromium.checks())).as("on paper").isEmpty();
        String paper = new String(browser.paper(), StandardCharsets.ISO_8859_1);
        assertThat(Pattern.compile("/Type\\s*/Page\\b").matcher(paper).results())
                .hasSize(2);
    }

    @AfterAll
    void closeTheBrowser() throws IOException {
        if (browser != null) {
            browser.close();
        }
    }
}
