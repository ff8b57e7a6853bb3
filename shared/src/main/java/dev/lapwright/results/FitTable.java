package dev.lapwright.results;

import dev.lapwright.fit.FitParameter;
import dev.lapwright.fit.FitResult;
import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A fit to logged laps as tables, the unit in each name, and as JSON: estimates, corners and straights, and speeds along the
 * lap. Speeds are in km/h, as the trade reads them.
 */
public final class FitTable {
    private static final List<String> DRIVES = List.of("logged", "given", "fitted");
    private static final int PERCENT = 100;

    private FitTable() {}

    /** Name under which a parameter is asked for: {@code drag-area}. */
    public static String word(FitParameter parameter) {
        return parameter.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Name of a parameter's values, with their unit: {@code dragAreaM2}. */
    public static String field(FitParameter parameter) {
        return switch (parameter) {
            case GRIP -> "gripFactor";
            case DRAG_AREA -> "dragAreaM2";
            case DOWNFORCE_AREA -> "downforceAreaM2";
            case POWER -> "powerFactor";
            case ROLLING_RESISTANCE -> "rollingResistance";
        };
    }

    /** The estimates as comma-separated values; numbers to nine digits, empty where a parameter was held. */
    public static String csv(FitResult result) {
        CsvText csv = new CsvText();
        csv.row(List.of("parameter", "before", "fitted", "standardError", "lower", "upper", "standing", "atBound"));
        for (FitResult.Estimate estimate : result.estimates()) {
            csv.row(List.of(
                    field(estimate.parameter()),
                    CsvText.number(estimate.before()),
                    CsvText.number(estimate.value()),
                    CsvText.number(estimate.standardError()),
                    CsvText.number(estimate.lower()),
                    CsvText.number(estimate.upper()),
                    standing(estimate),
                    Boolean.toString(estimate.atBound())));
        }
        return csv.text();
    }

    /** Corners and straights as comma-separated values. */
    public static String partsCsv(FitResult result) {
        CsvText csv = new CsvText();
        List<String> names = new ArrayList<>(List.of("part", "startM", "endM"));
        for (String of : DRIVES) {
            names.addAll(List.of(of + "TimeS", of + "EntryKmh", of + "SlowestKmh", of + "FastestKmh", of + "ExitKmh"));
        }
        csv.row(names);
        for (FitResult.Part part : result.parts()) {
            List<String> cells =
                    new ArrayList<>(List.of(part.label(), CsvText.number(part.start()), CsvText.number(part.end())));
            for (FitResult.Passage drive : drives(part)) {
                cells.add(CsvText.number(drive.time()));
                cells.add(CsvText.number(LapTrace.kmh(drive.entrySpeed())));
                cells.add(CsvText.number(LapTrace.kmh(drive.leastSpeed())));
                cells.add(CsvText.number(LapTrace.kmh(drive.mostSpeed())));
                cells.add(CsvText.number(LapTrace.kmh(drive.exitSpeed())));
            }
            csv.row(cells);
        }
        return csv.text();
    }

    /** Logged and simulated speed along the lap as comma-separated values. */
    public static String traceCsv(FitResult result) {
        CsvText csv = new CsvText();
        Map<String, double[]> columns = trace(result.trace());
        csv.row(List.copyOf(columns.keySet()));
        for (int i = 0; i < result.trace().count(); i++) {
            List<String> cells = new ArrayList<>();
            for (double[] column : columns.values()) {
                cells.add(CsvText.number(column[i]));
            }
            csv.row(cells);
        }
        return csv.text();
    }

    /** The document as maps and lists, for {@link JsonLayout}; new each time, so that more may be added to it. */
    public static Map<String, Object> tree(FitResult result) {
        Map<String, Object> tree =
                ResultHeader.of("fit/1", InputHash.of(result), result.car(), result.track(), result.conditions());
        tree.put("confidencePercent", PERCENT * result.confidence());
        tree.put(
                "estimates", result.estimates().stream().map(FitTable::estimate).toList());
        tree.put("correlation", correlation(result));
        tree.put("ties", result.collinearities().stream().map(FitTable::tie).toList());
        tree.put("loggedTimeS", result.loggedTime());
        tree.put("givenTimeS", result.before().time());
        tree.put("fittedTimeS", result.after().time());
        tree.put("rmsGivenKmh", LapTrace.kmh(result.residuals().rmsBefore()));
        tree.put("rmsFittedKmh", LapTrace.kmh(result.residuals().rmsAfter()));
        tree.put("cellM", result.residuals().cell());
        tree.put("residualPersistence", result.residuals().autocorrelation());
        tree.put("bandwidthCells", result.residuals().correlationCells());
        tree.put("effectiveSamples", result.residuals().effectiveSamples());
        tree.put("laps", result.laps().stream().map(FitTable::lap).toList());
        tree.put("parts", result.parts().stream().map(FitTable::part).toList());
        tree.put("notes", result.notes());
        Map<String, Object> trace = new LinkedHashMap<>();
        trace(result.trace()).forEach((name, column) -> trace.put(name, rounded(column)));
        tree.put("trace", trace);
        return tree;
    }

    private static String standing(FitResult.Estimate estimate) {
        return estimate.identifiability().name().toLowerCase(Locale.ROOT);
    }

    private static Map<String, Object> estimate(FitResult.Estimate estimate) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("parameter", field(estimate.parameter()));
        tree.put("before", estimate.before());
        tree.put("fitted", estimate.value());
        tree.put("standardError", estimate.standardError());
        tree.put("lower", estimate.lower());
        tree.put("upper", estimate.upper());
        tree.put("standing", standing(estimate));
        tree.put("determined", estimate.determined());
        tree.put("atBound", estimate.atBound());
        return tree;
    }

