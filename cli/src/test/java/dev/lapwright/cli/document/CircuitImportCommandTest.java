package dev.lapwright.cli.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.documents.Documents;
import dev.lapwright.track.Track;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CircuitImportCommandTest {
    @TempDir
    private Path folder;

    private static Run run(String... arguments) {
        List<String> all = new ArrayList<>(List.of("circuit", "import"));
        all.addAll(List.of(arguments));
        return Run.of(all.toArray(String[]::new));
    }

    /** A circle of 100 m in steps of 2 degrees, from some angle to another. */
    private String circle(String name, int from, int to) throws IOException {
        StringBuilder csv = new StringBuilder("x,y\n");
        for (int a = from; a < to; a += 2) {
            csv.append(String.format(
                    Locale.ROOT, "%.6f,%.6f%n", 100 * Math.cos(Math.toRadians(a)), 100 * Math.sin(Math.toRadians(a))));
        }
        Path file = folder.resolve(name);
        Files.writeString(file, csv.toString(), StandardCharsets.UTF_8);
        return file.toString();
    }

    @Test
    void anImportedCircuitCanBeLapped() {
        String out = folder.resolve("thornmere.json").toString();
        Run run = run("thornmere.geojson", "--name", "Thornmere", "--out", out);
        assertThat(run.code()).as(run.err()).isZero();
        Track track = Documents.circuit(out);
        assertThat(track.name()).isEqualTo("Thornmere");
        assertThat(track.isClosed()).isTrue();
        assertThat(Run.of("lap", "gt-talvex", out).code()).isZero();
    }

    /**
     * The script that made the demo's points gave them errors of 0.2 m in each direction and 0.15 m in altitude, on a line
     * 2362.5 m long with a smallest radius of 16.8 m. From 295 points a deviation is known to 1/sqrt(590) = 4 %, four times
     * that; length to 0.2 sqrt(8 m · ∫κ²ds), with ∫κ²ds about 0.1 per metre 0.2 m, and a hilly road is up to 0.5 m longer.
     */
    @Test
    void theDemosErrorsAreFoundAgain() {
        Map<String, Object> report =
                JsonTree.object(run("thornmere.geojson", "--json").out());
        assertThat((double) report.get("noiseM")).isCloseTo(0.2, within(0.032));
        assertThat((double) report.get("lengthM")).isCloseTo(2362.5, within(1.5));
        assertThat((double) report.get("totalTurningDeg")).isCloseTo(360, within(1e-6));
        assertThat(report.get("warnings")).isEqualTo(List.of());
        Map<?, ?> elevation = (Map<?, ?>) report.get("elevation");
        assertThat((double) elevation.get("noiseM")).isCloseTo(0.15, within(0.024));
    }

    /**
     * The same for the second demo: errors of 0.25 m and 0.2 m on a line 3213.5 m long on the plan. From 357 points a
     * deviation is known to 1/sqrt(714) = 3.7 %, four times that; the length to 0.25 sqrt(9 m · 0.226 per metre) = 0.36 m, four
     * times that and 0.7 m for the hills.
     */
    @Test
    void theErrorsOfTheSecondDemoAreFoundAgain() {
        Map<String, Object> report =
                JsonTree.object(run("brackenfold.geojson", "--json").out());
        assertThat((double) report.get("noiseM")).isCloseTo(0.25, within(0.037));
        assertThat((double) report.get("lengthM")).isCloseTo(3213.5, within(2.2));
        assertThat((double) report.get("totalTurningDeg")).isCloseTo(-360, within(1e-6));
        assertThat(report.get("warnings")).isEqualTo(List.of());
        Map<?, ?> elevation = (Map<?, ?>) report.get("elevation");
        assertThat((double) elevation.get("noiseM")).isCloseTo(0.2, within(0.03));
    }

    private String file(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.writeString(file, text, StandardCharsets.UTF_8);
        return file.toString();
    }

    /** Laps of a circle of 100 m at 25 m/s, each a little faster than the one before, as a logger writes them. */
    private static String log(int laps) {
        StringBuilder csv = new StringBuilder("Time (s),Lap,Speed (km/h),G Lat\n");
        double time = 0;
        for (int lap = 1; lap <= laps; lap++) {
            double speed = 25 + 0.1 * lap;
            int samples = 400;
            for (int i = 0; i < samples; i++) {
                csv.append(String.format(
                        Locale.ROOT,
                        "%.5f,%d,%.4f,%.5f%n",
                        time,
                        lap,
                        3.6 * speed,
                        1.02 * speed * speed / 100 / 9.80665));
                time += 200 * Math.PI / samples / speed;
            }
        }
        return csv.toString();
    }

    /** A gain of 2 % turns by 2 % of a round too far, 7.2°; the step to the start is the mean one, which is the true one. */
    @Test
    void aLoggedLapBecomesACircuitAndTheReportSaysHowItWasClosed() throws IOException {
        String out = folder.resolve("log.json").toString();
        Run run = run(file("log.csv", log(1)), "--out", out);
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.line("Closing")).contains("turned 7.2 deg too much");
        assertThat(run.line("Columns")).contains("time from 'Time (s)' in s; speed from 'Speed (km/h)' in km/h");
        // Rounding of the digits in the file.
        assertThat(Documents.circuit(out).length()).isCloseTo(200 * Math.PI, within(0.1));
    }

    /**
     * The demo's log has a gain of 2 %, 7.2° of a round, and errors of 0.4 m/s² and 0.3 km/h. Over 1632 samples 0.05 s apart at
     * 39 m/s they turn by 0.4 · 0.05/39 · sqrt(1632) rad = 1.2° and lengthen by 0.083 · 0.05 · sqrt(1632) m = 0.17 m; four times
     * both. The lap was driven on the import of the demo's points, 3212.9 m long, whose slopes it does not show; that a step
     * more belongs to the round than the samples span costs up to 3 m.
     */
    @Test
    void theDemosLoggedLapGivesTheCircuitBack() {
        Map<String, Object> report =
                JsonTree.object(run("brackenfold-lap.csv", "--json").out());
        Map<?, ?> log = (Map<?, ?>) report.get("log");
        assertThat((double) log.get("headingErrorDeg")).isCloseTo(-7.2, within(4.8));
        double length = (double)
                JsonTree.object(run("brackenfold.geojson", "--json").out()).get("lengthM");
        assertThat((double) report.get("lengthM")).isCloseTo(length, within(3.7));
        assertThat((double) report.get("totalTurningDeg")).isCloseTo(-360, within(1e-6));
    }

    @Test
    void aLogIsADrivenLineAndAnOutlineARoad() throws IOException {
        String log = folder.resolve("driven.json").toString();
        assertThat(run(file("log.csv", log(1)), "--out", log).line("Path")).contains("a line that a car drove");
        Run line = Run.of("line", "gt-talvex", log);
        assertThat(line.code()).isEqualTo(2);
        assertThat(line.err()).contains("is a line that a car drove").hasLineCount(1);
        assertThat(Run.of("circuit", "show", log).line("Path")).contains("a car drove");
        String road = folder.resolve("road.json").toString();
        Run outline = run(circle("c.csv", 0, 360), "--out", road);
        assertThat(outline.line("Path")).contains("the road's own line");
        assertThat(outline.line("Width")).contains("not known: taken as 10.0 m (--width-m)");
        assertThat(Files.readString(Path.of(road))).contains("\"path\": \"road\"");
        assertThat(run(circle("c2.csv", 0, 360), "--path", "driven").line("Path"))
                .contains("a car drove");
        assertThat(run(circle("c3.csv", 0, 360), "--path", "lane").err()).contains("--path: 'lane' is no kind of path");
    }

    @Test
    void altitudesOfASecondFileGoIntoALogToo() throws IOException {
        String heights = file("z.csv", "distance,z\n0,100\n157,110\n314,100\n471,90\n628,100\n");
        Run run = run(file("log.csv", log(1)), "--elevation", heights);
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.line("Elevation")).contains("climbs");
    }

    @Test
    void theCornersADriverCountsAreLookedFor() {
        Run run = run("thornmere.geojson", "--corners", "5");
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out()).containsPattern("5\\s+corners\\s+told|where\\s+5\\s+are\\s+told");
        assertThat(run("thornmere.geojson", "--corners", "6").out()).doesNotContain("told");
    }

    @Test
    void whatIsInDoubtIsShownLater() throws IOException {
        StringBuilder csv = new StringBuilder("x,y\n");
        Random random = new Random(3);
        // An ellipse whose long sides have a radius of 360 m: near the 400 m from which on a bend is no corner.
        for (int i = 0; i < 120; i++) {
            double a = 2 * Math.PI * i / 120;
            csv.append(String.format(
                    Locale.ROOT,
                    "%.2f,%.2f%n",
                    300 * Math.cos(a) + random.nextGaussian(),
                    250 * Math.sin(a) + random.nextGaussian()));
        }
        String out = folder.resolve("ellipse.json").toString();
        assertThat(run(file("ellipse.csv", csv.toString()), "--out", out).code())
                .isZero();
        assertThat(Documents.circuit(out).curvatureDeviation()).isNotEmpty();
        Run show = Run.of(
                "circuit", "show", out, "--chart", folder.resolve("map.svg").toString());
        assertThat(show.code()).as(show.err()).isZero();
        assertThat(Files.readString(folder.resolve("map.svg"))).contains("band of nine in ten");
    }

    @Test
    void columnsThatAreNotReadAreNamed() throws IOException {
        String file = file("log.csv", log(1).replace("Lap,", "Stint,"));
        assertThat(run(file).line("Passed over")).contains("Stint");
    }

    @Test
    void ofALogOfSeveralLapsTheFastestIsTakenOrTheOneAskedFor() throws IOException {
        String file = file("log.csv", log(4));
        assertThat(run(file).line("Lap")).contains("lap 4 of 4 whole laps taken, the fastest");
        assertThat(run(file, "--lap", "2").line("Lap")).contains("lap 2 of 4 whole laps taken, as asked");
        Run refused = run(file, "--lap", "5");
        assertThat(refused.code()).isEqualTo(2);
        assertThat(refused.err())
                .contains("there is no lap 5; 4 whole laps are there")
                .hasLineCount(1);
    }

    @Test
    void aSensorThatCallsARightTurnPositiveCanBeTold() throws IOException {
        String file = file("log.csv", log(1));
        assertThat(run(file).line("Turning")).contains("+360.0 deg");
        assertThat(run(file, "--right-positive").line("Turning")).contains("\u2212360.0 deg");
    }

    @Test
    void aColumnCanBeNamed() throws IOException {
        String file = file("log.csv", log(1).replace("Speed (km/h)", "Tempo"));
        assertThat(run(file).err()).contains("no heading is known for speed").hasLineCount(1);
        assertThat(run(file, "--column", "speed=Tempo:km/h").code()).isZero();
    }

    @Test
    void ofPointsThatGoRoundThreeTimesOneLapIsTakenAndSaid() throws IOException {
        String file = circle("event.csv", -20, 1100);
        Run run = run(file);
        assertThat(run.line("Lap")).contains("lap 1 of 3 whole laps taken, the first; no times are known");
        assertThat(run.line("Turning")).contains("+360.0 deg");
        assertThat(run(file, "--lap", "3").line("Lap")).contains("lap 3 of 3");
        assertThat(run(file, "--open", "--lap", "3").err()).contains("an open run has no laps");
    }

    @Test
    void reversedALeftTurningCircleTurnsRight() throws IOException {
        String file = circle("c.csv", 0, 360);
        assertThat(run(file).line("Turning")).contains("+360.0 deg");
        assertThat(run(file, "--reverse").line("Turning")).contains("\u2212360.0 deg");
    }

    @Test
    void anOpenRunIsOpenAndItsLengthIsThatOfTheArc() throws IOException {
        String file = circle("half.csv", 0, 182);
        Map<String, Object> report = JsonTree.object(
                run(file, "--open", "--smoothing", "0", "--json").out());
        assertThat(report.get("closed")).isEqualTo(false);
        // The natural ends are straighter than the arc and cost (h/r)³ r/50 or so: 1e-4 m; ten times that.
        assertThat((double) report.get("lengthM")).isCloseTo(100 * Math.PI, within(1e-3));
    }

    @Test
    void anExistingFileIsKeptUnlessForced() throws IOException {
        String file = circle("c.csv", 0, 360);
        Path out = folder.resolve("c.json");
        Files.writeString(out, "mine");
        Run refused = run(file, "--out", out.toString());
        assertThat(refused.code()).isEqualTo(2);
        assertThat(Files.readString(out)).isEqualTo("mine");
        assertThat(run(file, "--out", out.toString(), "--force").code()).isZero();
        assertThat(Files.readString(out)).contains("circuit/1");
    }

    @ParameterizedTest
    @CsvSource({
        "--smoothing,much,--smoothing: 'much' is not a number",
        "--smoothing,-3,smoothing (m): -3 is outside its range",
        "--smoothing,NaN,--smoothing: 'NaN' is not a number",
        "--width-m,0,width (m): 0 is outside its range",
        "--out,track.csv,end the name in .json",
        "--name,'',it is blank"
    })
    void faultyOptionsAreRefusedInOneLine(String option, String value, String problem) throws IOException {
        Run run = run(circle("c.csv", 0, 360), option, value);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains(problem).hasLineCount(1);
        assertThat(run.out()).isEmpty();
    }

    @Test
    void anOpenOutlineIsRefusedUnlessOpenIsAsked() throws IOException {
        String file = circle("half.csv", 0, 180);
        Run run = run(file);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("the outline is open").hasLineCount(1);
        assertThat(run(file, "--open").code()).isZero();
    }

    @Test
    void aMissingFileIsToldByName() {
        Run run = run("nowhere.gpx");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("nowhere.gpx: there is no such file");
    }

    @Test
    void aDemoSurveyIsListedAndCopied() {
        assertThat(Run.of("demo").out()).contains("thornmere.geojson", "brackenfold.geojson", "oxhollow.csv");
        assertThat(Run.of("demo", "oxhollow.csv", "--to", folder.toString()).code())
                .isZero();
        assertThat(folder.resolve("oxhollow.csv")).exists();
    }
}
