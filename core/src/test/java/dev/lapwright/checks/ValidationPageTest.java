package dev.lapwright.checks;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Isolated;

/**
 * {@code docs/validation.md} is what the checks computed. Runs on its own after the others, so that it finds what they
 * computed; what has not run yet, as when this class runs alone, it runs itself.
 */
@Isolated
class ValidationPageTest {
    private static final Path PAGE = Path.of("..", "docs", "validation.md");
    /** What stands above is written by hand. */
    private static final String MARK = "<!-- What follows is written by ValidationPageTest. -->\n\n";

    private static final String WRITE = "lapwright.writeValidation";

    @Test
    void thePageIsWhatTheChecksComputed() throws ReflectiveOperationException, IOException {
        for (ValidationPage.Section section : ValidationPage.sections()) {
            for (String test : section.tests()) {
                if (!ValidationLog.tests(section.file()).contains(test)) {
                    run(Class.forName(test), section.file());
                }
            }
            assertThat(ValidationLog.tests(section.file()))
                    .as("tests of " + section.file() + " in contents.csv")
                    .containsExactlyInAnyOrderElementsOf(section.tests());
        }
        String generated = new ValidationPage().text();
        String page = Files.readString(PAGE);
        assertThat(page).contains(MARK);
        String byHand = page.substring(0, page.indexOf(MARK) + MARK.length());
        if (Boolean.getBoolean(WRITE)) {
            Files.writeString(PAGE, byHand + generated);
            return;
        }
        assertThat(page.substring(byHand.length()))
                .as(
                        "docs/validation.md is not what the checks computed. See why; if it is right so, write it again with "
                                + "mvn -q -pl core test -Dtest=ValidationPageTest -D" + WRITE + "=true")
                .isEqualTo(generated);
    }

    @Test
    void everyFileOfChecksIsOnThePage() throws IOException {
        List<String> listed = ValidationPage.sections().stream()
                .map(ValidationPage.Section::file)
                .sorted()
                .toList();
        try (Stream<Path> files = Files.list(Path.of("src", "test", "resources", "checks"))) {
            assertThat(files.map(file -> file.getFileName().toString())
                            .filter(name -> !name.equals("contents.csv"))
                            .sorted()
                            .toList())
                    .isEqualTo(listed);
        }
    }

    private static void run(Class<?> test, String file) throws ReflectiveOperationException, IOException {
        Constructor<?> made = test.getDeclaredConstructor();
        made.setAccessible(true);
        for (Method method : test.getDeclaredMethods()) {
            CheckFile annotation = method.getAnnotation(CheckFile.class);
            if (annotation == null || !annotation.value().equals(file)) {
                continue;
            }
            method.setAccessible(true);
            for (CheckRow row : CheckRows.of(annotation)) {
                run(method, made.newInstance(), row);
            }
        }
    }

    private static void run(Method method, Object test, CheckRow row) throws ReflectiveOperationException {
        try {
            method.invoke(test, row);
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof AssertionError missed) {
                throw missed;
            }
            throw e;
        }
    }
}