    private static List<Object> correlation(FitResult result) {
        List<Object> rows = new ArrayList<>();
        for (double[] row : result.correlation()) {
            rows.add(InputHash.list(row));
        }
        return rows;
    }

    private static Map<String, Object> tie(FitResult.Collinearity tie) {
        Map<String, Object> tree = new LinkedHashMap<>();
        Map<String, Object> together = new LinkedHashMap<>();
        tie.together().forEach((parameter, change) -> together.put(field(parameter), change));
        tree.put("notToldApart", together);
        tree.put("held", tie.held().stream().map(FitTable::field).toList());
        tree.put("correlation", tie.correlation());
        return tree;
    }

    private static Map<String, Object> lap(FitResult.LapFit lap) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("name", lap.lap().name());
        tree.put("loggedLengthM", lap.lap().length());
        tree.put("distanceScale", lap.alignment().scale());
        tree.put("distanceOffsetM", lap.alignment().offset());
        tree.put("clockTimeS", lap.loggedTime());
        tree.put("speedTimeS", lap.speedTime());
        tree.put("countsPercent", PERCENT * lap.share());
        tree.put("leftOutPercent", PERCENT * lap.dropped());
        tree.put("liftedPercent", PERCENT * lap.lifted());
        tree.put("sameGearPercent", PERCENT * lap.gearAgreement());
        tree.put("longitudinalAccelerationRmsMps2", lap.accelerationRms());
        return tree;
    }

    private static Map<String, Object> part(FitResult.Part part) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("part", part.label());
        tree.put("startM", part.start());
        tree.put("endM", part.end());
        List<FitResult.Passage> drives = drives(part);
        for (int i = 0; i < drives.size(); i++) {
            FitResult.Passage drive = drives.get(i);
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("timeS", drive.time());
            one.put("entryKmh", LapTrace.kmh(drive.entrySpeed()));
            one.put("slowestKmh", LapTrace.kmh(drive.leastSpeed()));
            one.put("fastestKmh", LapTrace.kmh(drive.mostSpeed()));
            one.put("exitKmh", LapTrace.kmh(drive.exitSpeed()));
            tree.put(DRIVES.get(i), one);
        }
        return tree;
    }

    private static List<FitResult.Passage> drives(FitResult.Part part) {
        return List.of(part.logged(), part.before(), part.fitted());
    }

    private static Map<String, double[]> trace(FitResult.Trace trace) {
        Map<String, double[]> columns = new LinkedHashMap<>();
        columns.put("distanceM", trace.distance());
        columns.put("loggedKmh", kmh(trace.logged()));
        columns.put("givenKmh", kmh(trace.before()));
        columns.put("fittedKmh", kmh(trace.after()));
        columns.put("weight", trace.weight());
        return columns;
    }

    private static double[] kmh(double[] speed) {
        double[] kmh = new double[speed.length];
        for (int i = 0; i < kmh.length; i++) {
            kmh[i] = LapTrace.kmh(speed[i]);
        }
        return kmh;
    }

    private static List<Double> rounded(double[] column) {
        List<Double> list = new ArrayList<>(column.length);
        for (double value : column) {
            list.add(CsvText.rounded(value));
        }
        return list;
    }
}
