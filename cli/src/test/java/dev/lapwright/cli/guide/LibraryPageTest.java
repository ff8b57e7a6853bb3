package dev.lapwright.cli.guide;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.api.parallel.Resources;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The page of the library shows what its examples say and print. */
@ResourceLock(Resources.SYSTEM_OUT)
class LibraryPageTest {
    private static final Path DOCS = Path.of("..", "docs");
    private static final String COMMAND = "$ java -cp cli/target/lapwright.jar docs/examples/";

    @TempDir
    private Path folder;

    static List<String> examples() throws IOException {
        try (Stream<Path> files = Files.list(DOCS.resolve("examples"))) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".java"))
                    .map(name -> name.replace(".java", ""))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("examples")
    void theOutputShownIsTheRealOne(String example) throws Exception {
        // An example that writes a file takes its name; the others take none.
        String[] arguments = {folder.resolve("speed.svg").toString()};
        assertThat(printed(example, arguments).strip()).isEqualTo(shown(example));
    }

    @Test
    void theChartIsWrittenWhereItWasAsked() throws Exception {
        Path file = folder.resolve("speed.svg");
        printed("ChartToSvg", file.toString());
        assertThat(file).content().startsWith("<svg").contains("</svg>");
    }

    /** Every block of Java on the page must be in an example, line after line, however it is indented. */
    @Test
    void theCodeShownIsThatOfAnExample() throws Exception {
        Matcher block = Pattern.compile("```java\n(.*?)```", Pattern.DOTALL).matcher(page());
        StringBuilder all = new StringBuilder();
        for (String example : examples()) {
            all.append(flush(Files.readString(DOCS.resolve("examples").resolve(example + ".java"))));
        }
        int count = 0;
        while (block.find()) {
            assertThat(all.toString()).contains(flush(block.group(1)));
            count++;
        }
        assertThat(count).isPositive();
    }

    private static String flush(String code) {
        return code.replaceAll("(?m)^ +", "");
    }

    private static String page() throws IOException {
        return Files.readString(DOCS.resolve("library.md"));
    }

    private static String shown(String example) throws IOException {
        String page = page();
        int command = page.indexOf(COMMAND + example + ".java\n");
        assertThat(command).as("docs/library.md shows " + example).isPositive();
        int start = page.indexOf('\n', command) + 1;
        return page.substring(start, page.indexOf("```", start)).strip();
    }

    private static String printed(String example, String... arguments) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        PrintStream before = System.out;
        try (PrintStream out = new PrintStream(bytes, true, StandardCharsets.UTF_8)) {
            System.setOut(out);
            Class.forName("examples." + example)
                    .getMethod("main", String[].class)
                    .invoke(null, (Object) arguments);
        } finally {
            System.setOut(before);
        }
        return bytes.toString(StandardCharsets.UTF_8);
    }
}
