package dev.lapwright.cli.event;

import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.Outputs;
import dev.lapwright.notebook.EventFolder;
import dev.lapwright.notebook.EventPack;
import dev.lapwright.results.event.EventReport;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Command {@code event pack}: an event in one file. */
@Command(
        name = "pack",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Packs an event into one file to hand on: all its files with their SHA-256, the version, and the",
            "answers that it gives, which whoever unpacks it can hold theirs against."
        },
        customSynopsis = "lapwright event pack [FOLDER] --out FILE [OPTIONS]",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright event pack mine/day --out mine/day.json",
            "      Then: lapwright event unpack mine/day.json --to there"
        })
public final class EventPackCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    public HelpOption help;

    @Mixin
    private EventPlace place;

    @Option(names = "--out", required = true, paramLabel = "FILE", description = "The .json file to write.")
    private String out;

    @Option(names = "--force", description = "Lets an existing file be overwritten.")
    private boolean force;

    public EventPackCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        Outputs.checkEnding("--out", out, ".json");
        Outputs outputs = new Outputs(force);
        Path file = outputs.file(out);
        EventFolder folder = place.folder();
        Map<String, String> texts = folder.texts();
        String answers = EventPlace.inFull(folder, console).report().json();
        String text = new EventPack(EventReport.version(), texts, answers).text();
        outputs.write(file, writer -> writer.append(text));
        outputs.commit();
        outputs.report(console, false);
        return ExitCode.DONE;
    }
}
