package dev.lapwright.cli.document;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.ResultFiles;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.track.Track;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What a document contains. */
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
public final class ShowCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(
            index = "0",
            paramLabel = "NAME-OR-FILE",
            completionCandidates = DemoNames.All.class,
            description = "The document: a file, or the name of a demo.")
    private String name;

    @ArgGroup(validate = false, heading = "%nWhat to show:%n")
    private final What what = new What();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final Output output = new Output();

    @Mixin
    public HelpOption help;

    public static final class What {
        @Option(
                names = "--as",
                paramLabel = "KIND",
                completionCandidates = KindNames.class,
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

    public static final class Output {
        @Option(
                names = "--chart",
                paramLabel = "FILE",
                description = "Of a circuit: draws its map, altitude and curvature as .svg or .png.")
        String chart;

        @Option(
                names = "--out",
                paramLabel = "FOLDER|FILE",
                description = "A folder for everything: the content and, of a circuit, the map. Or one file, by its"
                        + " ending: .json for the content, .svg or .png for the map.")
        String out;

        @Option(names = "--json", description = "Prints the content for machines, as JSON.")
        boolean json;

        @Option(names = "--force", description = "Lets existing files be overwritten.")
        boolean force;
    }

    public ShowCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        KindOfDocument found = KindOfDocument.of(name, what.kind);
        checkOptions(found.kind());
        ResultFiles<Sheet> files = ShowFiles.plan(output, name, found.kind());
        Sheet sheet = sheet(found.kind(), found.source());
        files.write(sheet);
        if (output.json) {
            console.text(JsonLayout.text(sheet.tree()));
        } else {
            sheet.print(console);
        }
        files.report(console, output.json);
        return ExitCode.DONE;
    }

    private void checkOptions(DocumentKind kind) {
        if (what.quantities) {
            ShowFiles.checkMeant("--quantities", DocumentKind.CAR, name, kind);
        }
        if (what.car != null) {
            ShowFiles.checkMeant("--car", DocumentKind.SETUP, name, kind);
        }
    }

    private Sheet sheet(DocumentKind kind, DocumentSource source) {
        return switch (kind) {
            case CAR -> carSheet(Documents.car(source));
            case SETUP -> SetupSheet.of(source, what.car);
            case CIRCUIT -> circuitSheet(Documents.circuit(source));
            case CONDITIONS -> conditionsSheet(Documents.conditions(source));
            case LINE -> new LineSheet(Documents.line(source));
        };
    }

    private Sheet carSheet(Car car) {
        return what.quantities ? new QuantitiesSheet(car) : new CarSheet(car);
    }

    private static Sheet circuitSheet(Track track) {
        return new CircuitSheet(track);
    }

    private static Sheet conditionsSheet(Conditions conditions) {
        return new ConditionsSheet(conditions);
    }
}
