package dev.lapwright.results;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.compare.Comparison;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Two laps side by side, as JSON and as a trace. Differences are the second lap less the first: positive where the second is
 * slower. Unrounded, the unit in each name.
 */
public final class ComparisonSummary {
    private ComparisonSummary() {}

    /** The document as maps and lists, for {@link JsonLayout}; new each time, so that more may be added to it. */
    public static Map<String, Object> tree(Comparison comparison) {
        Lap first = comparison.first();
        Lap second = comparison.second();
        Map<String, Object> tree = ResultHeader.of(
                "comparison/1",
                hash(comparison),
                first.vehicle().car(),
                first.track(),
                first.vehicle().conditions());
        tree.put("otherCar", second.vehicle().car().name());
        tree.put("otherSettings", second.vehicle().car().settings());
        tree.put("otherConditions", ResultHeader.day(second.vehicle().conditions()));
        tree.put("lapTimeS", first.time());
        tree.put("otherLapTimeS", second.time());
        tree.put("differenceS", comparison.difference());
        tree.put("sectorEndsM", InputHash.list(first.track().sectorEnds()));
        tree.put("differenceBySectorS", InputHash.list(comparison.bySector()));
        tree.put("differenceInCornersS", comparison.inCorners());
        tree.put("differenceOnStraightsS", comparison.onStraights());
        tree.put("differenceByCauseS", causes(comparison.byCause()));
        tree.put(
                "parts",
                comparison.parts().stream().map(ComparisonSummary::part).toList());
        return tree;
    }

    private static Map<String, Object> causes(Map<Limit, Double> byCause) {
        Map<String, Object> tree = new LinkedHashMap<>();
        byCause.forEach((limit, seconds) -> tree.put(limit.label(), seconds));
        return tree;
    }

    private static Map<String, Object> part(Comparison.Part part) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("name", part.label());
        tree.put("kind", part.isCorner() ? "corner" : "straight");
        tree.put("fromM", part.from());
        tree.put("toM", part.to());
        tree.put("differenceS", part.difference());
        tree.put("differenceByCauseS", causes(part.byCause()));
        tree.put("drive", drive(part.first()));
        tree.put("otherDrive", drive(part.second()));
        return tree;
    }

    private static Map<String, Object> drive(Comparison.Part.Drive drive) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("timeS", drive.time());
        tree.put("entrySpeedKmh", LapTrace.kmh(drive.entrySpeed()));
        tree.put("minimumSpeedKmh", LapTrace.kmh(drive.minimumSpeed()));
        tree.put("topSpeedKmh", LapTrace.kmh(drive.topSpeed()));
        tree.put("exitSpeedKmh", LapTrace.kmh(drive.exitSpeed()));
        return tree;
    }

    /** The columns of the trace, by name: a value for each station. */
    public static Map<String, double[]> columns(Comparison comparison) {
        Map<String, double[]> columns = new LinkedHashMap<>();
        columns.put("distanceM", comparison.first().column(Channel.DISTANCE));
        columns.put("differenceS", comparison.behind());
        columns.put("speedKmh", speeds(comparison.first()));
        columns.put("otherSpeedKmh", speeds(comparison.second()));
        return columns;
    }

    private static double[] speeds(Lap lap) {
        double[] speeds = lap.column(Channel.SPEED);
        for (int i = 0; i < speeds.length; i++) {
            speeds[i] = LapTrace.kmh(speeds[i]);
        }
        return speeds;
    }

    /** The trace as comma-separated values; numbers to nine digits, the last columns say what limits the cars. */
    public static String csv(Comparison comparison) {
        Map<String, double[]> columns = columns(comparison);
        CsvText csv = new CsvText();
        List<String> header = new ArrayList<>(columns.keySet());
        header.add("limitedBy");
        header.add("otherLimitedBy");
        csv.row(header);
        for (int i = 0; i < comparison.first().count(); i++) {
            List<String> row = new ArrayList<>();
            for (double[] column : columns.values()) {
                row.add(CsvText.number(column[i]));
            }
            row.add(comparison.first().limit(i).label());
            row.add(comparison.second().limit(i).label());
            csv.row(row);
        }
        return csv.text();
    }

    /** The trace as JSON, one list for each column; numbers to nine digits. */
    public static String traceJson(Comparison comparison) {
        Lap first = comparison.first();
        Map<String, Object> tree = ResultHeader.of(
                "comparison-trace/1",
                hash(comparison),
                first.vehicle().car(),
                first.track(),
                first.vehicle().conditions());
        tree.put("otherCar", comparison.second().vehicle().car().name());
        tree.put("otherSettings", comparison.second().vehicle().car().settings());
        columns(comparison).forEach((name, values) -> {
            List<Double> list = new ArrayList<>(values.length);
            for (double value : values) {
                list.add(CsvText.rounded(value));
            }
            tree.put(name, list);
        });
        tree.put("limitedBy", limits(first));
        tree.put("otherLimitedBy", limits(comparison.second()));
        return JsonLayout.text(tree);
    }

    private static List<String> limits(Lap lap) {
        List<String> limits = new ArrayList<>(lap.count());
        for (int i = 0; i < lap.count(); i++) {
            limits.add(lap.limit(i).label());
        }
        return limits;
    }

    private static String hash(Comparison comparison) {
        return new InputHash()
                .with("first", InputHash.of(comparison.first()))
                .with("second", InputHash.of(comparison.second()))
                .sha256();
    }
}
