package dev.lapwright.car;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What stops an adjustment on the real car before the end of its range, where nothing in the model does: common practice, no source. A
 * recommendation at an end of a range is told with it.
 */
public enum EndStop {
    /** Ride heights and rake. */
    FLOOR(
            "the floor touches the road over bumps and kerbs, and the maker's least height holds",
            "suspension.front.rideHeightMm",
            "suspension.rear.rideHeightMm"),
    /** Springs. */
    SPRING(
            "softer, travel runs out and the car is slow to answer; harder, tyres leave the road over bumps and kerbs",
            "suspension.front.springNPerMm",
            "suspension.rear.springNPerMm"),
    /** Anti-roll bars. */
    BAR(
            "a hard bar lifts an inner wheel over kerbs and in slow corners, and tyres heat by what they slide",
            "suspension.front.antiRollBarNmPerDeg",
            "suspension.rear.antiRollBarNmPerDeg"),
    /** Wings and planes. */
    WING("a wing or plane stalls, and the car must stay stable under brakes and behind others", "aero."),
    /** Gears and final drive. */
    GEARING("wheelspin out of slow corners, the limiter in a tow, and what the engine's maker allows", "gearbox."),
    /** Locking of differentials. */
    LOCKING(
            "how willingly the car turns in, and whether it snaps when the driver lifts",
            "drive.front.powerLock",
            "drive.rear.powerLock",
            "drive.front.coastLock",
            "drive.rear.coastLock",
            "drive.front.preload",
            "drive.rear.preload"),
    /** Camber and toe. */
    ALIGNMENT(
            "the tread's inner edge wears and overheats",
            "suspension.front.camber",
            "suspension.rear.camber",
            "suspension.front.toe",
            "suspension.rear.toe"),
    /** Pressures. */
    PRESSURE("the tyre's maker sets the least and the most", "tyres.front.hotPressureKpa", "tyres.rear.hotPressureKpa"),
    /** Mass and fuel. */
    MASS("the rules' least weight, and the fuel that the distance takes", "chassis.");

    private final String text;
    private final List<String> quantities;

    EndStop(String text, String... quantities) {
        this.text = text;
        this.quantities = List.of(quantities);
    }

    /** In a few words. */
    public String text() {
        return text;
    }

    /** What stops this adjustment, by the first thing that it moves of which something is known. */
    public static Optional<EndStop> of(Adjustment adjustment) {
        return adjustment.effects().stream()
                .flatMap(effect -> Arrays.stream(values())
                        .filter(stop -> stop.quantities.stream()
                                .anyMatch(beginning -> effect.quantity().startsWith(beginning))))
                .findFirst();
    }

    /** Whether a setting is an end of an adjustment's range. */
    public static boolean isEnd(Adjustment adjustment, double setting) {
        List<Double> legal = adjustment.legalSettings();
        return setting <= legal.get(0) || setting >= legal.get(legal.size() - 1);
    }
}
