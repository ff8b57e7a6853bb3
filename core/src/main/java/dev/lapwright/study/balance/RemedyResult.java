package dev.lapwright.study.balance;

import java.util.List;

/**
 * What could be turned against a complaint.
 *
 * @param complaint of the driver
 * @param understeer what the model says of it: mean over the corners complained of of rear less front limit, m/s²
 * @param remedies against it, best first: those that cost no time by what they gain, then the others by what they gain
 *     per tenth of a second
 * @param belowTheLimit steps that leave the limits as they are and move the understeer gradient against the complaint
 * @param failures steps that give no car or no lap, and why
 */
public record RemedyResult(
        BalanceComplaint complaint,
        double understeer,
        List<Remedy> remedies,
        List<Remedy> belowTheLimit,
        List<String> failures) {
    public RemedyResult {
        remedies = List.copyOf(remedies);
        belowTheLimit = List.copyOf(belowTheLimit);
        failures = List.copyOf(failures);
    }

    /** Whether the model has the axle give up first of which the driver complains. */
    public boolean isConfirmed() {
        return complaint.understeer() ? understeer > 0 : understeer < 0;
    }
}
