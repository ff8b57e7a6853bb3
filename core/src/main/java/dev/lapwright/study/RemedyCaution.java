package dev.lapwright.study;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Effect;
import java.util.EnumSet;
import java.util.Set;

/** Where turning something can hurt somebody. */
public enum RemedyCaution {
    /** Brakes that lock the rear axle first turn the car round. */
    BRAKES(
            "brakes.",
            "More brake at the rear can lock the rear wheels first and spin the car at any speed: go in the smallest"
                    + " steps, try it in a straight line at low speed, and keep to the maker's limits and the rules of the event."),
    /** Floors that touch the road. */
    RIDE_HEIGHT(
            "rideHeight",
            "A floor that touches the road unloads its tyres at once: keep to the maker's least ride height"
                    + " and the rules of the event, bumps and kerbs counted."),
    /** Tyres outside their pressures. */
    PRESSURE(
            "hotPressure",
            "A tyre below its maker's least pressure can come apart, one above it can burst: never leave the"
                    + " maker's range, whatever a model says.");

    private final String part;
    private final String text;

    RemedyCaution(String part, String text) {
        this.part = part;
        this.text = text;
    }

    /** For people. */
    public String text() {
        return text;
    }

    /** Those that an adjustment calls for. */
    public static Set<RemedyCaution> of(Adjustment adjustment) {
        Set<RemedyCaution> cautions = EnumSet.noneOf(RemedyCaution.class);
        for (Effect effect : adjustment.effects()) {
            for (RemedyCaution caution : values()) {
                if (effect.quantity().contains(caution.part)) {
                    cautions.add(caution);
                }
            }
        }
        return cautions;
    }
}
