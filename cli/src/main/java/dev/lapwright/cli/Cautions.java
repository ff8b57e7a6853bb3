package dev.lapwright.cli;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.report.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a lap shows that nobody should drive without thinking of it. */
final class Cautions {
    /** Below this the floor is near the road, mm: common practice, no source. */
    private static final double NEAR_THE_ROAD_MM = 20;

    private Cautions() {}

    static List<String> of(Lap lap) {
        List<String> cautions = new ArrayList<>();
        rideHeight(cautions, lap, "front", Channel.RIDE_HEIGHT_FRONT);
        rideHeight(cautions, lap, "rear", Channel.RIDE_HEIGHT_REAR);
        TippingCautions.add(cautions, lap);
        return cautions;
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
}
