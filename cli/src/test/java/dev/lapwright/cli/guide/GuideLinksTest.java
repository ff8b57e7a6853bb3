package dev.lapwright.cli.guide;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.ShownCommands;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Links between the pages lead somewhere, headings included. */
class GuideLinksTest {
    private static final Path TOP = Path.of("..");
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)\\s]+)\\)");

    static Stream<Path> pages() throws IOException {
        List<Path> pages = new ArrayList<>(
                List.of(TOP.resolve("README.md"), TOP.resolve("DEVELOPERS.md"), TOP.resolve("tracks-demo/README.md")));
        pages.addAll(ShownCommands.pages());
        return pages.stream();
    }

    @ParameterizedTest
    @MethodSource("pages")
    void everyLinkLeadsSomewhere(Path page) throws IOException {
        List<String> dead = new ArrayList<>();
        for (MatchResult match : LINK.matcher(prose(page)).results().toList()) {
            String link = match.group(1);
            if (!link.contains(":") && !leads(page, link)) {
                dead.add(link);
            }
        }
        assertThat(dead).isEmpty();
    }

    private static boolean leads(Path page, String link) throws IOException {
        int mark = link.indexOf('#');
        String file = mark < 0 ? link : link.substring(0, mark);
        Path target = file.isEmpty() ? page : page.resolveSibling(file);
        if (!Files.exists(target)) {
            return false;
        }
        return mark < 0
                || prose(target)
                        .lines()
                        .filter(line -> line.startsWith("#"))
                        .anyMatch(line -> anchor(line).equals(link.substring(mark + 1)));
    }

    /** Without what is fenced off as code or output. */
    private static String prose(Path page) throws IOException {
        return Files.readString(page).replaceAll("(?ms)^ *```.*?^ *```$", "");
    }

    /** As sites that show Markdown make it of a heading: small letters, no signs but hyphens, those for spaces. */
    private static String anchor(String heading) {
        return heading.replaceFirst("#+ ", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N} _-]", "")
                .replace(' ', '-');
    }
}
