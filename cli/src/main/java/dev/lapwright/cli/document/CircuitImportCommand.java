package dev.lapwright.cli.document;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.cli.study.StudyCommand;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.SafeFile;
import dev.lapwright.report.Report;
import dev.lapwright.results.circuit.CircuitImportReport;
import dev.lapwright.surveys.ImportSource;
import dev.lapwright.surveys.SurveyFile;
import dev.lapwright.surveys.Surveys;
import dev.lapwright.track.Track;
import dev.lapwright.track.survey.ImportChoices;
import dev.lapwright.track.survey.ImportedTrack;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Command {@code circuit import}: a circuit from surveyed points or a logged lap. */
@Command(
        name = "import",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Makes a circuit document from the points of a centre line or from a logged lap, and",
            "reports what was done to them. Reads GeoJSON and GPX 1.1 in degrees (WGS 84), and CSV",
            "with headings in any order: x, y, and if known z, width_left and width_right (or width),",
            "bank and grip; or distance or time, speed, and lateral acceleration; or both, which are fused.",
            "A unit may stand behind a heading, as in speed (km/h). Positions of several laps are pooled."
        },
        customSynopsis = "lapwright circuit import FILE --out FILE [OPTIONS]",
        parameterListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright circuit import thornmere.geojson --out thornmere.json",
            "      Lets the points' own errors choose how much to smooth.",
            "  lapwright circuit import oxhollow.csv --open --smoothing 40 --out oxhollow.json",
            "      An open run, smoothed by hand: what comes and goes within 40 m loses half its height.",
            "  lapwright circuit import brackenfold-lap.csv --out brackenfold.json",
            "      A logged lap. Were its speed headed Pace, --column speed=Pace:km/h would say so."
        })
public final class CircuitImportCommand extends StudyCommand<CircuitImportReport> {
    private static final String AUTO = "auto";

    @Parameters(index = "0", paramLabel = "FILE", description = "The points: a file, or the name of a demo survey.")
    private String file;

    @ArgGroup(validate = false, heading = "%nHow to read the points:%n")
    private final ReadingOptions reading = new ReadingOptions();

    private ImportChoices choices;

    public static final class ReadingOptions {
        @Option(names = "--closed", description = "The end joins the start; so it is if left out.")
        boolean closed;

        @Option(names = "--open", description = "It is an open run, such as a hillclimb.")
        boolean open;

        @Option(
                names = "--smoothing",
                paramLabel = "auto|METRES",
                defaultValue = AUTO,
                description = "Length of waves that lose half their height; 0 goes through all points."
                        + " If left out, the likeliest is taken.")
        String smoothing;

        @Option(
                names = "--elevation-smoothing",
                paramLabel = "auto|METRES",
                defaultValue = AUTO,
                description = "The same for the elevation.")
        String elevationSmoothing;

        @Option(
                names = "--accuracy-m",
                paramLabel = "METRES",
                description = "What the points err by across the line, one standard deviation, where it is known.")
        Double accuracy;

        @Option(
                names = "--corners",
                paramLabel = "N",
                description = "As many corners as a driver counts: smooths as much more or less as gives them.")
        Integer corners;

        @Option(
                names = "--car",
                paramLabel = "CAR",
                defaultValue = "gt-talvex",
                description = "The car whose lap time shows what the points' errors mean; gt-talvex if left out.")
        String car;

        @Option(
                names = "--width-m",
                paramLabel = "METRES",
                defaultValue = "10",
                description = "Width of the whole road where the points have none; 10 if left out.")
        double width;

        @Option(
                names = "--elevation",
                paramLabel = "FILE",
                description = "Takes altitudes from another file: a .csv under distance,z, from the first point on, or"
                        + " positions with elevation, of any kind read here.")
        String elevation;

        @Option(
                names = "--path",
                paramLabel = "road|driven",
                description =
                        "What the line is: the road's own, between its widths, or one that a car drove. If left out,"
                                + " points with times and logs are driven, others the road.")
        String path;

        @Option(names = "--reverse", description = "Drives from the last point to the first.")
        boolean reverse;

