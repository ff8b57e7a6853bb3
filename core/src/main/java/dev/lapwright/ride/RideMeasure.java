package dev.lapwright.ride;

import dev.lapwright.fault.InvalidValueException;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** Figure of merit of a pass over a road; less is better. */
public enum RideMeasure {
    /** Variation of the contact load: the grip that comes and goes. */
    LOAD("load", "contact-load variation", "%", pass -> 100 * pass.contact().loadVariation()),
    /** Time without contact. */
    OFF_GROUND(
            "off-ground",
            "time off the ground",
            "ms",
            pass -> 1000 * pass.contact().timeOffGround()),
    /** Greatest acceleration of the body: what driver and platform feel. */
    BODY("body", "peak body acceleration", "m/s2", RidePass::peakBodyAcceleration);

    private final String word;
    private final String label;
    private final String unit;
    private final ToDoubleFunction<RidePass> value;

    RideMeasure(String word, String label, String unit, ToDoubleFunction<RidePass> value) {
        this.word = word;
        this.label = label;
        this.unit = unit;
        this.value = value;
    }

    /** One word for it. */
    public String word() {
        return word;
    }

    /** In words. */
    public String label() {
        return label;
    }

    /** Unit of {@link #of}. */
    public String unit() {
        return unit;
    }

    /** Its value in {@link #unit()}. */
    public double of(RidePass pass) {
        return value.applyAsDouble(pass);
    }

    /** The measure of this word. */
    public static RideMeasure named(String word) {
        for (RideMeasure measure : values()) {
            if (measure.word.equals(word.strip().toLowerCase(Locale.ROOT))) {
                return measure;
            }
        }
        throw new InvalidValueException(
                "measure", "'" + word + "' is none known here", "take load, off-ground or body");
    }
}
