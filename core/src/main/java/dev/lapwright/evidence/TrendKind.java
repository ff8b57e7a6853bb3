package dev.lapwright.evidence;

/** Over what the trend of lap times is taken to run. */
public enum TrendKind {
    /** The lap of the run: fuel and tyres, where each run starts alike. */
    RUN("within each run"),
    /** The lap of the session: driver and road, or one tank and one set of tyres for all runs. */
    SESSION("through the session"),
    /** No trend. */
    NONE("none taken out");

    private final String label;

    TrendKind(String label) {
        this.label = label;
    }

    /** For people. */
    public String label() {
        return label;
    }
}
