package dev.lapwright.results;

import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.tyre.TreadTemperatures;
import dev.lapwright.tyre.Wheel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A study of tyre pressures: a table with one row for each tyre, the unit in each name; and as JSON. Gauge pressures. */
public final class PressureTable {
    private PressureTable() {}

    /** Comma-separated values under one line of names; numbers to nine digits. */
    public static String csv(PressureResult result) {
        CsvText csv = new CsvText();
        boolean first = true;
        for (PressureResult.Tyre tyre : result.tyres()) {
            Map<String, Object> row = tyre(result, tyre);
            if (first) {
                csv.row(List.copyOf(row.keySet()));
                first = false;
            }
            List<String> cells = new ArrayList<>();
            row.values().forEach(v -> cells.add(v instanceof Double number ? CsvText.number(number) : v.toString()));
            csv.row(cells);
        }
        return csv.text();
    }

    /** The document as maps and lists, for {@link JsonLayout}; new each time, so that more may be added to it. */
    public static Map<String, Object> tree(PressureResult result) {
        Map<String, Object> tree = ResultHeader.of(
                "pressures/1",
                InputHash.of(result.lap()),
                result.lap().vehicle().car(),
                result.lap().track(),
                result.lap().vehicle().conditions());
        tree.put("lapTimeAtIdealS", result.lap().time());
        tree.put("next", day(result.next(), result.coldTempC()));
        List<Object> tyres = new ArrayList<>();
        for (PressureResult.Tyre tyre : result.tyres()) {
            Map<String, Object> one = tyre(result, tyre);
            one.put("pairs", tyre.pairs().stream().map(PressureTable::pair).toList());
            one.put(
                    "weather",
                    result.weather().stream()
                            .map(day -> weather(result, tyre, day))
                            .toList());
            tyres.add(one);
        }
        tree.put("tyres", tyres);
        Map<String, Object> energy = new LinkedHashMap<>();
        for (Wheel wheel : Wheel.values()) {
            energy.put(wheel.code(), result.energy().of(wheel));
        }
        tree.put("energyPerLapJ", energy);
        tree.put("costs", result.costs().stream().map(PressureTable::cost).toList());
        tree.put("measuredCostS", result.measuredCost());
        Map<String, Object> tread = new LinkedHashMap<>();
        for (Wheel wheel : Wheel.values()) {
            if (result.tread().containsKey(wheel)) {
                tread.put(wheel.code(), tread(result.tread().get(wheel)));
            }
        }
        tree.put("tread", tread);
        return tree;
    }

    private static Map<String, Object> tyre(PressureResult result, PressureResult.Tyre tyre) {
        Map<String, Object> row = new LinkedHashMap<>();
        row.put("tyre", tyre.wheel().code());
        row.put("coldKpaGauge", tyre.last().coldKpa());
        row.put("hotKpaGauge", tyre.last().hotKpa());
        row.put("hotGasC", tyre.last().hotTempC());
        row.put("riseK", tyre.rise());
        row.put("riseSpreadK", tyre.riseSpread());
        row.put("targetKpaGauge", tyre.targetKpa());
        row.put("nextColdKpaGauge", result.nextCold(tyre));
        row.put("nextColdTempC", result.coldTempC());
        row.put("hotPerCold", tyre.hotPerCold(result.next(), result.coldTempC()));
        return row;
    }

    private static Map<String, Object> pair(PressurePair pair) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("coldKpaGauge", pair.coldKpa());
        tree.put("hotKpaGauge", pair.hotKpa());
        tree.putAll(day(pair.day(), pair.coldTempC()));
        tree.put("hotGasC", pair.hotTempC());
        tree.put("riseK", pair.rise());
        return tree;
    }

    private static Map<String, Object> day(PressureDay day, double coldTempC) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("airTempC", day.airTempC());
        tree.put("trackTempC", day.trackTempC());
        tree.put("airPressureHpa", day.airPressureHpa());
        tree.put("coldTempC", coldTempC);
        return tree;
    }

    private static Map<String, Object> weather(PressureResult result, PressureResult.Tyre tyre, PressureDay day) {
        double shift = day.airTempC() - result.next().airTempC();
        double coldTempC = result.coldTempC() + shift;
        Map<String, Object> tree = day(day, coldTempC);
        double set = result.nextCold(tyre);
        tree.put("hotIfSetBeforeKpaGauge", tyre.hotFrom(set, result.coldTempC(), day));
        tree.put("hotIfSetThenKpaGauge", tyre.hotFrom(set, coldTempC, day));
        tree.put("coldForTargetKpaGauge", tyre.coldFor(day, coldTempC));
        return tree;
    }

    private static Map<String, Object> cost(PressureResult.Cost cost) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("awayKpa", cost.awayKpa());
        tree.put("gripLostPercent", 100 * cost.gripLost());
        tree.put("frontS", cost.front());
        tree.put("rearS", cost.rear());
        tree.put("bothS", cost.both());
        return tree;
    }

    private static Map<String, Object> tread(TreadTemperatures tread) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("innerC", tread.innerC());
        tree.put("middleC", tread.middleC());
        tree.put("outerC", tread.outerC());
        tree.put("innerLessOuterK", tread.camberSpread());
        tree.put("middleLessEdgesK", tread.crown());
        tree.put("negativeCamber", tread.negativeCamber().name().toLowerCase(Locale.ROOT));
        tree.put("pressure", tread.pressure().name().toLowerCase(Locale.ROOT));
        return tree;
    }
}
