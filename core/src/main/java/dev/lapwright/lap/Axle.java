package dev.lapwright.lap;

/** Axle of a car: front or rear. */
public enum Axle {
    /** The front axle: if it gives up first, the car understeers at its limit. */
    FRONT("front"),
    /** The rear axle: if it gives up first, the car oversteers at its limit. */
    REAR("rear");

    private final String label;

    Axle(String label) {
        this.label = label;
    }

    /** For tables. */
    public String label() {
        return label;
    }
}
