package dev.lapwright.cli;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.study.balance.BalanceComplaint;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** What the driver says. */
final class BalanceOptions {
    @Option(
            names = "--complaint",
            paramLabel = "COMPLAINT",
            description = "What the driver complains of: understeer or oversteer, the phase of the corner (entry,"
                    + " lift-off, middle, exit) and, if it is one corner only, that corner: understeer:entry,"
                    + " oversteer:exit:T3. Gives what to turn against it.")
    private List<String> complaints = List.of();

    /** The one complaint; empty if there is none. */
    Optional<String> complaint() {
        if (complaints.size() > 1) {
            throw new InvalidValueException(
                    "--complaint", "it is given " + complaints.size() + " times", BalanceComplaint.ONE_AT_A_TIME);
        }
        return complaints.stream().findFirst();
    }
}
