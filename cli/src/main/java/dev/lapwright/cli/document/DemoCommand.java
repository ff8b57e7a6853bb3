package dev.lapwright.cli.document;

import dev.lapwright.car.Nearest;
import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.Lines;
import dev.lapwright.cli.output.Outputs;
import dev.lapwright.documents.Demos;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.report.JsonLayout;
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

/** The documents that come with Lapwright: lists them, or copies them to be edited. */
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
        boolean first = true;
        for (DocumentKind kind : DocumentKind.values()) {
            List<Demos.Document> ofKind =
                    demos.stream().filter(demo -> demo.kind() == kind).toList();
            if (ofKind.isEmpty()) {
                continue;
            }
            if (!first) {
                console.line();
            }
            first = false;
            console.line(console.bold("Demo " + kind.folder()));
            int width =
                    ofKind.stream().mapToInt(demo -> demo.name().length()).max().orElse(0);
            for (Demos.Document demo : ofKind) {
                String name =
                        "  " + demo.name() + " ".repeat(width - demo.name().length() + 2);
                Lines.print(console, name, name.length(), demo.title() + ": " + demo.description());
            }
        }
        String heading = "";
        for (DemoTable table : DemoTable.all()) {
            if (!table.group().equals(heading)) {
                heading = table.group();
                console.line();
                console.line(console.bold("Demo " + heading));
            }
            String name = "  " + table.fileName() + "  ";
            Lines.print(console, name, name.length(), table.title() + ": " + table.description());
        }
        if (demos.isEmpty()) {
            console.line("No demo documents are installed.");
        }
    }

    private void print(List<Demos.Document> demos, List<DemoTable> tables) {
        List<Object> list = new ArrayList<>();
        for (Demos.Document demo : demos) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("kind", demo.kind().word());
            one.put("name", demo.name());
            one.put("title", demo.title());
            one.put("description", demo.description());
            list.add(one);
        }
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("demos", list);
        tree.put("surveys", trees(tables, DemoTable.SURVEYS));
        tree.put("logs", trees(tables, DemoTable.LOGS));
        console.text(JsonLayout.text(tree));
    }

    private static List<Object> trees(List<DemoTable> tables, String group) {
        List<Object> trees = new ArrayList<>();
        for (DemoTable table : tables) {
            if (table.group().equals(group)) {
                Map<String, Object> one = new LinkedHashMap<>();
                one.put("file", table.fileName());
                one.put("title", table.title());
                one.put("description", table.description());
                trees.add(one);
            }
        }
        return trees;
    }
}
