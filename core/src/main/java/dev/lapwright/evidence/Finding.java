package dev.lapwright.evidence;

/** What the laps say of a change. */
public enum Finding {
    /** There is a difference. */
    REAL("real"),
    /** The laps would have shown a difference of the size looked for, and do not. */
    NOT_SHOWN("not shown"),
    /** The old setup did not come back: the change cannot be told from what changed meanwhile. */
    DRIFTED("not shown: drift"),
    /** The laps are too few to show a difference of the size looked for. */
    TOO_FEW("too few laps");

    private final String label;

    Finding(String label) {
        this.label = label;
    }

    /** For people. */
    public String label() {
        return label;
    }
}
