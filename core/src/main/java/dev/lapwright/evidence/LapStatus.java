package dev.lapwright.evidence;

/** Whether a lap counts, and if not, why. */
public enum LapStatus {
    /** It counts. */
    CLEAN("clean"),
    /** The log flags it as an out lap. */
    OUT("out lap"),
    /** The log flags it as an in lap. */
    IN("in lap"),
    /** The log flags it as spoilt. */
    FLAGGED("flagged"),
    /** It is the first of its run, or one of the first. */
    WARM_UP("first of a run"),
    /** It is too much slower than its setup's median. */
    SLOW("slow");

    private final String label;

    LapStatus(String label) {
        this.label = label;
    }

    /** For people. */
    public String label() {
        return label;
    }
}
