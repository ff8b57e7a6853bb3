package dev.lapwright.cli.study;

import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.ResultFiles;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.logs.LapLogFile;
import dev.lapwright.logs.LapLogs;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Whether a change shows on the timing screen. */
@Command(
        name = "evidence",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Says from a log of lap times whether a change of setup was real.",
            "Reads CSV with headings in any order: time (1:44.851, or seconds), and if known lap, setup,",
            "run, and flag (out, in, or what spoilt a lap)."
        },
        customSynopsis = {
            "lapwright evidence LOG [--before SETUP] [--after SETUP]",
            "                   [--predicted-s SECONDS | --change NAME=BEFORE:AFTER --car CAR --circuit CIRCUIT]",
            "                   [OPTIONS]"
        },
        parameterListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright evidence castelvane-wings.csv --predicted-s -0.28",
            "      A test of two wings, the old one run again at the end, beside what the model predicted.",
            "  lapwright evidence castelvane-wings.csv --trend session --chart laps.svg",
            "      Takes a trend through the whole session out, and draws every lap."
        })
public final class EvidenceCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "LOG", description = "The laps: a file, or the name of a demo lap log.")
    private String log;

    @ArgGroup(validate = false, heading = "%nComparison:%n")
    private final EvidenceOptions asked = new EvidenceOptions();

    @ArgGroup(validate = false, heading = "%nModel:%n")
    private final EvidenceModel model = new EvidenceModel();

    @ArgGroup(validate = false, heading = "%nSetup of the model's car:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions for the model:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final EvidenceOutputOptions output = new EvidenceOutputOptions();

    @Mixin
    public HelpOption help;

    public EvidenceCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        ResultFiles<EvidenceOutcome> files = EvidenceFiles.plan(output);
        Evidence how = asked.choices(model.predicted(setup, conditions));
        LapLogFile file = LapLogs.read(LapLogs.find(log));
        EvidenceOutcome outcome = new EvidenceOutcome(file, how.run(file.log()));
        files.write(outcome);
        if (output.json) {
            console.text(EvidenceFiles.json(outcome));
        } else {
            new EvidenceReport(console, outcome).print();
        }
        files.report(console, output.json);
        return ExitCode.DONE;
    }
}
