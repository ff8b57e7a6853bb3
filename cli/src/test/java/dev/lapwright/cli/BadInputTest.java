package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever is wrong, the command says where, what and what to do, ends with 2 and leaves files alone. */
class BadInputTest {
    private static final String CAR = "gt-talvex";
    private static final String CIRCUIT = "harrowmere";

    @TempDir
    private Path folder;

    private Path car;
    private Path circuit;

    @BeforeEach
    void copyDocuments() throws IOException {
        car = folder.resolve("car.json");
        circuit = folder.resolve("circuit.json");
        Files.writeString(car, Documents.demoText(DocumentKind.CAR, CAR));
        Files.writeString(circuit, Documents.demoText(DocumentKind.CIRCUIT, CIRCUIT));
    }

    private void change(Path file, String pattern, String replacement) throws IOException {
        String before = Files.readString(file);
        String after = before.replaceFirst(pattern, replacement);
        assertThat(after).as("the pattern must be found").isNotEqualTo(before);
        Files.writeString(file, after);
    }

    private Run lap(String... more) {
        return Run.of(Stream.concat(Stream.of("lap", car.toString(), circuit.toString()), Stream.of(more))
                .toArray(String[]::new));
    }

    /** The one line of the error, whose three parts are there. */
    private static String error(Run run) {
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.errorLines()).hasSize(1);
        String line = run.errorLines().get(0);
        assertThat(line)
                .matches("lapwright: .+: .+; .+")
                .doesNotContain("Exception")
                .doesNotContain("\tat ");
        return line;
    }

    /** The folders of Linux's processes take no new ones, not even from root. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "brief gt-talvex harrowmere --out",
                "optimise gt-talvex harrowmere --over rear-wing --out",
                "lap gt-talvex harrowmere --out",
                "ride gt-talvex --out"
            })
    void aFolderThatCannotBeMadeIsFoundBeforeTheWork(String command) {
        Assumptions.assumeTrue(Files.isDirectory(Path.of("/proc/self")));
        Run run = Run.of((command + " /proc/none/results").split(" "));
        assertThat(error(run)).contains("/proc/none/results: ", "in /proc");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "lap                                            | CAR is missing          | lapwright lap CAR CIRCUIT",
                "lap gt-talvex                                  | CIRCUIT is missing      | lapwright lap CAR CIRCUIT",
                "lap gt-talvex harrowmere more                  | one argument too many   | lap --help",
                "lapp gt-talvex harrowmere                      | no such command         | perhaps you meant lap",
                "lap gt-talvex harrowmere --tarce x.csv         | no such option          | perhaps you meant --trace",
                "sweep --varry rear-wing gt-talvex harrowmere   | no such option          | perhaps you meant --vary",
                "--versoin                                      | no such option          | perhaps you meant --version",
                "lap gt-talvex harrowmere --trace               | value is missing        | --trace FILE",
                "lap gt-talvex harrowmere --grip much           | is not a number         | lap --help",
                "sweep gt-talvex harrowmere --vary rear-wing --threads two | is not a whole number | sweep --help",
                "completion fish                                | is not one of           | bash, zsh",
                "help lapp                                      | no such command         | perhaps you meant lap",
                "lap gt-talvx harrowmere                        | neither a file nor a demo car | gt-talvex",
                "lap gt-talvex harowmere                        | neither a file nor a demo circuit | harrowmere",
                "lap no-such.json harrowmere                    | no such file            | check",
                "lap gt-talvex harrowmere --setup nowhere.json  | no such file            | check",
                "lap gt-talvex harrowmere --conditions nowhere.json | no such file        | check",
                "lap gt-talvex harrowmere -s rear-wing          | it has no value         | name=value",
                "lap gt-talvex harrowmere -s =3                 | it has no name          | name=value",
                "lap gt-talvex harrowmere -s rear-wing=99       | outside the range       | allowed: 0 deg to 12 deg",
                "lap gt-talvex harrowmere -s rear-wnig=3        | no adjustment or quantity | perhaps you meant rear-wing",
                "lap gt-talvex harrowmere -s rear-wing=flat     | is not a number         | write a number",
                "lap gt-talvex harrowmere -s rear-wing=3kg      | not measured in 'kg'    | deg or rad",
                "lap gt-talvex harrowmere -s rear-wing=3blobs   | not measured in 'blobs' | deg or rad",
                "lap gt-talvex harrowmere -s chassis.massKg=1   | outside its range       | allowed: 50 to 40000",
                "lap gt-talvex harrowmere -s conditions.gripp=1 | not one of them         | perhaps you meant conditions.grip",
                "lap gt-talvex harrowmere --air-temp-c 99       | outside its range       | allowed: -40 to 60 degC",
                "lap gt-talvex harrowmere --grip NaN            | not a number            | lap --help",
                "lap gt-talvex harrowmere --wind-kmh 900        | outside its range       | allowed: 0 to 144",
                "lap gt-talvex harrowmere --altitude-m 99999    | outside its range       | allowed: -400 to 6000",
                "lap gt-talvex harrowmere --altitude-m 1 --air-pressure-hpa 900 | already given | keep one",
                "evidence castelvane-wings.csv --predicted-s 1e308 | outside its range   | allowed: -3600 to 3600",
                "lap gt-talvex harrowmere --trace x.txt         | kind is not known       | .csv or .json",
                "lap gt-talvex harrowmere --chart x.bmp         | kind is not known       | .svg or .png",
                "lap gt-talvex harrowmere --against nothing     | neither a file nor a demo setup | demo setups",
                "lap gt-talvex harrowmere --against rear-wing=  | it has no value         | name=value",
                "sweep gt-talvex harrowmere                     | there is nothing to vary | --vary NAME=first:last:step",
                "sweep gt-talvex harrowmere --vary rear-wing=   | nothing to sweep        | first:last:step",
                "sweep gt-talvex harrowmere --vary rear-wing=,  | nothing to sweep        | first:last:step",
                "sweep gt-talvex harrowmere --vary rear-wing=5:1:1 | never leads from 5 to 1 | towards the last",
                "sweep gt-talvex harrowmere --vary rear-wing=1:5:0 | a step of 0          | towards the last",
                "sweep gt-talvex harrowmere --vary rear-wing=1:5:NaN | is not a number    | first:last:step",
                "sweep gt-talvex harrowmere --vary rear-wing=1:2:3:4 | too many colons    | first:last:step",
                "sweep gt-talvex harrowmere --vary rear-wing=1::1  | a value is missing   | first:last:step",
                "sweep gt-talvex harrowmere --vary rear-wing=0:20:1 | outside the range   | allowed: 0 deg to 12 deg",
                "sweep gt-talvex harrowmere --vary rear-wing=0:12:1e-9 | a million values | longer step",
                "sweep gt-talvex harrowmere --vary chassis.massKg | no range of its own   | first:last:step",
                "sweep gt-talvex harrowmere --vary chassis.massKg=1000:1100 | step is missing | first:last:step",
                "sweep gt-talvex harrowmere --vary rear-wnig=1,2 | no adjustment or quantity | perhaps you meant rear-wing",
                "sweep gt-talvex harrowmere --vary rear-wing=1deg,2rad | several units    | in one",
                "sweep gt-talvex harrowmere --vary rear-wing --vary rear-wing | swept twice | once",
                "sweep gt-talvex harrowmere --vary rear-wing --vary rear-bar --vary front-bar | 3 things | once or twice",
                "sweep gt-talvex harrowmere --vary rear-wing --threads 0 | below 1         | 1 or more",
                "show nothing                                   | neither a file nor a demo | lapwright demo",
                "show gt-talvx                                  | neither a file nor a demo | perhaps you meant gt-talvex",
                "show nothing.json                              | no such file            | check",
                "show gt-talvex --as bicycle                    | no such kind            | car, setup, circuit, conditions",
                "show harrowmere --quantities                   | it is for a car         | leave it out",
                "show gt-talvex --chart x.svg                   | it is for a circuit     | leave it out",
                "show gt-talvex --out x.png                     | it is for a circuit     | leave it out",
                "show harrowmere --chart x.pdf                  | kind is not known       | .svg or .png",
                "lap gt-talvex harrowmere --out lap.txt         | kind is not known       | a folder in /",
                "sweep gt-talvex harrowmere --vary rear-wing --out sweep.xlsx | kind is not known | .json",
                "show gt-talvex --out x.csv                     | kind is not known       | .json",
                "demo nothing                                   | no demo of that name    | lapwright demo",
                "demo --to somewhere                            | nothing is named        | --all",
            })
    void aMistakeInTheCommandIsOneClearLine(String command, String what, String remedy) {
        String error = error(Run.of(command.strip().split(" +")));
        assertThat(error).contains(what.strip()).contains(remedy.strip());
    }

    @Test
    void brokenJsonIsToldWithItsLine() throws IOException {
        change(car, "\"chassis\"\\s*:", "\"chassis\"");
        assertThat(error(lap())).contains(car.toString()).contains("line ");
    }

    @Test
    void aMissingFieldIsNamed() throws IOException {
        change(car, "\"massKg\"\\s*:\\s*[0-9.]+\\s*,", "");
        assertThat(error(lap())).contains(car.toString()).contains("massKg");
    }

    @Test
    void aFieldOutOfRangeIsNamedWithItsRange() throws IOException {
        change(car, "\"massKg\"\\s*:\\s*[0-9.]+", "\"massKg\": -5");
        assertThat(error(lap())).contains("chassis.massKg").contains("-5").contains("50");
    }

    @Test
    void anUnknownFieldIsRefusedWithASuggestion() throws IOException {
        change(car, "\"massKg\"", "\"masKg\": 3, \"massKg\"");
        assertThat(error(lap())).contains("masKg").contains("massKg");
    }

    @Test
    void severalFaultsHaveALineEach() throws IOException {
        change(car, "\"massKg\"\\s*:\\s*[0-9.]+", "\"massKg\": -5");
        change(car, "\"cgHeightM\"\\s*:\\s*[0-9.]+", "\"cgHeightM\": \"low\"");
        Run run = lap();
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.errorLines())
                .hasSize(2)
                .allSatisfy(line -> assertThat(line)
                        .startsWith("lapwright: " + car)
                        .contains("line ")
                        .contains("; "));
    }

    @Test
    void veryManyFaultsAreCutShort() throws IOException {
        List<String> fields = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            fields.add("\"zzUnknown" + i + "\": 1");
        }
        change(car, "\\{", "{" + String.join(", ", fields) + ",");
        Run run = lap();
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errorLines()).hasSize(21).last().asString().contains("30 more");
    }

    @Test
    void aCircuitThatDoesNotCloseSaysByHowMuch() throws IOException {
        change(circuit, "\"lengthM\"\\s*:\\s*([0-9.]+)", "\"lengthM\": 1$1");
        assertThat(error(lap())).contains(circuit.toString()).matches(".*[0-9.]+ m.*");
    }

    @Test
    void aCarThatCannotClimbIsTold() {
        assertThat(error(Run.of("lap", CAR, "skarnfell", "-s", "engine.powerScale=0.01")))
                .contains("; ");
    }

    /** A run from rest through a left turn that leans to its outside. */
    private Path leaning(double bankDeg) throws IOException {
        Path file = folder.resolve("leaning.json");
        Files.writeString(file, """
                {"lapwright": "circuit/1", "name": "Leaning", "closed": false,
                 "segments": [{"type": "straight", "lengthM": 200, "bankDeg": 0},
                              {"type": "arc", "radiusM": 60, "turn": "left", "angleDeg": 90, "bankDeg": %s}]}
                """.formatted(-bankDeg));
        return file;
    }

    @Test
    void aCarThatWouldTipWhereItStandsIsRefused() throws IOException {
        change(car, "\"cgHeightM\"\\s*:\\s*[0-9.]+", "\"cgHeightM\": 1.9");
        // Half the track over the height of the centre of gravity, 0.84 m / 1.9 m, is the tangent of 24 degrees.
        assertThat(error(Run.of("lap", car.toString(), leaning(30).toString())))
                .contains("would roll over")
                .contains("chassis.cgHeightM");
        assertThat(Run.of("lap", car.toString(), leaning(5).toString()).code()).isZero();
    }

    @Test
    void aTradeOffOfATrackWithoutCornersIsRefusedBeforeAnyLap() throws IOException {
        Path chart = folder.resolve("t.svg");
        Path file = folder.resolve("straight.json");
        Files.writeString(file, """
                {"lapwright": "circuit/1", "name": "Strip", "closed": false,
                 "segments": [{"type": "straight", "lengthM": 500}]}
                """);
        String straight = file.toString();
        assertThat(error(Run.of("sweep", CAR, straight, "--vary", "rear-wing=2,8", "--trade-off", chart.toString())))
                .contains("no corners");
        assertThat(chart).doesNotExist();
        Path out = folder.resolve("out");
        Run run = Run.of("sweep", CAR, straight, "--vary", "rear-wing=2,8", "--out", out.toString());
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(out).isDirectoryContaining("glob:**lap-time.svg").isDirectoryNotContaining("glob:**trade-off.svg");
    }

    @Test
    void aDocumentOfAnotherKindIsTold() {
        assertThat(error(Run.of("lap", circuit.toString(), car.toString())))
                .contains("car")
                .contains("circuit");
    }

    @Test
    void aFolderIsNoDocument() {
        assertThat(error(Run.of("lap", folder.toString(), CIRCUIT))).contains("folder");
    }

    @Test
    void anEmptyFileIsNoDocument() throws IOException {
        Files.writeString(car, "");
        error(lap());
    }

    @Test
    void anExistingFileIsNotOverwritten() throws IOException {
        Path trace = folder.resolve("trace.csv");
        Files.writeString(trace, "precious");
        assertThat(error(lap("--trace", trace.toString())))
                .contains("exists already")
                .contains("--force");
        assertThat(trace).hasContent("precious");
        assertThat(lap("--trace", trace.toString(), "--force").code()).isZero();
        assertThat(Files.readString(trace)).startsWith("distanceM,");
    }

    @Test
    void anExistingFileInTheFolderStopsAllOthers() throws IOException {
        Path out = Files.createDirectory(folder.resolve("out"));
        Files.writeString(out.resolve("gg.svg"), "precious");
        assertThat(error(lap("--out", out.toString()))).contains("gg.svg");
        assertThat(out).isDirectoryNotContaining("glob:**lap.json");
        assertThat(out.resolve("gg.svg")).hasContent("precious");
    }

    @Test
    void outputsAreCheckedBeforeTheDocuments() throws IOException {
        Files.writeString(car, "not a car");
        assertThat(error(lap("--trace", folder.resolve("no/such/trace.csv").toString())))
                .contains("does not exist");
    }

    @Test
    void aFolderBelowAFileCannotBeMade() throws IOException {
        Path file = folder.resolve("file");
        Files.writeString(file, "precious");
        assertThat(error(lap("--out", file.resolve("out").toString()))).contains("is a file, not a folder");
        assertThat(file).hasContent("precious");
    }

    @Test
    void anOutputWithoutANameIsRefused() {
        assertThat(error(lap("--out", ""))).contains("name is empty");
        assertThat(error(lap("--trace", ""))).contains("kind is not known");
    }

    @Test
    void twoOutputsIntoOneFileAreRefused() {
        String file = folder.resolve("lap.svg").toString();
        assertThat(error(lap("--chart", file, "--out", file))).contains("two outputs");
    }

    @Test
    void aFolderWithoutPermissionIsTold() throws IOException {
        Assumptions.assumeFalse(System.getProperty("user.name").equals("root"), "root may write anywhere");
        Path closed = Files.createDirectory(folder.resolve("closed"));
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("r-xr-xr-x"));
        assertThat(error(lap("--trace", closed.resolve("t.csv").toString()))).contains("you may not write");
        assertThat(error(lap("--out", closed.resolve("out").toString()))).contains("you may not make");
    }

    @Test
    void aSetupOfAnotherCarIsRefused() throws IOException {
        Path setup = folder.resolve("setup.json");
        Files.writeString(setup, """
                {"lapwright": "setup/1", "name": "x", "car": "Some Other Car", "settings": {"rear-wing": 3}}
                """);
        assertThat(error(lap("--setup", setup.toString()))).contains("Some Other Car");
    }

    @Test
    void theTraceOfAFaultIsPrintedOnlyWithDebug() {
        Run plain = Run.of("lap", "nothing", CIRCUIT);
        Run debug = Run.of("lap", "nothing", CIRCUIT, "--debug");
        assertThat(plain.err()).doesNotContain("\tat ");
        assertThat(debug.code()).isEqualTo(2);
        assertThat(debug.err()).contains("\tat ");
        assertThat(debug.errorLines().get(0)).isEqualTo(plain.errorLines().get(0));
    }
}
