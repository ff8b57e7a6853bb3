package dev.lapwright.cli.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.documents.Demos;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.report.Numbers;
import dev.lapwright.track.Track;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ShowCommandTest {
    private static final String CAR = "gt-talvex";

    @TempDir
    private Path folder;

    static Stream<String> demos() {
        return Documents.demos().stream().map(Demos.Document::name);
    }

    /** A number as people read it. */
    private static String shown(double value) {
        return Numbers.plain(value).replace('-', '\u2212');
    }

    private static Run show(String... arguments) {
        Run run = Run.of(Stream.concat(Stream.of("show"), Stream.of(arguments)).toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return run;
    }

    @ParameterizedTest
    @MethodSource("demos")
    void everyDemoIsShownWithinAHundredColumnsAndAsJson(String name) {
        Run run = show(name);
        assertThat(run.out()).isNotBlank();
        assertThat(run.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
        assertThat(JsonTree.object(show(name, "--json").out())).containsKeys("kind", "name");
    }

    @Test
    void aCarShowsEveryAdjustmentWithItsRange() {
        Run run = show(CAR);
        for (Adjustment adjustment : Documents.car(CAR).adjustments()) {
            List<String> words =
                    List.of(run.line(adjustment.name() + " ").strip().split("\\s+"));
            assertThat(words)
                    .contains(shown(adjustment.min()), shown(adjustment.max()), shown(adjustment.standard()))
                    .contains(adjustment.effects().get(0).quantity());
        }
    }

    @Test
    void quantitiesListsEverythingThatCanBeSet() {
        Car car = Documents.car(CAR);
        Run run = show(CAR, "--quantities");
        for (String name : car.quantityNames()) {
            assertThat(run.line(name + " ")).contains(shown(car.value(name)));
        }
        List<Map<String, Object>> quantities = JsonTree.objects(
                JsonTree.object(show(CAR, "--quantities", "--json").out()), "quantities");
        assertThat(quantities.stream().map(q -> q.get("name"))).isEqualTo(car.quantityNames());
    }

    @Test
    void aCircuitShowsItsLengthAndCorners() {
        Track track = Documents.circuit("castelvane");
        Run run = show("castelvane");
        assertThat(run.lines().get(0)).contains(track.name()).contains(Numbers.fixed(track.length(), 0) + " m");
        Map<String, Object> tree = JsonTree.object(show("castelvane", "--json").out());
        for (Map<String, Object> corner : JsonTree.objects(tree, "corners")) {
            assertThat(run.line("T" + Math.round(JsonTree.number(corner, "number")) + " "))
                    .contains((String) corner.get("name"))
                    .contains((String) corner.get("turn"));
        }
    }

    @Test
    void theClimbOfAHillclimbIsItsRiseWhereItNeverFalls() {
        Map<String, Object> tree = JsonTree.object(show("skarnfell", "--json").out());
        double rise = JsonTree.number(tree, "highestM") - JsonTree.number(tree, "lowestM");
        // Uphill all the way, says its description.
        assertThat(JsonTree.number(tree, "climbM")).isEqualTo(rise, within(1e-6));
    }

    @Test
    void aStandingStartIsSaidToBeOne() {
        assertThat(show("skarnfell").line("Start")).contains("standing");
    }

    @Test
    void aSetupIsShownBesideTheStandardSettings() throws IOException {
        Path setup = folder.resolve("setup.json");
        Files.writeString(setup, """
                {"lapwright": "setup/1", "name": "flat", "car": "Talvex GT", "settings": {"rear-wing": 2}}
                """);
        double standard = Documents.car(CAR).adjustment("rear-wing").standard();
        String row = show(setup.toString()).line("rear-wing");
        assertThat(row.strip().split("\\s+"))
                .containsExactly("rear-wing", "deg", "2", shown(standard), "\u2212" + shown(standard - 2));
        assertThat(show(setup.toString(), "--car", CAR).out())
                .isEqualTo(show(setup.toString()).out());
    }

    @Test
    void aSetupForNoDemoCarAsksForItsCar() throws IOException {
        Path setup = folder.resolve("setup.json");
        Files.writeString(setup, """
                {"lapwright": "setup/1", "name": "x", "car": "Unknown", "settings": {"rear-wing": 2}}
                """);
        Run run = Run.of("show", setup.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("--car");
    }

    @Test
    void theDensityOfAStandardDayIsThatOfTheStandard() throws IOException {
        Path day = folder.resolve("day.json");
        Files.writeString(day, "{\"lapwright\": \"conditions/1\", \"name\": \"plain\"}");
        // ISO 2533:1975: 1.225 kg/m³ at sea level.
        assertThat(show(day.toString()).line("Density"))
                .contains("1.2250 kg/m³")
                .contains("100.0 %");
    }

    @Test
    void aFileIsShownAsWhatItsMarkSays() throws IOException {
        Path file = folder.resolve("x.json");
        Files.writeString(file, Documents.demoText(DocumentKind.CIRCUIT, "harrowmere"));
        assertThat(show(file.toString()).out()).isEqualTo(show("harrowmere").out());
        assertThat(show(file.toString(), "--as", "circuit").out())
                .isEqualTo(show("harrowmere").out());
    }

    @Test
    void aFileThatIsNoDocumentOfOursIsRefused() throws IOException {
        Path file = folder.resolve("x.json");
        Files.writeString(file, "{\"name\": \"x\"}");
        Run run = Run.of("show", file.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.err()).contains("lapwright: " + file);
    }

    @Test
    void whatJsonPrintsCanGoToAFile() throws IOException {
        Path out = folder.resolve("car.json");
        Run run = show(CAR, "--json", "--out", out.toString());
        assertThat(Files.readString(out)).isEqualTo(run.out());
    }

    @Test
    void aCircuitIsDrawnAsTheNameOfTheFileEnds() throws IOException {
        Path svg = folder.resolve("map.svg");
        Path png = folder.resolve("map.png");
        Run run = show("harrowmere", "--chart", svg.toString(), "--out", png.toString());
        assertThat(run.out()).contains("Wrote " + svg).contains("Wrote " + png);
        assertThat(Files.readString(svg)).startsWith("<svg").contains("Circuit: Harrowmere", "T3 Needle", "Altitude");
        // The first bytes of every PNG: W3C, Portable Network Graphics, section 5.2.
        assertThat(Files.readAllBytes(png)).startsWith(0x89, 'P', 'N', 'G');
    }

    @Test
    void aFolderGetsTheContentAndOfACircuitTheMap() throws IOException {
        Path circuit = folder.resolve("circuit");
        Path car = folder.resolve("car");
        String json = show("harrowmere", "--json", "--out", circuit.toString()).out();
        assertThat(Files.readString(circuit.resolve("show.json"))).isEqualTo(json);
        assertThat(circuit.resolve("map.svg")).isNotEmptyFile();
        show(CAR, "--out", car.toString());
        assertThat(car).isDirectoryContaining("glob:**show.json").isDirectoryNotContaining("glob:**map.svg");
    }
}
