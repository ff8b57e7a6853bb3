package dev.lapwright.results;

import dev.lapwright.car.Unit;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.CornerFigures;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.report.JsonLayout;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A lap in short as JSON: time, sectors, speeds, corners, what limited the car. Unrounded, the unit in each name. */
public final class LapSummary {
    private LapSummary() {}

    /** The document as text. */
    public static String json(Lap lap) {
        return JsonLayout.text(tree(lap));
    }

    /** The document as maps and lists, for {@link JsonLayout}; new each time, so that more may be added to it. */
    public static Map<String, Object> tree(Lap lap) {
        Map<String, Object> tree = ResultHeader.of(
                "lap/1",
                InputHash.of(lap),
                lap.vehicle().car(),
                lap.track(),
                lap.vehicle().conditions());
        tree.putAll(figures(lap));
        return tree;
    }

    /** What the lap gave, without what it was made from. */
    public static Map<String, Object> figures(Lap lap) {
        LapFigures figures = lap.figures();
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("lapTimeS", figures.lapTime());
        tree.put("sectorEndsM", InputHash.list(lap.track().sectorEnds()));
        tree.put("sectorTimesS", InputHash.list(lap.sectorTimes()));
        tree.put("meanSpeedKmh", LapTrace.kmh(figures.meanSpeed()));
        int fastest = extreme(lap, Channel.SPEED, 1);
        int slowest = extreme(lap, Channel.SPEED, -1);
        tree.put("topSpeedKmh", LapTrace.kmh(lap.value(Channel.SPEED, fastest)));
        tree.put("topSpeedAtM", lap.value(Channel.DISTANCE, fastest));
        tree.put("minimumSpeedKmh", LapTrace.kmh(lap.value(Channel.SPEED, slowest)));
        tree.put("minimumSpeedAtM", lap.value(Channel.DISTANCE, slowest));
        tree.put("minimumCornerSpeedKmh", LapTrace.kmh(figures.minimumCornerSpeed()));
        tree.put("meanCornerSpeedKmh", LapTrace.kmh(figures.meanCornerSpeed()));
        tree.put("gearsUsed", List.copyOf(lap.gearsUsed()));
        Map<String, Object> shares = new LinkedHashMap<>();
        lap.limitShares().forEach((limit, share) -> shares.put(limit.label(), Unit.NONE.convert(share, Unit.PERCENT)));
        tree.put("limitedByPercentOfTime", shares);
        lowest(tree, "Front", lap, Channel.RIDE_HEIGHT_FRONT);
        lowest(tree, "Rear", lap, Channel.RIDE_HEIGHT_REAR);
        tree.put("corners", corners(lap));
        return tree;
    }

    private static void lowest(Map<String, Object> tree, String end, Lap lap, Channel height) {
        int lowest = extreme(lap, height, -1);
        tree.put("minimum" + end + "RideHeightMm", lap.value(height, lowest));
        tree.put("minimum" + end + "RideHeightAtM", lap.value(Channel.DISTANCE, lowest));
    }

    /** First station with the greatest (sign 1) or least (sign -1) value. */
    private static int extreme(Lap lap, Channel channel, int sign) {
        int best = 0;
        for (int i = 1; i < lap.count(); i++) {
            if (sign * lap.value(channel, i) > sign * lap.value(channel, best)) {
                best = i;
            }
        }
        return best;
    }

    private static List<Object> corners(Lap lap) {
        List<Object> list = new ArrayList<>();
        for (CornerFigures figures : lap.corners()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("number", figures.corner().number());
            one.put("name", figures.corner().name());
            one.put("turn", figures.corner().left() ? "left" : "right");
            one.put("entryM", figures.corner().entry());
            one.put("apexM", figures.corner().apex());
            one.put("exitM", figures.corner().exit());
            one.put("minimumRadiusM", figures.corner().minimumRadius());
            one.put("entrySpeedKmh", LapTrace.kmh(figures.entrySpeed()));
            one.put("minimumSpeedKmh", LapTrace.kmh(figures.minimumSpeed()));
            one.put("minimumSpeedAtM", figures.minimumSpeedAt());
            one.put("exitSpeedKmh", LapTrace.kmh(figures.exitSpeed()));
            one.put("peakLateralAccelerationMps2", figures.peakLateralAcceleration());
            one.put("timeS", figures.time());
            one.put("gear", figures.gear());
            one.put("limitedBy", figures.limit().label());
            list.add(one);
        }
        return list;
    }
}
