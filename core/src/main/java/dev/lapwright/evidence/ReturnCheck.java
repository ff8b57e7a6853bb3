package dev.lapwright.evidence;

/**
 * Whether the old setup came back to its lap time when it was run again: what changed meanwhile was not the setup.
 *
 * @param firstLaps clean laps with it before the new setup's first
 * @param lastLaps clean laps with it after the new setup's last
 * @param change its mean afterwards less its mean before
 * @param bracketed the new setup's mean less the middle of those two: a drift that goes on evenly falls out
 */
public record ReturnCheck(int firstLaps, int lastLaps, MeanDifference change, MeanDifference bracketed) {
    /** Whether it is sure that the old setup did not come back. */
    public boolean drifted() {
        return change.isSignificant();
    }

    /** Whether it is sure that the old setup came back to within the difference that the new one makes. */
    public boolean cameBack() {
        double size = Math.abs(bracketed.difference());
        return !drifted() && change.low() > -size && change.high() < size;
    }

    /** Whether the new setup lies beyond both runs of the old one, and surely off their middle. */
    public boolean isBeyondBoth() {
        return bracketed.isSignificant() && Math.abs(bracketed.difference()) > Math.abs(change.difference()) / 2;
    }
}
