package dev.lapwright.evidence;

/** What a log says of a lap. */
public enum LapFlag {
    /** Nothing: a flying lap. */
    NONE("flying lap"),
    /** It began in the pits. */
    OUT("out lap"),
    /** It ended in the pits. */
    IN("in lap"),
    /** Something spoilt it: traffic, flags, a mistake. */
    SPOILT("spoilt lap");

    private final String label;

    LapFlag(String label) {
        this.label = label;
    }

    /** For people. */
    public String label() {
        return label;
    }
}
