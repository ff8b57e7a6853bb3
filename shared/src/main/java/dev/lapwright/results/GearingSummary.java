package dev.lapwright.results;

import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A study of gearing as JSON. Unrounded, the unit in each name. */
public final class GearingSummary {
    private GearingSummary() {}

    /** The document as maps and lists, for {@link JsonLayout}; new each time, so that more may be added to it. */
    public static Map<String, Object> tree(GearingResult result) {
        Map<String, Object> tree =
                ResultHeader.of("gearing/1", InputHash.of(result), result.car(), result.track(), result.conditions());
        tree.put("gears", result.gears().stream().map(GearingSummary::gear).toList());
        List<Object> axes = new ArrayList<>();
        for (SweepAxis axis : result.axes()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", axis.name());
            one.put("values", InputHash.list(axis.values()));
            axes.add(one);
        }
        tree.put("axes", axes);
        tree.put(
                "scenarios",
                result.scenarios().stream().map(GearingSummary::scenario).toList());
        tree.put("traction", traction(result.traction()));
        return tree;
    }

    /** A short name of a situation. */
    static String name(GearingResult.Scenario.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static Map<String, Object> gear(GearingResult.Gear gear) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("gear", gear.gear());
        tree.put("ratio", gear.ratio());
        tree.put("overallRatio", gear.overallRatio());
        tree.put("rpmPerKmh", gear.engineSpeedPerSpeed() / LapTrace.kmh(1));
        tree.put("fromKmh", LapTrace.kmh(gear.fromSpeed()));
        tree.put("toKmh", LapTrace.kmh(gear.toSpeed()));
        tree.put("limitKmh", LapTrace.kmh(gear.limitSpeed()));
        return tree;
    }

    private static Map<String, Object> scenario(GearingResult.Scenario scenario) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("name", name(scenario.kind()));
        switch (scenario.kind()) {
            case TOW -> tree.put("dragTakenAwayPercent", 100 * scenario.amount());
            case HEAD_WIND -> {
                tree.put("headWindKmh", LapTrace.kmh(scenario.amount()));
                tree.put("windFromDeg", scenario.conditions().windFromDeg());
            }
            case AS_GIVEN -> {
                // Nothing to add.
            }
        }
        tree.put("baseline", lap(scenario.baseline()));
        tree.put(
                "choices",
                scenario.choices().stream().map(c -> choice(scenario, c)).toList());
        return tree;
    }

    private static Map<String, Object> choice(GearingResult.Scenario scenario, GearingResult.Candidate choice) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("axis", choice.axis());
        tree.put("value", choice.value());
        tree.put("finalDrive", choice.car().value("gearbox.finalDrive"));
        tree.put("ratios", InputHash.list(choice.car().gearRatios()));
        if (choice.lap().isPresent()) {
            tree.put("gainS", scenario.gain(choice));
            tree.putAll(lap(choice.lap().get()));
        } else {
            tree.put("noLapBecause", choice.failure());
        }
        return tree;
    }

    private static Map<String, Object> lap(GearingResult.GearedLap lap) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("lapTimeS", lap.lapTime());
        tree.put("topSpeedKmh", LapTrace.kmh(lap.top().speed()));
        tree.put("topSpeedAtM", lap.top().at());
        tree.put("topSpeedBefore", lap.top().nextCorner().map(Corner::label).orElse(null));
        tree.put("gearAtTopSpeed", lap.top().gear());
        tree.put("engineSpeedAtTopSpeedRpm", lap.top().engineSpeed());
        tree.put("revLimitRpm", lap.limiter().revLimit());
        tree.put("headroomRpm", lap.headroom());
        tree.put("gearsUsed", lap.gearsUsed());
        tree.put("gearsUnused", lap.gearsUnused());
        tree.put("timeInGearS", InputHash.list(lap.timeInGear()));
        tree.put("timeOnLimiterS", lap.limiter().time());
        tree.put("limiterCostsAtMostS", lap.limiter().cost());
        tree.put("freeRevLimitRpm", lap.limiter().freeRevLimit());
        tree.put("shifts", lap.shifts().stream().map(GearingSummary::shift).toList());
        return tree;
    }

    private static Map<String, Object> shift(GearingResult.Shift shift) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("from", shift.from());
        tree.put("to", shift.to());
        tree.put("atM", shift.at());
        tree.put("timeS", shift.time());
        tree.put("speedKmh", LapTrace.kmh(shift.speed()));
        tree.put("rpmBefore", shift.engineSpeedBefore());
        tree.put("rpmAfter", shift.engineSpeedAfter());
        tree.put("corner", shift.corner().map(Corner::label).orElse(null));
        tree.put("timeToBrakingS", shift.timeToBraking());
        return tree;
    }

    private static Map<String, Object> traction(GearingResult.Traction traction) {
        Map<String, Object> tree = new LinkedHashMap<>();
        List<Double> speeds = new ArrayList<>();
        for (double speed : traction.speeds()) {
            speeds.add(CsvText.rounded(LapTrace.kmh(speed)));
        }
        tree.put("speedKmh", speeds);
        tree.put("resistanceN", rounded(traction.resistance()));
        tree.put(
                "forceByGearN",
                traction.forces().stream().map(GearingSummary::rounded).toList());
        return tree;
    }

    private static List<Double> rounded(double[] values) {
        List<Double> list = new ArrayList<>(values.length);
        for (double value : values) {
            list.add(CsvText.rounded(value));
        }
        return list;
    }
}
