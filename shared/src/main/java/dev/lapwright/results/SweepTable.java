package dev.lapwright.results;

import dev.lapwright.documents.SettingText;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** A sweep as a table, one row for each lap, the unit in the name of each column; and as JSON. */
public final class SweepTable {
    private static final String FAILURE = "noLapBecause";

    private SweepTable() {}

    /** Comma-separated values under one line of names; numbers to nine digits, empty where there was no lap. */
    public static String csv(SweepResult result) {
        CsvText csv = new CsvText();
        List<String> header = new ArrayList<>();
        result.axes().forEach(axis -> header.add(column(result, axis)));
        header.addAll(
                List.of("lapTimeS", "gainS", "topSpeedKmh", "minimumCornerSpeedKmh", "meanCornerSpeedKmh", FAILURE));
        csv.row(header);
        for (SweepResult.Point point : result.points()) {
            List<String> row = new ArrayList<>();
            point.settings().forEach(setting -> row.add(CsvText.number(setting)));
            row.add(CsvText.number(figure(point, LapFigures::lapTime)));
            row.add(CsvText.number(result.gain(point)));
            row.add(CsvText.number(LapTrace.kmh(figure(point, LapFigures::topSpeed))));
            row.add(CsvText.number(LapTrace.kmh(figure(point, LapFigures::minimumCornerSpeed))));
            row.add(CsvText.number(LapTrace.kmh(figure(point, LapFigures::meanCornerSpeed))));
            row.add(point.failure());
            csv.row(row);
        }
        return csv.text();
    }

    private static double figure(SweepResult.Point point, ToDoubleFunction<LapFigures> figure) {
        return point.figures().isPresent()
                ? figure.applyAsDouble(point.figures().get())
                : Double.NaN;
    }

    /** An adjustment's name says no unit; the path of a quantity ends in it. */
    private static String column(SweepResult result, SweepAxis axis) {
        String symbol = SettingText.unit(result.car(), axis.name());
        return symbol.isEmpty() || axis.name().contains(".") ? axis.name() : axis.name() + " (" + symbol + ")";
    }

    /** The document as text. */
    public static String json(SweepResult result) {
        return JsonLayout.text(tree(result));
    }

    /** The document as maps and lists, for {@link JsonLayout}; new each time, so that more may be added to it. */
    public static Map<String, Object> tree(SweepResult result) {
        Map<String, Object> tree =
                ResultHeader.of("sweep/1", hash(result).sha256(), result.car(), result.track(), result.conditions());
        List<Object> axes = new ArrayList<>();
        for (SweepAxis axis : result.axes()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", axis.name());
            one.put("unit", SettingText.unit(result.car(), axis.name()));
            one.put("values", InputHash.list(axis.values()));
            axes.add(one);
        }
        tree.put("axes", axes);
        tree.put("baseline", figures(result.baseline()));
        tree.put("points", result.points().stream().map(p -> point(result, p)).toList());
        tree.put("fastest", result.fastest().map(p -> point(result, p)).orElse(null));
        return tree;
    }

    private static Map<String, Object> point(SweepResult result, SweepResult.Point point) {
        Map<String, Object> tree = new LinkedHashMap<>();
        for (int k = 0; k < result.axes().size(); k++) {
            tree.put(result.axes().get(k).name(), point.settings().get(k));
        }
        if (point.figures().isPresent()) {
            tree.putAll(figures(point.figures().get()));
            tree.put("gainS", result.gain(point));
        } else {
            tree.put(FAILURE, point.failure());
        }
        return tree;
    }

    private static Map<String, Object> figures(LapFigures figures) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("lapTimeS", figures.lapTime());
        tree.put("topSpeedKmh", LapTrace.kmh(figures.topSpeed()));
        tree.put("minimumCornerSpeedKmh", LapTrace.kmh(figures.minimumCornerSpeed()));
        tree.put("meanCornerSpeedKmh", LapTrace.kmh(figures.meanCornerSpeed()));
        return tree;
    }

    private static InputHash hash(SweepResult sweep) {
        InputHash hash =
                InputHash.of(sweep.car(), sweep.conditions(), sweep.track()).with("axes", InputHash.axes(sweep.axes()));
        sweep.refresh()
                .ifPresent(refresh -> hash.with(
                                "lineFoundFrom", InputHash.list(refresh.from().offsets()))
                        .with("marginM", refresh.choices().margin())
                        .with("spacingM", refresh.choices().spacing()));
        return hash;
    }
}
