package dev.lapwright.draft;

/** Wheels that the engine drives: the second question. */
public enum DrivenWheels {
    /** The front wheels; most of the weight lies on them. */
    FRONT("front", 100, 62),
    /** The rear wheels. */
    REAR("rear", 0, 50),
    /** All four. */
    ALL("all", 40, 56);

    private final String word;
    private final double frontSharePercent;
    private final double usualFrontWeightPercent;

    DrivenWheels(String word, double frontSharePercent, double usualFrontWeightPercent) {
        this.word = word;
        this.frontSharePercent = frontSharePercent;
        this.usualFrontWeightPercent = usualFrontWeightPercent;
    }

    /** As it is answered. */
    public String word() {
        return word;
    }

    /** Share of the drive at the front axle, percent: of four driven wheels a guess. */
    public double frontSharePercent() {
        return frontSharePercent;
    }

    /** Share of the weight on the front axle, percent, where the sixth question has no answer. */
    public double usualFrontWeightPercent() {
        return usualFrontWeightPercent;
    }
}
