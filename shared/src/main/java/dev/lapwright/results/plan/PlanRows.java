package dev.lapwright.results.plan;

import dev.lapwright.lap.LapFigures;
import dev.lapwright.report.CsvText;
import dev.lapwright.results.InputHash;
import dev.lapwright.results.LapTrace;
import dev.lapwright.study.plan.LapPlan;
import dev.lapwright.study.sweep.SweepAxis;
import java.util.ArrayList;
import java.util.List;

/**
 * Rows of the table of a plan's laps: number, case, settings, lap time and speeds, why there is no lap, and a hash. The same wherever a lap is driven.
 *
 * <p>The hash is the SHA-256 of all that a case depends on but the settings that stand in the row: car, circuit, line, day, and the program that
 * drives it.
 */
public final class PlanRows {
    /** The first column. */
    public static final String LAP = "lap";
    /** Columns of numbers behind the settings: lap time, s, and speeds, km/h. */
    public static final List<String> FIGURES = List.of(
            "lapTimeS",
            "topSpeedKmh",
            "minimumSpeedKmh",
            "minimumCornerSpeedKmh",
            "meanCornerSpeedKmh",
            "meanSpeedKmh");

    private final LapPlan plan;
    private final List<String> inputs;

    /** @param program which one computes, as text */
    public PlanRows(LapPlan plan, String program) {
        this.plan = plan;
        inputs = plan.cases().stream()
                .map(one -> InputHash.of(
                        one.car(),
                        one.day(),
                        one.stations().track(),
                        one.stations().count(),
                        program))
                .toList();
    }

    /** Names of the columns, of settings those of what is varied. */
    public List<String> head() {
        List<String> head = new ArrayList<>(List.of(LAP, "case"));
        plan.design().axes().stream().map(SweepAxis::name).forEach(head::add);
        head.addAll(FIGURES);
        head.addAll(List.of("fault", "inputs"));
        return head;
    }

    /** What a lap is hashed with, by its number. */
    public String inputs(long number) {
        return inputs.get(plan.caseOf(number));
    }

    /** A row in the order of {@link #head}: a {@link Long}, texts, and {@link Double}s; null where a lap has no figures. */
    public List<Object> row(LapPlan.PlannedLap lap) {
        List<Object> row = new ArrayList<>(List.of(lap.number(), lap.driven().name()));
        for (double value : lap.values()) {
            row.add(value);
        }
        if (lap.figures().isPresent()) {
            LapFigures figures = lap.figures().get();
            row.add(figures.lapTime());
            row.add(LapTrace.kmh(figures.topSpeed()));
            row.add(LapTrace.kmh(figures.minimumSpeed()));
            row.add(LapTrace.kmh(figures.minimumCornerSpeed()));
            row.add(LapTrace.kmh(figures.meanCornerSpeed()));
            row.add(LapTrace.kmh(figures.meanSpeed()));
        } else {
            FIGURES.forEach(none -> row.add(null));
        }
        row.add(lap.fault().replaceAll("[\\r\\n]", " "));
        row.add(inputs(lap.number()));
        return row;
    }

    /** A row as it is written. */
    public static List<String> cells(List<Object> row) {
        List<String> cells = new ArrayList<>();
        for (Object value : row) {
            if (value == null) {
                cells.add("");
            } else {
                cells.add(value instanceof Double number ? CsvText.number(number) : value.toString());
            }
        }
        return cells;
    }
}
