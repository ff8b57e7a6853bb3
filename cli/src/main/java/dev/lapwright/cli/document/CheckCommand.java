package dev.lapwright.cli.document;

import dev.lapwright.car.Car;
import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.cli.study.StudyCommand;
import dev.lapwright.documents.Demos;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.files.ColumnChoice;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.files.SafeFile;
import dev.lapwright.inspection.FileKind;
import dev.lapwright.inspection.Inspection;
import dev.lapwright.inspection.InspectionReport;
import dev.lapwright.logs.DrivenLogs;
import dev.lapwright.logs.LapLogs;
import dev.lapwright.report.Report;
import dev.lapwright.surveys.Surveys;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Command {@code check}: what is wrong with files, and what is odd about them. */
@Command(
        name = "check",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Tells what is wrong or hardly true of files, where, and what to do.",
            "Cars, setups, circuits, days, lines, surveys, logs, lap times and pressures. Ends with 2 if a file cannot be used."
        },
        customSynopsis = "lapwright check NAME-OR-FILE... [--as KIND] [OPTIONS]",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright check gt-talvex castelvane",
            "      A car and a circuit: forces that cannot be, values that look like another unit.",
            "  lapwright check castelvane-laps.csv",
            "      A log: jumps of its clock, spikes of speed, distances that speed does not add up to, by line."
        })
public final class CheckCommand extends StudyCommand<List<Inspection>> {
    @Parameters(
            index = "0..*",
            arity = "1..*",
            paramLabel = "NAME-OR-FILE",
            completionCandidates = DemoNames.All.class,
            description = "Files, or names of demos.")
    private List<String> names;

    @ArgGroup(validate = false, heading = "%nWhat they are:%n")
    private final What what = new What();

    private FileKind kind;
    private Car car;
    private List<ColumnChoice> columns;

    public static final class What {
        @Option(
                names = "--as",
                paramLabel = "KIND",
                description =
                        "Which kind of file all of them are: car, setup, circuit, conditions, line, survey, log, times"
                                + " or pressures. Found out if left out.")
        String kind;

        @Option(
                names = "--car",
                paramLabel = "CAR",
                completionCandidates = DemoNames.Cars.class,
                description = "For setups: the car they belong to.")
        String car;

        @Option(
                names = "--column",
                paramLabel = "NAME=HEADING",
                description = "For logs and surveys: which column holds what, as in speed=GPS speed:km/h.")
        List<String> columns = new ArrayList<>();
    }

    public CheckCommand(Console console) {
        super(console, new StudyFiles<>(InspectionReport::of));
        files.json("check.json").out("A file for the findings, .json, or a folder for it.");
    }

    @Override
    public void check() {
        kind = what.kind == null ? null : FileKind.ofWord(what.kind);
        columns = what.columns.stream().map(DrivenLogs::column).toList();
        car = what.car == null ? null : Documents.car(what.car);
    }

    @Override
    public List<Inspection> study() {
        List<Inspection> inspections = new ArrayList<>();
        for (String name : names) {
            try {
                inspections.add(inspected(name, source(name)));
            } catch (LapwrightException e) {
                inspections.add(Inspection.ofNothing(name, e));
            }
        }
        return inspections;
    }

    private Inspection inspected(String name, DocumentSource source) {
        boolean setup = kind == FileKind.SETUP
                || (kind == null && source.text().contains('"' + DocumentKind.SETUP.mark() + '"'));
        if (setup && car == null) {
            throw new InvalidValueException(
                    name, "this is a setup, which means nothing without its car", "say with --car for which car it is");
        }
        return Inspection.of(source, setup ? FileKind.SETUP : kind, car, columns);
    }

    /** A file of that name, or else the demo. */
    private DocumentSource source(String name) {
        if (Files.exists(SafeFile.path(name))) {
            return DocumentSource.ofFile(SafeFile.path(name));
        }
        if (LapLogs.demos().stream().anyMatch(log -> log.fileName().equals(name))) {
            return LapLogs.find(name);
        }
        if (Surveys.demos().stream().anyMatch(survey -> survey.fileName().equals(name))) {
            return Surveys.find(name);
        }
        for (Demos.Document demo : Documents.demos()) {
            if (demo.name().equals(name)) {
                return new DocumentSource(name, Documents.demoText(demo.kind(), name));
            }
        }
        return KindOfDocument.of(name, null).source();
    }

    @Override
    public Report report(List<Inspection> inspections) {
        return InspectionReport.of(inspections);
    }

    @Override
    public int end(List<Inspection> inspections) {
        return inspections.stream().allMatch(Inspection::isUsable) ? ExitCode.DONE : ExitCode.BAD_INPUT;
    }
}
