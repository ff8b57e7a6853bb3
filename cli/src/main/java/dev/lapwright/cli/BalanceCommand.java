package dev.lapwright.cli;

import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.results.Subject;
import dev.lapwright.study.balance.Balance;
import dev.lapwright.study.balance.BalanceComplaint;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.balance.Remedies;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Which axle gives up first, where, and what to turn against it. */
@Command(
        name = "balance",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Says which axle gives up first in each corner, and what to turn against it."},
        customSynopsis = {
            "lapwright balance CAR CIRCUIT [--complaint COMPLAINT]",
            "                  [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright balance gt-talvex castelvane",
            "      Entry, lift-off, middle and exit of each corner, understeer gradient and aero balance.",
            "  lapwright balance gt-talvex castelvane --complaint understeer:entry",
            "      What to turn against understeer in the entries, and what each step costs or gains."
        })
final class BalanceCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nComplaint:%n")
    private final BalanceOptions balance = new BalanceOptions();

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final BalanceOutputOptions output = new BalanceOutputOptions();

    @Mixin
    HelpOption help;

    BalanceCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        ResultFiles<BalanceOutcome> files =
                BalanceFiles.plan(output, balance.complaint().isPresent());
        Subject subject = documents.subject(setup, conditions.day(), console);
        Stations stations = subject.track().stations(StationSpacing.DEFAULT);
        Optional<BalanceComplaint> complaint =
                balance.complaint().map(text -> BalanceComplaint.parse(text, stations.corners()));
        Lap lap = new LapSolver(stations).solve(Vehicle.of(subject.car(), subject.day()));
        BalanceResult result = Balance.of(lap).run();
        BalanceOutcome outcome = new BalanceOutcome(
                subject,
                result,
                complaint.map(said -> Remedies.against(said, result).run()));
        files.write(outcome);
        if (output.json) {
            console.text(BalanceJson.text(outcome));
        } else {
            new BalanceReport(console, outcome).print();
        }
        files.report(console, output.json);
        return Lapwright.DONE;
    }
}
