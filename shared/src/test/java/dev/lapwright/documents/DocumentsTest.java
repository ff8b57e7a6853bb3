package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.car.Car;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Finding documents; the demos are those among the test resources. */
class DocumentsTest {
    @TempDir
    Path folder;

    @Test
    void aDemoGoesByItsName() {
        Car car = Documents.car("test-car");
        assertThat(car.name()).isEqualTo("Least car");
        assertThat(Documents.setup("test-soft", car).settings()).containsEntry("suspension.rear.springNPerMm", 30.0);
        assertThat(Documents.circuit("test-ring").isClosed()).isTrue();
        assertThat(Documents.conditions("warm-day").airTempC()).isEqualTo(28);
    }

    @Test
    void aFileGoesByItsPath() throws IOException {
        Path file = folder.resolve("mine.json");
        Files.writeString(file, Documents.demoText(DocumentKind.CAR, "test-car").replace("Least car", "Mine"));
        assertThat(Documents.car(file.toString()).name()).isEqualTo("Mine");
    }

    @Test
    void faultsOfAFileBeginWithItsPath() throws IOException {
        Path file = Files.writeString(folder.resolve("mine.json"), "{");
        assertThatThrownBy(() -> Documents.car(file.toString())).hasMessageStartingWith(file + ", line 1, column 2: ");
    }

    @Test
    void aMistypedDemoIsSuggested() {
        assertThatThrownBy(() -> Documents.car("test-cra"))
                .isInstanceOf(DocumentException.class)
                .hasMessage("test-cra: there is neither a file nor a demo car of that name; perhaps you meant test-car"
                        + " (demo cars: test-car)");
    }

    @Test
    void withoutANearNameAllDemosAreListed() {
        assertThatThrownBy(() -> Documents.circuit("moon"))
                .hasMessage("moon: there is neither a file nor a demo circuit of that name; demo circuits: test-ring");
    }

    @Test
    void aDemoOfAnotherKindIsNotTaken() {
        assertThatThrownBy(() -> Documents.circuit("test-car")).hasMessageContaining("demo circuit of that name");
    }

    @Test
    void aMistypedFileIsSuggestedFromItsFolder() throws IOException {
        Files.writeString(folder.resolve("my-car.json"), "{}");
        String wanted = folder.resolve("my-cra.json").toString();
        assertThatThrownBy(() -> Documents.car(wanted))
                .hasMessage(wanted + ": there is no such file; perhaps you meant my-car.json");
    }

    @Test
    void aFileInAFolderThatIsNotThereSaysSo() {
        Path nowhere = folder.resolve("nowhere");
        String wanted = nowhere.resolve("car.json").toString();
        assertThatThrownBy(() -> Documents.car(wanted))
                .hasMessage(wanted + ": there is no such file; there is no folder " + nowhere + " either");
    }

    @Test
    void aFolderIsRefused() {
        assertThatThrownBy(() -> Documents.car(folder.toString()))
                .hasMessage(folder + ": this is a folder, not a file; name a file inside it");
    }

    @Test
    void noNameIsRefusedWithTheList() {
        assertThatThrownBy(() -> Documents.car(" "))
                .hasMessage("(no name): there is neither a file nor a demo car of that name; demo cars: test-car");
    }

    @Test
    void aNameThatNoFileCanHaveIsRefused() {
        assertThatThrownBy(() -> Documents.car("a\0b")).isInstanceOf(DocumentException.class);
    }

    @Test
    void demosAreListedWithTitles() {
        assertThat(Documents.demos())
                .contains(new Demos.Document(DocumentKind.CAR, "test-car", "Test car", "A car for tests."))
                .hasSize(4);
    }

    @Test
    void everyDemoOfTheIndexIsThere() {
        for (Demos.Document demo : Documents.demos()) {
            assertThat(Documents.demoText(demo.kind(), demo.name()))
                    .contains("\"" + demo.kind().mark() + "\"");
        }
    }

    @Test
    void withoutDemosAFileIsAskedFor() {
        Demos none = Demos.read(new DocumentSource("index", "{ \"lapwright\": \"index/1\", \"demos\": [] }"));
        assertThatThrownBy(() -> new DocumentFinder(none).find(DocumentKind.CAR, "gt"))
                .hasMessage(
                        "gt: there is neither a file nor a demo car of that name; no demo cars are installed: name a"
                                + " file");
    }

    @Test
    void theKindIsToldByTheMarkAlone() {
        DocumentSource setup = new DocumentSource("x", "{ \"other\": 1, \"lapwright\": \"setup/1\" }");
        assertThat(Documents.kindOf(setup)).isEqualTo(DocumentKind.SETUP);
    }

    @Test
    void aDocumentWithoutAMarkHasNoKind() {
        assertThatThrownBy(() -> Documents.kindOf(new DocumentSource("package.json", "{ \"name\": \"x\" }")))
                .hasMessage(
                        "package.json, line 1: this is not marked as a document of Lapwright; begin it with"
                                + " \"lapwright\": and one of \"car/1\", \"setup/1\", \"circuit/1\", \"conditions/1\", \"line/1\"");
    }
}
