package dev.lapwright.cli;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepResult;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Laps over one or two things that are varied. */
@Command(
        name = "sweep",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Laps a circuit once for each of many settings and says what they are worth."},
        customSynopsis = {
            "lapwright sweep CAR CIRCUIT --vary NAME=VALUES [--vary NAME=VALUES]",
            "                [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright sweep gt-talvex castelvane --vary rear-wing --out wing",
            "      The rear wing over its whole range; table and charts go to the folder wing.",
            "  lapwright sweep gt-talvex castelvane --vary rear-wing=2:10:2 --vary final-drive --json",
            "      Every second wing setting with each final drive, for another program to read."
        })
final class SweepCommand implements Callable<Integer> {
    private static final int MOST_AXES = 2;

    private final Console console;

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nSweep:%n")
    private final SweepOptions sweep = new SweepOptions();

    @ArgGroup(validate = false, heading = "%nSetup about which it is varied:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final SweepOutputOptions output = new SweepOutputOptions();

    @Mixin
    HelpOption help;

    SweepCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (sweep.vary.isEmpty()) {
            throw new InvalidValueException(
                    "sweep", "there is nothing to vary", "add --vary NAME=first:last:step, or --vary ADJUSTMENT");
        }
        if (sweep.vary.size() > MOST_AXES) {
            throw new InvalidValueException(
                    "--vary", sweep.vary.size() + " things are varied at once", "give it once or twice");
        }
        ResultFiles<SweepOutcome> files = SweepFiles.plan(output);
        Subject subject = documents.subject(setup, conditions.day(), console);
        SweepFiles.check(output, subject.track());
        List<Vary> varied = new ArrayList<>();
        for (String text : sweep.vary) {
            varied.add(Vary.parse(text, subject));
        }
        ChosenLine chosen = ChosenLine.of(line, subject, console);
        SweepOutcome outcome = new SweepOutcome(subject, chosen, varied, run(subject, chosen, varied));
        files.write(outcome);
        if (output.json) {
            console.text(SweepJson.text(outcome));
        } else {
            new SweepReport(console, outcome, SweepFiles.tableFile(output)).print();
        }
        files.report(console, output.json);
        return Lapwright.DONE;
    }

    private SweepResult run(Subject subject, ChosenLine chosen, List<Vary> varied) {
        Sweep study = chosen.isRefreshed()
                ? Sweep.refreshing(subject.car(), chosen.line().orElseThrow(), chosen.choices(), subject.day())
                : Sweep.of(subject.car(), chosen.driven(), subject.day());
        for (Vary vary : varied) {
            study = study.over(vary.axis());
        }
        StudyRun how = sweep.threads == null ? StudyRun.onAllCores() : StudyRun.onThreads(sweep.threads);
        try (ProgressBar bar = new ProgressBar(console, "laps")) {
            return study.run(how.reporting(bar));
        }
    }
}
