package dev.lapwright.results;

import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationLimits;
import dev.lapwright.study.optimise.OptimisationResult;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/** An optimisation as JSON, and the setups it drove as a table. Unrounded in JSON, the unit in each name. */
public final class OptimisationSummary {
    private OptimisationSummary() {}

    /** The document as maps and lists, for {@link JsonLayout}; new each time, so that more may be added to it. */
    public static Map<String, Object> tree(OptimisationResult result) {
        Map<String, Object> tree = ResultHeader.of(
                "optimisation/1",
                InputHash.of(result),
                result.task().car(),
                result.task().circuits().get(0).track(),
                result.task().days().get(0));
        tree.put("circuits", circuits(result));
        tree.put("days", result.task().days().stream().map(ResultHeader::day).toList());
        tree.put("worstDay", result.task().forTheWorstDay());
        tree.put("seed", result.task().seed());
        tree.put("limits", limits(result.task().limits()));
        tree.put("searched", searched(result));
        Map<String, Object> kept = new LinkedHashMap<>();
        result.search().leftAlone().forEach(one -> kept.put(one.name(), one.reason()));
        tree.put("leftAlone", kept);
        tree.put("setupsDriven", result.search().driven());
        tree.put("limitsKept", result.isMet());
        tree.put(
                "misses",
                result.misses().stream().map(OptimisationSummary::miss).toList());
        tree.put("before", point(result, result.before()));
        tree.put(
                "missesBefore",
                result.missesBefore().stream().map(OptimisationSummary::miss).toList());
        tree.put("betweenSteps", point(result, result.search().between()));
        tree.put("best", point(result, result.best()));
        tree.put("fewestChanges", point(result, result.nearOptimal().fewest()));
        tree.put(
                "gains",
                result.sectors().stream().map(OptimisationSummary::gain).toList());
        tree.put(
                "ranges",
                result.nearOptimal().ranges().stream()
                        .map(OptimisationSummary::range)
                        .toList());
        tree.put("asGood", result.nearOptimal().setups().size());
        tree.put("asGoodComplete", result.nearOptimal().complete());
        tree.put(
                "front",
                result.nearOptimal().front().stream().map(p -> point(result, p)).toList());
        return tree;
    }

    private static List<Object> circuits(OptimisationResult result) {
        List<Object> circuits = new ArrayList<>();
        for (Optimisation.Circuit circuit : result.task().circuits()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", circuit.track().name());
            one.put("weight", circuit.weight());
            circuits.add(one);
        }
        return circuits;
    }

    private static Map<String, Object> limits(OptimisationLimits limits) {
        Map<String, Object> tree = new LinkedHashMap<>();
        put(tree, "minTopSpeedKmh", limits.topSpeedKmh());
        put(tree, "minBalancePercent", limits.balanceLeastPercent());
        put(tree, "maxBalancePercent", limits.balanceMostPercent());
        put(tree, "minRideHeightMm", limits.rideHeightMm());
        tree.put("noUpshiftInCorner", limits.withoutUpshiftInCorner());
        return tree;
    }

    private static void put(Map<String, Object> tree, String name, OptionalDouble value) {
        tree.put(name, value.isPresent() ? value.getAsDouble() : null);
    }

    private static List<Object> searched(OptimisationResult result) {
        List<Object> searched = new ArrayList<>();
        for (OptimisationResult.Axis axis : result.search().axes()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", axis.name());
            one.put("unit", result.task().car().unitOf(axis.name()).symbol());
            one.put("settings", axis.settings());
            searched.add(one);
        }
        return searched;
    }

    private static Map<String, Object> miss(OptimisationResult.Miss miss) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("limit", miss.limit().label());
        tree.put("unit", miss.unit());
        tree.put("wanted", miss.wanted());
        tree.put("reached", miss.reached());
        tree.put("shortBy", miss.shortfall());
        tree.put("bestAlone", miss.bestAlone());
        return tree;
    }

    private static Map<String, Object> point(OptimisationResult result, OptimisationResult.Candidate point) {
        Map<String, Object> tree = new LinkedHashMap<>();
        Map<String, Object> settings = new LinkedHashMap<>();
        for (int i = 0; i < result.search().axes().size(); i++) {
            settings.put(result.search().axes().get(i).name(), point.settings().get(i));
        }
        tree.put("settings", settings);
        tree.put("lapTimeS", point.lapTime());
        tree.put("gainS", result.gain(point));
        tree.put("topSpeedKmh", LapTrace.kmh(point.topSpeed()));
        tree.put("rideHeightMm", point.limited().rideHeightMm());
        if (point.limited().upshiftsInCorners() >= 0) {
            tree.put("leastBalancePercent", point.limited().balanceLeastPercent());
            tree.put("greatestBalancePercent", point.limited().balanceMostPercent());
            tree.put("upshiftsInCorners", point.limited().upshiftsInCorners());
        }
        if (result.task().circuits().size() > 1) {
            tree.put("lapTimeByCircuitS", point.circuitTimes());
        }
        if (!point.hasLap()) {
            tree.put("noLapBecause", point.failure());
        }
        return tree;
    }

    private static Map<String, Object> gain(OptimisationResult.SectorTimes gain) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("circuit", gain.track().name());
        tree.put("sectorsBeforeS", gain.before());
        tree.put("sectorsAfterS", gain.after());
        tree.put("sectorGainsS", gain.gains());
        return tree;
    }

    private static Map<String, Object> range(OptimisationResult.Range range) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("name", range.name());
        tree.put("before", range.before());
        tree.put("best", range.best());
        tree.put("worthS", range.worth());
        tree.put("aloneFrom", range.aloneLeast());
        tree.put("aloneTo", range.aloneMost());
        tree.put("togetherFrom", range.togetherLeast());
        tree.put("togetherTo", range.togetherMost());
        tree.put("effectS", range.effect());
        return tree;
    }

    /** The legal setups driven that keep the limits, the best first, as comma-separated values to nine digits. */
    public static String csv(OptimisationResult result) {
        CsvText csv = new CsvText();
        List<String> header = new ArrayList<>();
        for (OptimisationResult.Axis axis : result.search().axes()) {
            String symbol = result.task().car().unitOf(axis.name()).symbol();
            header.add(symbol.isEmpty() ? axis.name() : axis.name() + " (" + symbol + ")");
        }
        header.addAll(List.of("lapTimeS", "gainS", "topSpeedKmh", "rideHeightMm", "asGood", "front"));
        csv.row(header);
        Set<OptimisationResult.Candidate> good =
                new HashSet<>(result.nearOptimal().setups());
        Set<OptimisationResult.Candidate> front =
                new HashSet<>(result.nearOptimal().front());
        for (OptimisationResult.Candidate point : result.search().met()) {
            List<String> row = new ArrayList<>();
            point.settings().forEach(setting -> row.add(CsvText.number(setting)));
            row.add(CsvText.number(point.lapTime()));
            row.add(CsvText.number(result.gain(point)));
            row.add(CsvText.number(LapTrace.kmh(point.topSpeed())));
            row.add(CsvText.number(point.limited().rideHeightMm()));
            row.add(Boolean.toString(good.contains(point)));
            row.add(Boolean.toString(front.contains(point)));
            csv.row(row);
        }
        return csv.text();
    }
}
