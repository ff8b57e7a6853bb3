package dev.lapwright.fit;

/** How well the laps tell a parameter. */
public enum FitStanding {
    /** By itself. */
    DETERMINED("told by the laps"),
    /** Only together with another, which was held at the car's own value: it is right as far as that is. */
    CONDITIONAL("told only if what was held is right"),
    /** Not at all, or not apart from another: held at the car's own value. */
    HELD("not told, kept as the car has it");

    private final String label;

    FitStanding(String label) {
        this.label = label;
    }

    /** For tables. */
    public String label() {
        return label;
    }
}
