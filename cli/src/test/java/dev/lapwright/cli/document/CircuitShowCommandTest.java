package dev.lapwright.cli.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.cli.CsvRows;
import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.report.Numbers;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CircuitShowCommandTest {
    @TempDir
    private Path folder;

    private static Run show(String... arguments) {
        Run run = Run.of(Stream.concat(Stream.of("circuit", "show"), Stream.of(arguments))
                .toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return run;
    }

    private static List<Corner> corners(Track track) {
        return track.stations(StationSpacing.DEFAULT).corners();
    }

    @ParameterizedTest
    @ValueSource(strings = {"castelvane", "harrowmere", "skarnfell"})
    void aCircuitIsShownAsTheCommandForAllDocumentsShowsIt(String name) {
        assertThat(show(name).out()).isEqualTo(Run.of("show", name).out());
        assertThat(show(name, "--json").out())
                .isEqualTo(Run.of("show", name, "--json").out());
    }

    @Test
    void everyCornerHasARow() {
        Run run = show("castelvane");
        for (Corner corner : corners(Documents.circuit("castelvane"))) {
            assertThat(run.line(corner.label() + " "))
                    .contains(corner.left() ? "left" : "right")
                    .contains(Numbers.fixed(corner.apex(), 0))
                    .contains(Numbers.fixed(corner.minimumRadius(), 0));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"castelvane", "harrowmere"})
    void aSimpleClosedCircuitTurnsOnceRound(String name) {
        Map<String, Object> tree = JsonTree.object(show(name, "--json").out());
        double turning = JsonTree.number(tree, "turningDeg");
        // Hopf's Umlaufsatz: the tangent of a simple closed curve turns by 2π. Documents may leave a gap of 0.1 deg.
        assertThat(Math.abs(turning)).isEqualTo(360, within(0.1));
        double left = JsonTree.number(tree, "turningLeftDeg");
        // Sums of some thousand angles.
        assertThat(left - JsonTree.number(tree, "turningRightDeg")).isEqualTo(turning, within(1e-6));
    }

    @Test
    void cornersGoToASpreadsheet() throws IOException {
        Path csv = folder.resolve("corners.csv");
        show("harrowmere", "--out", csv.toString());
        List<Map<String, String>> rows = CsvRows.of(Files.readString(csv));
        List<Corner> corners = corners(Documents.circuit("harrowmere"));
        assertThat(rows).hasSameSizeAs(corners);
        for (int i = 0; i < rows.size(); i++) {
            assertThat(rows.get(i))
                    .containsEntry("number", "" + corners.get(i).number())
                    .containsEntry("name", corners.get(i).name())
                    .containsEntry("turn", corners.get(i).left() ? "left" : "right");
            // Nine digits are written.
            assertThat(Double.parseDouble(rows.get(i).get("minimumRadiusM")))
                    .isEqualTo(corners.get(i).minimumRadius(), within(1e-5));
            assertThat(Math.signum(Double.parseDouble(rows.get(i).get("turningDeg"))))
                    .isEqualTo(corners.get(i).left() ? 1 : -1);
        }
    }

    @Test
    void gripIsShownWhereItIsNotOneEverywhere() {
        // The document of Harrowmere gives a stretch another surface.
        Track track = Documents.circuit("harrowmere");
        double least =
                track.points().stream().mapToDouble(TrackPoint::grip).min().orElseThrow();
        assertThat(least).isLessThan(1);
        assertThat(show("harrowmere").line("Grip")).contains(Numbers.fixed(least, 2));
        assertThat(show("harrowmere").line("corner")).endsWith("grip");
    }

    @Test
    void gripOfOneEverywhereIsNotMentioned() throws IOException {
        Path circuit = folder.resolve("circuit.json");
        String plain = Documents.demoText(DocumentKind.CIRCUIT, "harrowmere");
        Files.writeString(circuit, plain.replaceAll("\"grip\": [0-9.]+", "\"grip\": 1"));
        assertThat(show(circuit.toString()).out()).doesNotContain("grip").doesNotContain("Grip");
    }

    @Test
    void mapAndProfileAreDrawn() throws IOException {
        Path map = folder.resolve("map.svg");
        Path profile = folder.resolve("profile.png");
        Run run = show("harrowmere", "--chart", map.toString(), "--profile", profile.toString());
        assertThat(run.out()).contains("Wrote " + map).contains("Wrote " + profile);
        assertThat(Files.readString(map)).contains("Circuit: Harrowmere");
        // The first bytes of every PNG: W3C, Portable Network Graphics, section 5.2.
        assertThat(Files.readAllBytes(profile)).startsWith(0x89, 'P', 'N', 'G');
    }

    @Test
    void aFolderGetsEverything() throws IOException {
        String json = show(
                        "harrowmere", "--json", "--out", folder.resolve("all").toString())
                .out();
        Path all = folder.resolve("all");
        assertThat(Files.readString(all.resolve("circuit.json"))).isEqualTo(json);
        assertThat(all.resolve("corners.csv")).isNotEmptyFile();
        assertThat(all.resolve("map.svg")).isNotEmptyFile();
        assertThat(Files.readString(all.resolve("profile.svg"))).contains("Profile: Harrowmere", "Slope (deg)");
    }

    @Test
    void aCarIsNoCircuit() throws IOException {
        Path car = folder.resolve("car.json");
        Files.writeString(car, Documents.demoText(DocumentKind.CAR, "gt-talvex"));
        Run run = Run.of("circuit", "show", car.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errorLines()).hasSize(1);
    }

    @Test
    void nothingIsOverwrittenUnasked() throws IOException {
        Path csv = folder.resolve("corners.csv");
        Files.writeString(csv, "mine");
        assertThat(Run.of("circuit", "show", "harrowmere", "--out", csv.toString())
                        .code())
                .isEqualTo(2);
        assertThat(Files.readString(csv)).isEqualTo("mine");
        show("harrowmere", "--out", csv.toString(), "--force");
        assertThat(Files.readString(csv)).startsWith("number,");
    }
}
