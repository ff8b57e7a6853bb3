package dev.lapwright.car;

import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Danger of turning something: where it can hurt somebody, and which quantities of the car that concerns. */
public enum Caution {
    /** Brakes that lock the rear axle first turn the car round. */
    BRAKES(
            "More brake at the rear can lock the rear wheels first and spin the car at any speed: go in the smallest"
                    + " steps, try it in a straight line at low speed, and keep to the maker's limits and the rules of the event.",
            Quantity.BRAKE_FRONT_SHARE,
            Quantity.BRAKE_MAX_FORCE),
    /** Floors that touch the road. */
    RIDE_HEIGHT(
            "A floor that touches the road unloads its tyres at once: keep to the maker's least ride height"
                    + " and the rules of the event, bumps and kerbs counted.",
            Quantity.RIDE_HEIGHT_FRONT,
            Quantity.RIDE_HEIGHT_REAR),
    /** Tyres outside their pressures. */
    PRESSURE(
            "A tyre below its maker's least pressure can come apart, one above it can burst: never leave the"
                    + " maker's range, whatever a model says.",
            Quantity.HOT_PRESSURE_FRONT,
            Quantity.HOT_PRESSURE_REAR);

    private final String text;
    private final Set<String> quantities;

    Caution(String text, Quantity... quantities) {
        this.text = text;
        this.quantities = Stream.of(quantities).map(Quantity::path).collect(Collectors.toUnmodifiableSet());
    }

    /** For people. */
    public String text() {
        return text;
    }

    /** Whether it concerns a quantity of the car. */
    boolean concerns(String quantity) {
        return quantities.contains(quantity);
    }
}
