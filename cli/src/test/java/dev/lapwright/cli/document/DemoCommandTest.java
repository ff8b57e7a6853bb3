package dev.lapwright.cli.document;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.documents.Demos;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoCommandTest {
    @TempDir
    private Path folder;

    @Test
    void everyDemoIsListedUnderItsKind() {
        Run run = Run.of("demo");
        assertThat(run.code()).isZero();
        for (Demos.Document demo : Documents.demos()) {
            assertThat(run.lines()).contains("Demo " + demo.kind().folder());
            assertThat(run.line(demo.name() + " ")).contains(demo.title());
        }
    }

    @Test
    void theListIsThereForMachines() {
        Map<String, Object> tree = JsonTree.object(Run.of("demo", "--json").out());
        List<Object> names =
                JsonTree.objects(tree, "demos").stream().map(d -> d.get("name")).toList();
        assertThat(names)
                .isEqualTo(Documents.demos().stream().map(Demos.Document::name).toList());
    }

    @Test
    void aCopyIsTheDemoItself() throws IOException {
        Path to = folder.resolve("mine");
        Run run = Run.of("demo", "gt-talvex", "harrowmere", "--to", to.toString());
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(Files.readString(to.resolve("gt-talvex.json")))
                .isEqualTo(Documents.demoText(DocumentKind.CAR, "gt-talvex"));
        assertThat(run.out()).contains("Wrote " + to.resolve("harrowmere.json"));
        assertThat(to).isDirectoryNotContaining("glob:**castelvane*");
    }

    @Test
    void aCopyLapsLikeTheDemo() {
        Path to = folder.resolve("mine");
        assertThat(Run.of("demo", "gt-talvex", "harrowmere", "--to", to.toString())
                        .code())
                .isZero();
        Run copy = Run.of(
                "lap",
                to.resolve("gt-talvex.json").toString(),
                to.resolve("harrowmere.json").toString(),
                "--json");
        assertThat(copy.out())
                .isEqualTo(Run.of("lap", "gt-talvex", "harrowmere", "--json").out());
    }

    @Test
    void allAreCopiedAtOnce() {
        Path to = folder.resolve("all");
        assertThat(Run.of("demo", "--all", "--out", to.toString()).code()).isZero();
        for (Demos.Document demo : Documents.demos()) {
            assertThat(to.resolve(demo.name() + ".json")).isNotEmptyFile();
        }
    }

    @Test
    void anEditedCopyIsNotOverwritten() throws IOException {
        Files.writeString(folder.resolve("gt-talvex.json"), "edited");
        Run run = Run.of("demo", "harrowmere", "gt-talvex", "--to", folder.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("gt-talvex.json").contains("--force");
        assertThat(folder.resolve("gt-talvex.json")).hasContent("edited");
        assertThat(folder.resolve("harrowmere.json")).doesNotExist();
        assertThat(Run.of("demo", "gt-talvex", "--to", folder.toString(), "--force")
                        .code())
                .isZero();
    }
}
