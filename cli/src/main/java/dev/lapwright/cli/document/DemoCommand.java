package dev.lapwright.cli.document;

import dev.lapwright.car.Nearest;
import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.Outputs;
import dev.lapwright.cli.output.TerminalReport;
import dev.lapwright.documents.Demos;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.logs.LapLogs;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.surveys.Surveys;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Command {@code demo}: lists the demo documents, or copies them to be edited. */
@Command(
        name = "demo",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Lists the demo documents, or copies them into a folder to be edited.",
            "All are invented; where a CAR or CIRCUIT is asked for, their names do."
        },
        customSynopsis = "lapwright demo [NAME]... [--all] [--to FOLDER] [OPTIONS]",
        parameterListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright demo",
            "      Lists them.",
            "  lapwright demo gt-talvex castelvane --to mine",
            "      Copies a car and a circuit into the folder mine; then: lapwright lap mine/gt-talvex.json castelvane"
        })
public final class DemoCommand implements Callable<Integer> {
    /**
     * A demo file that is no document: a survey or a lap log.
     *
     * @param group under which it is listed
     * @param text of the file
     */
    private record DemoTable(String group, String fileName, String title, String description, String text) {
        static final String SURVEYS = "surveys";
        static final String LOGS = "lap logs";

        static List<DemoTable> all() {
            List<DemoTable> all = new ArrayList<>();
            Surveys.demos()
                    .forEach(survey -> all.add(new DemoTable(
                            SURVEYS, survey.fileName(), survey.title(), survey.description(), survey.text())));
            LapLogs.demos()
                    .forEach(log ->
                            all.add(new DemoTable(LOGS, log.fileName(), log.title(), log.description(), log.text())));
            return all;
        }
    }

    private static final Table<Demos.Document> DOCUMENTS = Table.<Demos.Document>of("Demo documents")
            .value("kind", demo -> demo.kind().word())
            .value("name", Demos.Document::name)
            .value("title", Demos.Document::title)
            .value("description", Demos.Document::description);

    private static final Table<DemoTable> TABLES = Table.<DemoTable>of("Demo tables")
            .value("file", DemoTable::fileName)
            .value("title", DemoTable::title)
            .value("description", DemoTable::description);

    private final Console console;

    @Parameters(
            arity = "0..*",
            paramLabel = "NAME",
            completionCandidates = DemoNames.All.class,
            description = "Documents to copy.")
    private List<String> names = new ArrayList<>();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final Output output = new Output();

    @Mixin
    public HelpOption help;

    public static final class Output {
        @Option(names = "--all", description = "Copies all of them.")
        boolean all;

        @Option(
                names = {"--to", "--out"},
                paramLabel = "FOLDER",
                description = "Where to copy; made if need be. The current folder if left out.")
        String folder;

        @Option(names = "--json", description = "Prints the list for machines, as JSON.")
        boolean json;

        @Option(names = "--force", description = "Lets existing files be overwritten.")
        boolean force;
    }

    public DemoCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        List<Demos.Document> demos = Documents.demos();
        List<DemoTable> tables = DemoTable.all().stream()
                .filter(table -> output.all || names.contains(table.fileName()))
                .toList();
        List<Demos.Document> wanted = wanted(demos, tables);
        if (wanted.isEmpty() && tables.isEmpty()) {
            list(demos);
            return ExitCode.DONE;
        }
        Outputs outputs = new Outputs(output.force);
        Map<Path, Demos.Document> copies = new LinkedHashMap<>();
        for (Demos.Document demo : wanted) {
            copies.put(place(outputs, fileName(demo, wanted)), demo);
        }
        Map<Path, DemoTable> tableCopies = new LinkedHashMap<>();
        for (DemoTable table : tables) {
            tableCopies.put(place(outputs, table.fileName()), table);
        }
        tableCopies.forEach((file, table) -> outputs.write(file, table.text()));
        copies.forEach((file, demo) -> outputs.write(file, Documents.demoText(demo.kind(), demo.name())));
        outputs.commit();
        outputs.report(console, output.json);
        if (output.json) {
            print(wanted, tables);
        }
        return ExitCode.DONE;
    }

    private Path place(Outputs outputs, String fileName) {
        return output.folder == null ? outputs.file(fileName) : outputs.fileIn(output.folder, fileName);
    }

    private List<Demos.Document> wanted(List<Demos.Document> demos, List<DemoTable> tables) {
        if (output.all) {
            return demos;
        }
        List<Demos.Document> wanted = new ArrayList<>();
        List<String> ofTables = tables.stream().map(DemoTable::fileName).toList();
        for (String name : names) {
            if (ofTables.contains(name)) {
                continue;
            }
            List<Demos.Document> named =
                    demos.stream().filter(demo -> demo.name().equals(name)).toList();
            if (named.isEmpty()) {
                String near = Nearest.remedy(
                        name, demos.stream().map(Demos.Document::name).toList());
                throw new InvalidValueException(
                        name,
                        "there is no demo of that name",
                        near.startsWith("perhaps") ? near : "see the list with 'lapwright demo'");
            }
            named.stream().filter(demo -> !wanted.contains(demo)).forEach(wanted::add);
        }
        if (wanted.isEmpty() && tables.isEmpty() && output.folder != null) {
            throw new InvalidValueException(
                    "demo", "nothing is named to copy to " + output.folder, "name some demos, or add --all");
        }
        return wanted;
    }

    /** The demo's name; with its kind where two kinds share the name. */
    private static String fileName(Demos.Document demo, List<Demos.Document> all) {
        boolean shared = all.stream()
                .anyMatch(other -> !other.equals(demo) && other.name().equals(demo.name()));
        return demo.name() + (shared ? "-" + demo.kind().word() : "") + ".json";
    }

    private void list(List<Demos.Document> demos) {
        if (output.json) {
            print(demos, DemoTable.all());
            return;
        }
        Report report = new Report();
        if (demos.isEmpty()) {
            report.line("No demo documents are installed.");
        }
        for (DocumentKind kind : DocumentKind.values()) {
            List<Demos.Document> ofKind =
                    demos.stream().filter(demo -> demo.kind() == kind).toList();
            int width =
                    ofKind.stream().mapToInt(demo -> demo.name().length()).max().orElse(0);
            heading(report, kind.folder(), ofKind.isEmpty());
            for (Demos.Document demo : ofKind) {
                String padding = " ".repeat(width - demo.name().length());
                report.hanging(
                        "  " + demo.name() + padding + "  ", Report.verbatim(demo.title() + ": " + demo.description()));
            }
        }
        for (String group : List.of(DemoTable.SURVEYS, DemoTable.LOGS)) {
            List<DemoTable> tables = ofGroup(DemoTable.all(), group);
            heading(report, group, tables.isEmpty());
            for (DemoTable table : tables) {
                report.hanging("  " + table.fileName() + "  ", table.title() + ": " + table.description());
            }
        }
        TerminalReport.print(console, report);
    }

    private static void heading(Report report, String group, boolean empty) {
        if (empty) {
            return;
        }
        if (!report.blocks().isEmpty()) {
            report.gap();
        }
        report.title("Demo " + group, "");
    }

    private static List<DemoTable> ofGroup(List<DemoTable> tables, String group) {
        return tables.stream().filter(table -> table.group().equals(group)).toList();
    }

    private void print(List<Demos.Document> demos, List<DemoTable> tables) {
        console.text(new Report()
                .field("demos", DOCUMENTS, demos)
                .field("surveys", TABLES, ofGroup(tables, DemoTable.SURVEYS))
                .field("logs", TABLES, ofGroup(tables, DemoTable.LOGS))
                .json());
    }
}
