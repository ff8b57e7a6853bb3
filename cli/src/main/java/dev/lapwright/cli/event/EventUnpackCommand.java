package dev.lapwright.cli.event;

import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.files.SafeFile;
import dev.lapwright.notebook.EventFolder;
import dev.lapwright.notebook.EventPack;
import dev.lapwright.results.event.EventReport;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Command {@code event unpack}: an event out of one file, its answers held against those that it was packed with. */
@Command(
        name = "unpack",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Unpacks an event that was handed on as one file. Files that are not what they were when it was",
            "packed are refused; whether the same answers come out is said."
        },
        customSynopsis = "lapwright event unpack FILE --to FOLDER",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {"  lapwright event unpack mine/day.json --to there", "      Then: lapwright event show there"})
public final class EventUnpackCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    public HelpOption help;

    @Parameters(index = "0", paramLabel = "FILE", description = "The packed event.")
    private String file;

    @Option(names = "--to", required = true, paramLabel = "FOLDER", description = "Folder to make.")
    private String to;

    public EventUnpackCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        EventPack pack = EventPack.read(DocumentSource.ofFile(SafeFile.path(file)));
        EventFolder folder = pack.unpack(SafeFile.path(to));
        String answers = EventPlace.inFull(folder, console).report().json();
        console.line("Unpacked " + pack.files().size() + " files into " + to + ", each as it was packed.");
        if (answers.equals(pack.answers())) {
            console.line("The same answers come out.");
        } else if (pack.version().equals(EventReport.version())) {
            console.line("Other answers come out, though the version is the same; 'lapwright event show " + to
                    + "' tells today's.");
        } else {
            console.line("Other answers come out: it was packed by version " + pack.version() + ", this is "
                    + EventReport.version() + "; 'lapwright event show " + to + "' tells today's.");
        }
        return ExitCode.DONE;
    }
}
