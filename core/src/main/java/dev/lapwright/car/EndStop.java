package dev.lapwright.car;

import java.util.List;
import java.util.Optional;

/**
 * Reason that stops an adjustment on the real car before the end of its range, where nothing in the model does: common practice, no source. A
 * recommendation at an end of a range is told with it.
 */
public enum EndStop {
    /** Ride heights and rake. */
    HEIGHT(
            "the floor touches the road over bumps and kerbs, and the maker's least height holds",
            "roll and pitch grow, and the floor gives less",
            "suspension.front.rideHeightMm",
            "suspension.rear.rideHeightMm"),
    /** Springs. */
    SPRING(
            "travel runs out and the car is slow to answer",
            "tyres leave the road over bumps and kerbs",
            "suspension.front.springNPerMm",
            "suspension.rear.springNPerMm"),
    /** Anti-roll bars. */
    BAR(
            "roll, and how quickly the car answers, decide",
            "a hard bar lifts an inner wheel over kerbs and in slow corners, and tyres heat by what they slide",
            "suspension.front.antiRollBarNmPerDeg",
            "suspension.rear.antiRollBarNmPerDeg"),
    /** Wings and planes. */
    WING(
            "stability under brakes and behind others decides",
            "a wing or plane stalls, and is less than its table behind others",
            "aero."),
    /** Gears and final drive. */
    GEARING(
            "the engine must still pull it out of slow corners and against the wind",
            "wheelspin out of slow corners, the limiter in a tow, and what the engine's maker allows",
            "gearbox."),
    /** Locking of differentials. */
    LOCKING(
            "an inner wheel spins out of slow corners, and the car snaps when the driver lifts",
            "turning in suffers, and a push at little throttle grows",
            "drive.front.powerLock",
            "drive.rear.powerLock",
            "drive.front.coastLock",
            "drive.rear.coastLock",
            "drive.front.preload",
            "drive.rear.preload"),
    /** Camber and toe. */
    ALIGNMENT(
            "the tread's inner edge wears and overheats",
            "the tread's outer edge wears and overheats",
            "suspension.front.camber",
            "suspension.rear.camber",
            "suspension.front.toe",
            "suspension.rear.toe"),
    /** Pressures. */
    PRESSURE(
            "the tyre's maker sets the least",
            "the tyre's maker sets the most",
            "tyres.front.hotPressureKpa",
            "tyres.rear.hotPressureKpa"),
    /** Mass and fuel. */
    MASS(
            "the rules' least weight, and the fuel that the distance takes",
            "the rules' weights and what the distance takes",
            "chassis.");

    private final String least;
    private final String most;
    private final List<String> quantities;

    EndStop(String least, String most, String... quantities) {
        this.least = least;
        this.most = most;
        this.quantities = List.of(quantities);
    }

    /**
     * What stops an adjustment at an end of its range, in a few words: by the first thing that it moves of which something is known, and by
     * whether it has least or most of it there.
     *
     * @param setting one of the ends
     */
    public static Optional<String> at(Adjustment adjustment, double setting) {
        List<Double> legal = adjustment.legalSettings();
        double first = legal.get(0);
        double last = legal.get(legal.size() - 1);
        double other = Math.abs(setting - first) < Math.abs(setting - last) ? last : first;
        for (Effect effect : adjustment.effects()) {
            for (EndStop stop : values()) {
                if (stop.quantities.stream()
                        .anyMatch(beginning -> effect.quantity().startsWith(beginning))) {
                    boolean more = effect.apply(0, setting, 0) > effect.apply(0, other, 0);
                    return Optional.of(more ? stop.most : stop.least);
                }
            }
        }
        return Optional.empty();
    }

    /** Whether a setting is an end of an adjustment's range. */
    public static boolean isEnd(Adjustment adjustment, double setting) {
        List<Double> legal = adjustment.legalSettings();
        return setting <= legal.get(0) || setting >= legal.get(legal.size() - 1);
    }
}
