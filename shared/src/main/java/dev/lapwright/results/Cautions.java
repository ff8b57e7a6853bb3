package dev.lapwright.results;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.EndStop;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.report.Numbers;
import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Cautions about a lap: what nobody should drive without thinking of it. */
public final class Cautions {
    /** Below this the floor is near the road, mm: common practice, no source. */
    private static final double NEAR_THE_ROAD_MM = 20;

    /** Less than this share of the load on one side or axle is next to nothing: our choice, no source. */
    private static final double NEXT_TO_NOTHING = 0.03;

    private static final int MOST_PLACES = 3;
    private static final Channel[] LEFT = {Channel.LOAD_FRONT_LEFT, Channel.LOAD_REAR_LEFT};
    private static final Channel[] RIGHT = {Channel.LOAD_FRONT_RIGHT, Channel.LOAD_REAR_RIGHT};
    private static final Channel[] FRONT = {Channel.LOAD_FRONT_LEFT, Channel.LOAD_FRONT_RIGHT};
    private static final Channel[] REAR = {Channel.LOAD_REAR_LEFT, Channel.LOAD_REAR_RIGHT};

    private Cautions() {}

    /** All that a lap gives cause for, one sentence or two each. */
    public static List<String> of(Lap lap) {
        List<String> cautions = new ArrayList<>();
        rideHeight(cautions, lap, "front", Channel.RIDE_HEIGHT_FRONT);
        rideHeight(cautions, lap, "rear", Channel.RIDE_HEIGHT_REAR);
        tipping(cautions, lap);
        return cautions;
    }

    /** What on the car stops adjustments that stand at an end of their range, where nothing in the model does; empty for none. */
    static String ends(Map<Adjustment, Double> ended) {
        Map<String, List<String>> byStop = new LinkedHashMap<>();
        ended.forEach((adjustment, setting) -> byStop.computeIfAbsent(
                        EndStop.at(adjustment, setting).orElse("its maker says"), any -> new ArrayList<>())
                .add(adjustment.name()));
        return byStop.isEmpty()
                ? ""
                : "At an end of their range, where nothing in the model stops them; what does on the car (common practice): "
                        + byStop.entrySet().stream()
                                .map(one -> String.join(", ", one.getValue()) + ": " + one.getKey())
                                .collect(Collectors.joining("; "))
                        + ".";
    }

    private static void rideHeight(List<String> cautions, Lap lap, String end, Channel channel) {
        Extreme least = Extreme.least(lap, channel);
        if (!(least.value() < NEAR_THE_ROAD_MM)) {
            return;
        }
        String what = least.value() > 0 ? "the floor comes near the road" : "the floor would touch the road";
        cautions.add(String.format(
                Locale.ROOT,
                "The %s ride height falls to %s mm at %s m: %s. Bumps, kerbs and pitching are not in this figure;"
                        + " keep to the maker's limits and the rules of the event.",
                end,
                Numbers.fixed(least.value(), 1),
                Numbers.fixed(least.at(), 0),
                what));
    }

    /**
     * Where the wheels of one side, or of one axle, carry next to nothing: there the car is about to tip over, whether its
     * speed is held back by that or by an inner wheel without grip just before.
     */
    private static void tipping(List<String> cautions, Lap lap) {
        String rolling = places(lap, LEFT, RIGHT);
        if (!rolling.isEmpty()) {
            cautions.add(rolling + " both inner wheels all but lift: this car would roll over before it slides."
                    + " Do not drive it so: lower chassis.cgHeightM, or widen chassis.trackFrontM and"
                    + " chassis.trackRearM.");
        }
        String pitching = places(lap, FRONT, REAR);
        if (!pitching.isEmpty()) {
            cautions.add(pitching + " both wheels of an axle all but lift: this car would pitch over under braking or"
                    + " power. Do not drive it so: lower chassis.cgHeightM, or lengthen chassis.wheelbaseM.");
        }
    }

    /** Where one of two pairs of wheels carries next to nothing, as the beginning of a sentence; empty if nowhere. */
    private static String places(Lap lap, Channel[] some, Channel[] others) {
        Set<String> places = new LinkedHashSet<>();
        boolean elsewhere = false;
        double first = Double.NaN;
        for (int i = 0; i < lap.count(); i++) {
            double a = sum(lap, some, i);
            double b = sum(lap, others, i);
            if (Math.min(a, b) < NEXT_TO_NOTHING * (a + b)) {
                double s = lap.value(Channel.DISTANCE, i);
                String corner = cornerAt(lap, s);
                if (!corner.isEmpty()) {
                    places.add(corner);
                } else if (!elsewhere) {
                    elsewhere = true;
                    first = s;
                }
            }
        }
        if (places.isEmpty()) {
            return elsewhere ? "At " + Numbers.fixed(first, 0) + " m" : "";
        }
        return "In " + listed(new ArrayList<>(places));
    }

    private static double sum(Lap lap, Channel[] wheels, int station) {
        return lap.value(wheels[0], station) + lap.value(wheels[1], station);
    }

    private static String cornerAt(Lap lap, double s) {
        for (Corner corner : lap.stations().corners()) {
            boolean within = corner.entry() <= corner.exit()
                    ? s >= corner.entry() && s <= corner.exit()
                    : s >= corner.entry() || s <= corner.exit();
            if (within) {
                return corner.label();
            }
        }
        return "";
    }

    private static String listed(List<String> places) {
        int n = places.size();
        if (n == 1) {
            return places.get(0);
        }
        if (n <= MOST_PLACES) {
            return String.join(", ", places.subList(0, n - 1)) + " and " + places.get(n - 1);
        }
        return String.join(", ", places.subList(0, MOST_PLACES)) + " and " + (n - MOST_PLACES) + " more corner"
                + (n - MOST_PLACES > 1 ? "s" : "");
    }
}
