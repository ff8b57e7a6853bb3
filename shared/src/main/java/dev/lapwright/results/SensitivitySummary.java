package dev.lapwright.results;

import dev.lapwright.car.Adjustment;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.LinkedHashMap;
import java.util.Map;

/** What matters at a circuit as JSON. Unrounded, the unit in each name; gains are positive where the car is faster. */
public final class SensitivitySummary {
    private SensitivitySummary() {}

    /** The document as maps and lists, for {@link JsonLayout}; new each time, so that more may be added to it. */
    public static Map<String, Object> tree(SensitivityResult result) {
        Map<String, Object> tree = ResultHeader.of(
                "sensitivity/1", InputHash.of(result), result.car(), result.track(), result.conditions());
        tree.put("lapTimeS", result.baseline().lapTime());
        tree.put("scatterS", result.scatter());
        tree.put("laps", result.laps());
        tree.put("visibleGainS", result.visibleGain());
        tree.put(
                "adjustments",
                result.gains().stream().map(gain -> gain(gain, result)).toList());
        tree.put(
                "interactions",
                result.interactions().stream()
                        .map(SensitivitySummary::interaction)
                        .toList());
        tree.put("fixed", result.fixed().stream().map(Adjustment::name).toList());
        return tree;
    }

    private static Map<String, Object> gain(SensitivityResult.Gain gain, SensitivityResult result) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("name", gain.adjustment().name());
        tree.put("unit", gain.adjustment().unit().symbol());
        tree.put("setting", gain.setting());
        tree.put("stepDownTo", gain.lower().setting());
        tree.put("stepDownGainS", gain.lower().gain());
        tree.put("stepUpTo", gain.higher().setting());
        tree.put("stepUpGainS", gain.higher().gain());
        tree.put("best", gain.best().setting());
        tree.put("bestGainS", gain.best().gain());
        tree.put("worst", gain.worst().setting());
        tree.put("worstGainS", gain.worst().gain());
        tree.put("rangeS", gain.range());
        tree.put("curvatureS", gain.curvature());
        tree.put("sectorsAt", gain.shown().setting());
        tree.put("sectorGainsS", gain.sectorGains());
        tree.put("lapsToSeeWithEach", laps(gain));
        tree.put("canBeSeen", result.canBeSeen(gain));
        return tree;
    }

    /** Null where no number of laps would do. */
    static Integer laps(SensitivityResult.Gain gain) {
        return gain.isEverSeen() ? gain.lapsToSee() : null;
    }

    private static Map<String, Object> interaction(SensitivityResult.Interaction pair) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("first", pair.first());
        tree.put("firstSetting", pair.firstSetting());
        tree.put("second", pair.second());
        tree.put("secondSetting", pair.secondSetting());
        tree.put("aloneGainS", pair.alone());
        tree.put("togetherGainS", pair.together());
        tree.put("beyondS", pair.beyond());
        return tree;
    }
}