        @Option(
                names = "--lap",
                paramLabel = "N",
                description =
                        "Takes the Nth whole lap of a file with several, alone; if left out, the fastest, or the first"
                                + " where no times are known, with positions of up to three like it.")
        Integer lap;

        @Option(
                names = "--column",
                paramLabel = "NAME=HEADING[:UNIT]",
                description = "Says which column of a CSV file holds what; may be repeated.")
        List<String> columns = new ArrayList<>();

        @Option(
                names = "--log",
                description = "Takes speed and lateral acceleration alone, though the file has positions as well.")
        boolean log;

        @Option(
                names = "--right-positive",
                description = "The log counts a right turn's lateral acceleration as positive.")
        boolean rightPositive;

        @Option(names = "--figure-of-eight", description = "The line is meant to cross itself.")
        boolean figureOfEight;
    }

    public CircuitImportCommand(Console console) {
        super(
                console,
                new StudyFiles<>(CircuitImportReport::report)
                        .value("--name", "NAME", "Name of the circuit; the file's if left out.")
                        .text(
                                "circuit.json",
                                told -> DocumentWriter.text(told.imported().track()))
                        .onlyByOption()
                        .option("--out", "Writes the circuit document to a .json file; only reports if left out.")
                        .onScreen("Prints the report for machines, as JSON."));
    }

    @Override
    public void check() {
        if (reading.open && reading.closed) {
            throw new InvalidValueException("--open", "it contradicts --closed", "keep one of them");
        }
        if (reading.open && reading.lap != null) {
            throw new InvalidValueException("--lap", "an open run has no laps", "leave out --open or --lap");
        }
        choices = new ImportChoices(
                !reading.open,
                wavelength("--smoothing", reading.smoothing),
                wavelength("--elevation-smoothing", reading.elevationSmoothing),
                reading.accuracy == null ? OptionalDouble.empty() : OptionalDouble.of(reading.accuracy),
                reading.width,
                reading.reverse,
                reading.figureOfEight,
                whole(reading.corners));
    }

    @Override
    public CircuitImportReport study() {
        SurveyFile read = Surveys.readFile(
                Surveys.find(file),
                reading.columns.stream().map(Surveys::column).toList(),
                reading.log);
        ImportSource source = ImportSource.of(read, choices, whole(reading.lap));
        if (reading.elevation != null) {
            source = source.withElevation(Surveys.find(reading.elevation));
        }
        String name = name();
        if (reading.rightPositive) {
            if (source.log() == null && !source.hasMotion()) {
                throw new InvalidValueException("--right-positive", "the file is no log", "leave it out, or add --log");
            }
            source = source.mirrored();
        }
        ImportedTrack found = source.imported(name, choices);
        ImportedTrack imported = reading.path == null ? found : found.withPath(path(reading.path));
        return CircuitImportReport.of(imported, source, Documents.car(reading.car), reading.car);
    }

    @Override
    public Report report(CircuitImportReport told) {
        return told.report();
    }

    private static Track.Path path(String word) {
        for (Track.Path path : Track.Path.values()) {
            if (path.word().equals(word)) {
                return path;
            }
        }
        throw new InvalidValueException("--path", "'" + word + "' is no kind of path", "give road or driven");
    }

    private String name() {
        String given = files.given("--name");
        if (given != null) {
            return Documents.checkedName("--name", given);
        }
        String plain = SafeFile.path(file).getFileName().toString().replaceFirst("\\.[A-Za-z]+$", "");
        return Documents.nameFrom(plain);
    }

    private static OptionalInt whole(Integer number) {
        return number == null ? OptionalInt.empty() : OptionalInt.of(number);
    }

    private static OptionalDouble wavelength(String option, String text) {
        if (text.equals(AUTO)) {
            return OptionalDouble.empty();
        }
        OptionalDouble number = DecimalText.number(text);
        if (number.isEmpty()) {
            throw new InvalidValueException(
                    option, "'" + text + "' is not a number", "give metres, as in 40, or " + AUTO);
        }
        return number;
    }
}
