package dev.lapwright.cli.document;

import dev.lapwright.car.Car;
import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.Outputs;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.cli.study.StudyCommand;
import dev.lapwright.documents.Demos;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.report.Report;
import dev.lapwright.results.CircuitReport;
import dev.lapwright.results.StoredLineReport;
import dev.lapwright.results.car.CarReport;
import dev.lapwright.results.car.ConditionsReport;
import dev.lapwright.results.car.QuantitiesReport;
import dev.lapwright.results.car.SetupReport;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Command {@code show}: what a document contains. */
@Command(
        name = "show",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Shows what a car, setup, circuit, conditions or line document contains."},
        customSynopsis = "lapwright show NAME-OR-FILE [--as KIND] [OPTIONS]",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright show gt-talvex",
            "      The car's key figures and its adjustments: what can be set, within which range.",
            "  lapwright show castelvane --chart castelvane.svg",
            "      The circuit's length, climb, widths, sectors and corners; and its map as a picture."
        })
public final class ShowCommand extends StudyCommand<ShowCommand.Shown> {
    @Parameters(
            index = "0",
            paramLabel = "NAME-OR-FILE",
            completionCandidates = DemoNames.All.class,
            description = "The document: a file, or the name of a demo.")
    private String name;

    @ArgGroup(validate = false, heading = "%nWhat to show:%n")
    private final What what = new What();

    private KindOfDocument found;

    public static final class What {
        @Option(
                names = "--as",
                paramLabel = "KIND",
                completionCandidates = KindOfDocument.Words.class,
                description =
                        "Which kind of document it is: car, setup, circuit, conditions or line. Found out if left out.")
        String kind;

        @Option(names = "--quantities", description = "Of a car: all quantities with unit, range and value.")
        boolean quantities;

        @Option(
                names = "--car",
                paramLabel = "CAR",
                completionCandidates = DemoNames.Cars.class,
                description = "For a setup: the car it belongs to. A demo car that it fits if left out.")
        String car;
    }

    /**
     * A document and what is said of it.
     *
     * @param stations of a circuit, to be drawn; null of anything else
     */
    record Shown(Report report, Stations stations) {}

    public ShowCommand(Console console) {
        super(console, new StudyFiles<>(Shown::report));
        files.json("show.json")
                .chart("map.svg", shown -> CircuitCharts.map(shown.stations()))
                .onlyIf(() -> found.kind() == DocumentKind.CIRCUIT)
                .option("--chart", "Of a circuit: draws its map, altitude and curvature as .svg or .png.")
                .out("A folder for everything: the content and, of a circuit, the map. Or one file, by its"
                        + " ending: .json for the content, .svg or .png for the map.");
    }

    /** Which options mean anything hangs on the kind of document. */
    @Override
    public void check() {
        found = KindOfDocument.of(name, what.kind);
        if (what.quantities) {
            checkMeant("--quantities", DocumentKind.CAR);
        }
        if (what.car != null) {
            checkMeant("--car", DocumentKind.SETUP);
        }
        if (files.given("--chart") != null) {
            checkMeant("--chart", DocumentKind.CIRCUIT);
        }
        String out = files.given("--out");
        if (out != null && (Outputs.isNamed(out, ".svg") || Outputs.isNamed(out, ".png"))) {
            checkMeant("--out " + out, DocumentKind.CIRCUIT);
        }
    }

    /** Refuses an option that is for another kind of document. */
    private void checkMeant(String option, DocumentKind meant) {
        if (found.kind() != meant) {
            throw new InvalidValueException(
                    option,
                    "it is for a " + meant.word() + ", but " + name + " is a "
                            + found.kind().word() + " document",
                    "leave it out");
        }
    }

    @Override
    public Shown study() {
        DocumentSource source = found.source();
        return switch (found.kind()) {
            case CAR -> {
                Car car = Documents.car(source);
                yield new Shown(what.quantities ? QuantitiesReport.of(car) : CarReport.of(car), null);
            }
            case SETUP -> {
                Car car = what.car == null ? carOf(source) : Documents.car(what.car);
                yield new Shown(SetupReport.of(car, Documents.setup(source, car)), null);
            }
            case CIRCUIT -> {
                Stations stations = Documents.circuit(source).stations(StationSpacing.DEFAULT);
                yield new Shown(CircuitReport.of(stations), stations);
            }
            case CONDITIONS -> new Shown(ConditionsReport.of(Documents.conditions(source)), null);
            case LINE -> new Shown(StoredLineReport.of(Documents.line(source)), null);
        };
    }

    /** The first demo car that a setup fits. */
    private static Car carOf(DocumentSource setup) {
        for (Demos.Document demo : Documents.demos()) {
            if (demo.kind() == DocumentKind.CAR) {
                Car car = Documents.car(demo.name());
                try {
                    Documents.setup(setup, car);
                    return car;
                } catch (DocumentException fault) {
                    // Another car's setup.
                }
            }
        }
        throw new InvalidValueException(
                setup.name(), "this setup fits no demo car as it stands", "say with --car for which car it is");
    }

    @Override
    public Report report(Shown shown) {
        return shown.report();
    }
}
