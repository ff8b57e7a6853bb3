package dev.lapwright.cli;

import dev.lapwright.report.JsonLayout;
import dev.lapwright.results.Cautions;
import dev.lapwright.results.LapSummary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A lap's result as JSON: the library's summary, with the cautions and the comparisons. */
final class LapJson {
    private LapJson() {}

    static String text(LapResult result) {
        Map<String, Object> tree = LapSummary.tree(result.lap());
        tree.put("setup", result.subject().setup().name());
        tree.put("line", result.line().tree());
        tree.put("cautions", Cautions.of(result.lap()));
        List<Object> others = new ArrayList<>();
        for (LapResult.Other other : result.others()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", other.name());
            one.put("settings", other.subject().car().settings());
            one.put("slowerS", other.slower(result.lap()));
            one.put("slowerBySectorS", list(other.slowerBySector(result.lap())));
            one.putAll(LapSummary.figures(other.lap()));
            one.put("cautions", Cautions.of(other.lap()));
            others.add(one);
        }
        if (!others.isEmpty()) {
            tree.put("against", others);
        }
        return JsonLayout.text(tree);
    }

    /** Values as a list, for JSON. */
    static List<Double> list(double[] values) {
        List<Double> list = new ArrayList<>(values.length);
        for (double value : values) {
            list.add(value);
        }
        return list;
    }
}
