package dev.lapwright.cli.event;

import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.files.SafeFile;
import dev.lapwright.notebook.Event;
import dev.lapwright.notebook.EventFolder;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Command {@code event new}: the folder of an event, with copies of its documents. */
@Command(
        name = "new",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Begins the notebook of an event: a folder with copies of the documents of car, circuit and day,",
            "and of the setup with which it begins. What is copied may be edited there."
        },
        customSynopsis = "lapwright event new FOLDER --car CAR --circuit CIRCUIT [OPTIONS]",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright event new mine/day --car gt-talvex --circuit castelvane --name \"Test day\"",
            "      Then: lapwright sweep --event mine/day --vary rear-wing"
        })
public final class EventNewCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    public HelpOption help;

    @Parameters(index = "0", paramLabel = "FOLDER", description = "Folder to make; it must not be an event yet.")
    private String folder;

    @Option(
            names = "--car",
            required = true,
            paramLabel = "CAR",
            completionCandidates = DemoNames.Cars.class,
            description = "Car: a file, or the name of a demo.")
    private String car;

    @Option(
            names = "--circuit",
            required = true,
            paramLabel = "CIRCUIT",
            completionCandidates = DemoNames.Circuits.class,
            description = "Circuit or open run: a file, or the name of a demo.")
    private String circuit;

    @Option(
            names = "--conditions",
            paramLabel = "CONDITIONS",
            completionCandidates = DemoNames.Days.class,
            description = "Air, wind and grip: a file, or the name of a demo. Without it: a standard day.")
    private String conditions;

    @Option(
            names = "--setup",
            paramLabel = "SETUP",
            completionCandidates = DemoNames.Setups.class,
            description = "Setup with which it begins: a file, or the name of a demo.")
    private String setup;

    @Option(names = "--name", paramLabel = "NAME", description = "Name of the event; the folder's own if left out.")
    private String name;

    public EventNewCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        Path place = SafeFile.path(folder);
        Path last = place.toAbsolutePath().normalize().getFileName();
        String called = name == null
                ? Documents.nameFrom(last == null ? folder : last.toString())
                : Documents.checkedName("--name", name);
        EventFolder made = EventFolder.create(
                place,
                new EventFolder.Beginning(
                        called,
                        Documents.find(DocumentKind.CAR, car),
                        Documents.find(DocumentKind.CIRCUIT, circuit),
                        Optional.ofNullable(conditions).map(day -> Documents.find(DocumentKind.CONDITIONS, day)),
                        Optional.ofNullable(setup).map(one -> Documents.find(DocumentKind.SETUP, one))));
        Event event = made.read();
        console.line("Began " + event.name() + ": " + event.car().name() + " at "
                + event.track().name() + ", in " + folder);
        console.line("Note runs with 'lapwright event run " + folder + "'; ask with --event " + folder
                + ", or from inside it without.");
        return ExitCode.DONE;
    }
}
