package dev.lapwright.results;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.Proof;
import dev.lapwright.brief.SuggestedSetup;
import dev.lapwright.brief.TestPlan;
import dev.lapwright.brief.WingTrade;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.Limit;
import dev.lapwright.logs.LapLogFile;
import dev.lapwright.study.compare.Comparison;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Changes that a brief recommends, as JSON: suggested, traded, to be tested, proved. */
final class BriefChanges {
    private BriefChanges() {}

    static Map<String, Object> suggestion(SuggestedSetup suggested) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("turnedByChoiceOfSensitivity", suggested.chosen());
        tree.put("setup", suggested.setup().settings());
        tree.put("together", effect(suggested.effect()));
        tree.put("differenceBeyondSumOfUndoneS", suggested.together());
        tree.put("differenceToBestS", suggested.leftToBest());
        tree.put(
                "changes",
                suggested.changes().stream().map(BriefChanges::suggested).toList());
        tree.put(
                "balance", BriefSummary.part(suggested.balance(), b -> BriefSummary.headless(BalanceReport.fields(b))));
        tree.put("search", BriefSummary.headless(OptimisationReport.fields(suggested.study())));
        return tree;
    }

    private static Map<String, Object> suggested(SuggestedSetup.Change change) {
        Map<String, Object> tree = setting(change.change());
        tree.put("undone", BriefSummary.part(change.undone(), BriefChanges::effect));
        tree.put("alone", BriefSummary.part(change.alone(), BriefChanges::effect));
        return tree;
    }

    private static Map<String, Object> setting(BriefResult.SettingChange change) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("name", change.adjustment().name());
        tree.put("unit", change.adjustment().unit().symbol());
        tree.put("from", change.from());
        tree.put("to", change.to());
        return tree;
    }

    private static Map<String, Object> effect(BriefResult.ChangeEffect effect) {
        Map<String, Object> tree = shortly(effect);
        Map<String, Object> causes = new LinkedHashMap<>();
        effect.byCause().forEach((limit, seconds) -> causes.put(limit.label(), seconds));
        tree.put("differenceByCauseS", causes);
        tree.put("places", effect.places().stream().map(BriefChanges::place).toList());
        return tree;
    }

    private static Map<String, Object> shortly(BriefResult.ChangeEffect effect) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("differenceS", effect.difference());
        tree.put("differenceBySectorS", effect.bySector());
        tree.put("differenceInCornersS", effect.inCorners());
        tree.put("differenceOnStraightsS", effect.onStraights());
        return tree;
    }

    private static Map<String, Object> place(Comparison.Part part) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("name", part.label());
        tree.put("differenceS", part.difference());
        tree.put("mainCause", part.mainCause().map(Limit::label).orElse(null));
        return tree;
    }

    static List<Object> wings(List<WingTrade> trades) {
        return trades.stream().<Object>map(BriefChanges::wing).toList();
    }

    private static Map<String, Object> wing(WingTrade trade) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("name", trade.adjustment().name());
        tree.put("unit", trade.adjustment().unit().symbol());
        tree.put("setting", trade.setting());
        tree.put("fastest", trade.fastest().map(WingTrade.Setting::setting).orElse(null));
        tree.put("choices", trade.choices().stream().map(BriefChanges::choice).toList());
        return tree;
    }

    private static Map<String, Object> choice(WingTrade.Setting choice) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("setting", choice.setting());
        tree.put("lapTimeS", choice.figures().map(LapFigures::lapTime).orElse(null));
        tree.put(
                "topSpeedKmh",
                choice.figures().map(f -> LapTrace.kmh(f.topSpeed())).orElse(null));
        choice.effect().ifPresent(effect -> tree.putAll(shortly(effect)));
        tree.put("dragAreaM2", choice.dragArea());
        tree.put("frontDownforceAreaM2", choice.frontArea());
        tree.put("rearDownforceAreaM2", choice.rearArea());
        tree.put("failure", choice.failure());
        return tree;
    }

    static Map<String, Object> tests(TestPlan plan) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("laps", plan.laps());
        tree.put("scatterS", plan.scatter());
        tree.put("lapsLeft", plan.lapsLeft());
        tree.put("runs", plan.runs().stream().map(BriefChanges::test).toList());
        return tree;
    }

    private static Map<String, Object> test(TestPlan.Run run) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("fate", run.fate().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        tree.put("changes", run.changes().stream().map(BriefChanges::setting).toList());
        // Null where no number of laps would do.
        boolean ever = run.lapsToSee() < Integer.MAX_VALUE;
        tree.put("lapsToSeeWithEach", ever ? run.lapsToSee() : null);
        tree.put("lapsBefore", ever ? run.firstLaps() : null);
        tree.put("lapsChanged", ever ? run.changedLaps() : null);
        tree.put("lapsAfter", ever ? run.lastLaps() : null);
        tree.put("runningTotal", run.total());
        tree.put("expected", effect(run.effect()));
        return tree;
    }

    static Map<String, Object> proof(Proof proof, Optional<LapLogFile> log) {
        LapLogFile file = log.orElseGet(() -> new LapLogFile("", proof.laps().log(), ""));
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("log", file.name());
        tree.put("columns", file.columns());
        tree.put("bestLapS", proof.bestLap());
        tree.put("modelLapS", proof.modelLap());
        tree.put("setups", EvidenceReport.PACES.maps(proof.paces()));
        tree.put(
                "changes",
                proof.changes().stream().map(change -> proved(change, file)).toList());
        return tree;
    }

    private static Map<String, Object> proved(Proof.Change change, LapLogFile file) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("before", change.before());
        tree.put("after", change.after());
        tree.put("expected", BriefSummary.part(change.expected(), BriefChanges::effect));
        tree.put(
                "expectedDeviationS",
                change.doubt().map(RobustnessResult.Standing::deviation).orElse(null));
        tree.put("agrees", change.agrees().orElse(null));
        tree.put("seen", BriefSummary.part(change.seen(), seen -> comparison(file, seen)));
        return tree;
    }

    /** The setups stand beside it, the laps one by one in the document of the log itself. */
    private static Map<String, Object> comparison(LapLogFile file, EvidenceResult seen) {
        Map<String, Object> tree = BriefSummary.headless(new EvidenceReport(file, seen).fields());
        List.of("log", "columns", "setups", "laps").forEach(tree::remove);
        return tree;
    }
}
