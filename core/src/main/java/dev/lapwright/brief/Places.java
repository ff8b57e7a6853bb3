package dev.lapwright.brief;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import dev.lapwright.study.compare.Comparison;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Where a lap spends its time and what limits the car there: the parts into which a comparison cuts two laps. */
final class Places {
    private Places() {}

    static List<PlaceShare> of(Lap lap) {
        List<PlaceShare> places = new ArrayList<>();
        for (Comparison.Part part : Comparison.of(lap, lap).parts()) {
            Comparison.Part.Drive drive = part.first();
            places.add(new PlaceShare(
                    part.label(),
                    part.corner(),
                    part.from(),
                    part.to(),
                    drive.time(),
                    drive.time() / lap.time(),
                    drive.entrySpeed(),
                    drive.minimumSpeed(),
                    drive.topSpeed(),
                    drive.exitSpeed(),
                    limits(lap, part)));
        }
        return places;
    }

    /** Each end of a cell between two stations answers for half of its time. */
    private static Map<Limit, Double> limits(Lap lap, Comparison.Part part) {
        double[] s = lap.column(Channel.DISTANCE);
        double[] t = lap.column(Channel.TIME);
        Map<Limit, Double> shares = new EnumMap<>(Limit.class);
        for (int i = 0; i + 1 < s.length; i++) {
            double middle = 0.5 * (s[i] + s[i + 1]);
            if (within(part, middle)) {
                double half = 0.5 * (t[i + 1] - t[i]) / part.first().time();
                shares.merge(lap.limit(i), half, Double::sum);
                shares.merge(lap.limit(i + 1), half, Double::sum);
            }
        }
        return shares;
    }

    private static boolean within(Comparison.Part part, double distance) {
        return part.from() < part.to()
                ? distance >= part.from() && distance <= part.to()
                : distance >= part.from() || distance <= part.to();
    }
}
