package dev.lapwright.results;

import dev.lapwright.documents.DocumentKind;
import dev.lapwright.evidence.BootstrapInterval;
import dev.lapwright.evidence.CleanLaps;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.MeanDifference;
import dev.lapwright.evidence.RankSum;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.evidence.Trend;
import dev.lapwright.logs.LapLogFile;
import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What a lap log shows: a table of its laps as they were judged, the unit in each name; and everything as JSON. */
public final class EvidenceTable {
    private static final String LAPS = "laps";

    private EvidenceTable() {}

    /** The laps as comma-separated values under one line of names; numbers to nine digits. */
    public static String csv(EvidenceResult result) {
        TimingLog log = result.laps().log();
        CsvText csv = new CsvText();
        csv.row(List.of("lap", "run", "lapOfRun", "timeS", "timeWithoutTrendS", "setup", "status"));
        for (int i = 0; i < log.laps().size(); i++) {
            TimingLog.Lap lap = log.laps().get(i);
            csv.row(List.of(
                    Integer.toString(lap.number()),
                    Integer.toString(log.run(i) + 1),
                    Integer.toString(log.runLap(i)),
                    CsvText.number(lap.time()),
                    CsvText.number(result.trend().without(log, i)),
                    lap.setup(),
                    result.laps().status(i).label()));
        }
        return csv.text();
    }

    /** The document as text. */
    public static String json(LapLogFile file, EvidenceResult result) {
        return JsonLayout.text(tree(file, result));
    }

    /** The document as maps and lists, for {@link JsonLayout}; new each time, so that more may be added to it. */
    public static Map<String, Object> tree(LapLogFile file, EvidenceResult result) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put(DocumentKind.MARK, "evidence/1");
        tree.put("version", ResultHeader.version());
        tree.put("log", file.name());
        tree.put("columns", file.columns());
        tree.put("rule", rule(result.laps()));
        tree.put("trend", trend(result.trend()));
        tree.put("setups", result.paces().stream().map(EvidenceTable::pace).toList());
        tree.put(
                "comparison",
                result.comparison().map(c -> comparison(result, c)).orElse(null));
        tree.put(LAPS, laps(result));
        return tree;
    }

    private static Map<String, Object> rule(CleanLaps laps) {
        CleanLaps.Rule rule = laps.rule();
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("warmUpLaps", rule.warmUpLaps());
        tree.put("slowLimitRobustDeviations", rule.slowLimit());
        Map<String, Object> limits = new LinkedHashMap<>();
        laps.log().setups().forEach(setup -> limits.put(setup, laps.slowLimit(setup)));
        tree.put("slowerThanS", limits);
        Map<String, Object> counts = new LinkedHashMap<>();
        for (CleanLaps.Status status : CleanLaps.Status.values()) {
            counts.put(status.label(), laps.count(status));
        }
        tree.put("counts", counts);
        return tree;
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static Map<String, Object> trend(Trend trend) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("kind", word(trend.kind()));
        tree.put("slopeSPerLap", trend.slope());
        tree.put("standardErrorSPerLap", trend.error());
        tree.put("referenceLap", trend.reference());
        return tree;
    }

    static Map<String, Object> pace(EvidenceResult.SetupPace pace) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("setup", pace.setup());
        tree.put(LAPS, pace.logged());
        tree.put("cleanLaps", pace.clean());
        tree.put("bestS", pace.best());
        tree.put("medianS", pace.median());
        tree.put("meanS", pace.mean());
        tree.put("spreadS", pace.spread());
        tree.put("consistencyPercent", 100 * pace.consistency());
        tree.put("lapToLapS", pace.lapToLap());
        return tree;
    }

    private static Map<String, Object> comparison(EvidenceResult result, EvidenceResult.Comparison comparison) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("before", comparison.before().setup());
        tree.put("after", comparison.after().setup());
        tree.put("scatterS", comparison.scatter());
        tree.put("welch", comparison.tests().map(t -> difference(t.welch())).orElse(null));
        tree.put(
                "mannWhitney", comparison.tests().map(t -> rankSum(t.rankSum())).orElse(null));
        tree.put(
                "bootstrap",
                comparison.tests().map(t -> bootstrap(t.bootstrap())).orElse(null));
        tree.put("byTrend", comparison.tests().map(EvidenceTable::byTrend).orElse(null));
        tree.put("returned", comparison.returned().map(EvidenceTable::returned).orElse(null));
        tree.put("predictedS", result.choices().predicted().orElse(Double.NaN));
        tree.put("verdict", verdict(comparison.verdict()));
        return tree;
    }

    private static Map<String, Object> difference(MeanDifference difference) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("differenceS", difference.difference());
        tree.put("standardErrorS", difference.error());
        tree.put("degreesOfFreedom", difference.freedom());
        tree.put("lowS", difference.low());
        tree.put("highS", difference.high());
        tree.put("p", difference.p());
        return tree;
    }

    private static Map<String, Object> rankSum(RankSum test) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("u", test.u());
        tree.put("pairs", test.pairs());
        tree.put("p", test.p());
        tree.put("exact", test.exact());
        return tree;
    }

    private static Map<String, Object> bootstrap(BootstrapInterval interval) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("lowS", interval.low());
        tree.put("highS", interval.high());
        tree.put("standardErrorS", interval.error());
        tree.put("fasterPercent", 100 * interval.fasterShare());
        tree.put("resamples", interval.resamples());
        tree.put("seed", interval.seed());
        return tree;
    }

    private static Map<String, Object> byTrend(EvidenceResult.Tests tests) {
        Map<String, Object> tree = new LinkedHashMap<>();
        for (Trend.Kind kind : Trend.Kind.values()) {
            tree.put(word(kind), difference(tests.byTrend().get(kind)));
        }
        return tree;
    }

    private static Map<String, Object> returned(EvidenceResult.ReturnCheck check) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("firstLaps", check.firstLaps());
        tree.put("lastLaps", check.lastLaps());
        tree.put("drifted", check.drifted());
        tree.put("cameBack", check.cameBack());
        tree.put("change", difference(check.change()));
        tree.put("againstTheMiddle", difference(check.bracketed()));
        return tree;
    }

    private static Map<String, Object> verdict(EvidenceResult.Verdict verdict) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("finding", word(verdict.finding()));
        tree.put("changeLookedForS", verdict.target());
        boolean known = verdict.needed() > 0 && verdict.needed() < Integer.MAX_VALUE;
        tree.put("lapsNeededWithEach", known ? verdict.needed() : null);
        tree.put("moreLapsBefore", known ? verdict.moreBefore() : null);
        tree.put("moreLapsAfter", known ? verdict.moreAfter() : null);
        return tree;
    }

    private static List<Object> laps(EvidenceResult result) {
        TimingLog log = result.laps().log();
        List<Object> laps = new ArrayList<>();
        for (int i = 0; i < log.laps().size(); i++) {
            TimingLog.Lap lap = log.laps().get(i);
            Map<String, Object> tree = new LinkedHashMap<>();
            tree.put("lap", lap.number());
            tree.put("run", log.run(i) + 1);
            tree.put("timeS", lap.time());
            tree.put("setup", lap.setup());
            tree.put("status", result.laps().status(i).label());
            laps.add(tree);
        }
        return laps;
    }
}
