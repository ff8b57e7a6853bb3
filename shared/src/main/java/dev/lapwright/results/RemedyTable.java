package dev.lapwright.results;

import dev.lapwright.chassis.UndersteerGradient;
import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.RemedyResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Remedies as a table, best first, the unit in each name; and as JSON. */
public final class RemedyTable {
    private RemedyTable() {}

    /** Comma-separated values under one line of names: those that move a limit, then those that act below it. */
    public static String csv(RemedyResult result) {
        CsvText csv = new CsvText();
        List<String> header = new ArrayList<>(
                List.of("adjustment", "from", "to", "gainMps2", "slowerS", "gainPerTenthMps2", "gradientShiftDegPerG"));
        for (BalancePhase phase : BalancePhase.values()) {
            header.add(phase.label() + "Mps2");
        }
        header.add("disturbs");
        csv.row(header);
        List<RemedyResult.Remedy> all = new ArrayList<>(result.remedies());
        all.addAll(result.belowTheLimit());
        for (RemedyResult.Remedy remedy : all) {
            List<String> row = new ArrayList<>();
            row.add(remedy.adjustment());
            for (double value : new double[] {
                remedy.from(), remedy.to(), remedy.gain(), remedy.slower(), remedy.gainPerTenth(), gradient(remedy)
            }) {
                row.add(CsvText.number(value));
            }
            for (BalancePhase phase : BalancePhase.values()) {
                row.add(CsvText.number(remedy.shifts().getOrDefault(phase, Double.NaN)));
            }
            row.add(String.join(
                    " ", remedy.disturbed().stream().map(BalancePhase::label).toList()));
            csv.row(row);
        }
        return csv.text();
    }

    /** Maps and lists, for {@link JsonLayout}; new each time. */
    public static Map<String, Object> tree(RemedyResult result) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("tendency", result.complaint().tendency());
        tree.put("phase", result.complaint().phase().label());
        tree.put(
                "corner",
                result.complaint().corner() == 0
                        ? "all"
                        : "T" + result.complaint().corner());
        tree.put("rearLessFrontMps2", result.understeer());
        tree.put("confirmed", result.isConfirmed());
        tree.put("remedies", result.remedies().stream().map(RemedyTable::one).toList());
        tree.put(
                "belowTheLimit",
                result.belowTheLimit().stream().map(RemedyTable::one).toList());
        tree.put("failures", result.failures());
        return tree;
    }

    private static Map<String, Object> one(RemedyResult.Remedy remedy) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("adjustment", remedy.adjustment());
        tree.put("from", remedy.from());
        tree.put("to", remedy.to());
        tree.put("gainMps2", remedy.gain());
        tree.put("slowerS", remedy.slower());
        tree.put("gainPerTenthMps2", remedy.gainPerTenth());
        tree.put("gradientShiftDegPerG", gradient(remedy));
        Map<String, Object> shifts = new LinkedHashMap<>();
        for (BalancePhase phase : BalancePhase.values()) {
            shifts.put(phase.label(), remedy.shifts().getOrDefault(phase, Double.NaN));
        }
        tree.put("rearLessFrontShiftMps2", shifts);
        tree.put(
                "disturbs", remedy.disturbed().stream().map(BalancePhase::label).toList());
        tree.put(
                "cautions",
                remedy.cautions().stream()
                        .sorted()
                        .map(caution -> caution.text())
                        .toList());
        return tree;
    }

    private static double gradient(RemedyResult.Remedy remedy) {
        // Degrees per g do not ask for the wheelbase.
        return new UndersteerGradient(remedy.gradientShift(), 1).degreesPerG();
    }
}
