package dev.lapwright.results;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Caution;
import dev.lapwright.car.EndStop;
import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.robust.AdjustmentVerdict;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * Report of a study of sensitivities: what each adjustment is worth, where it arises, and which of it the timing screen can
 * show.
 *
 * @param subject the car as it stands
 * @param result what was found
 * @param checks of the adjustments whose best settings gain most with the line found anew; empty where none is faster by what counts, or it was not
 *     asked for
 * @param doubt how what is shown of each adjustment stands on drawn cars, in their order; empty if none were drawn
 * @param opinions of the fuller model on the same adjustments as the checks; empty if it was not asked
 */
public record SensitivityReport(
        Subject subject,
        SensitivityResult result,
        List<LineCheck> checks,
        Optional<Standings> doubt,
        List<ModelCheck> opinions) {
    /** So many adjustments are checked with lines found anew. */
    private static final int CHECKED = 3;

    private static final int PAIRS_SHOWN = 5;
    /** More than anybody drives to compare two setups. */
    private static final int MOST_LAPS_SHOWN = 1000;

    private static final int DECIMALS = 3;

    private static final Map<AdjustmentVerdict, String> LISTS = new EnumMap<>(Map.of(
            AdjustmentVerdict.GAIN, "A gain on nearly all these cars",
            AdjustmentVerdict.RIGHT,
                    "Already right: neither the best setting tried nor an end of the range is a gain, and a miss costs",
            AdjustmentVerdict.ALIKE, "Makes no difference that counts on nearly all of them",
            AdjustmentVerdict.UNTOLD,
                    "Cannot be told: a difference that counts on some of them, none or the opposite one on others",
            AdjustmentVerdict.UNSEEN, "Not in this model, which knows too little of it, or nothing"));

    private static final Table<SensitivityResult.Interaction> PAIRS = Table.<SensitivityResult.Interaction>of("Pairs")
            .value("first", SensitivityResult.Interaction::first)
            .value("firstSetting", SensitivityResult.Interaction::firstSetting)
            .value("second", SensitivityResult.Interaction::second)
            .value("secondSetting", SensitivityResult.Interaction::secondSetting)
            .number("differenceAloneS", "sum", "s", Numbers.signed(DECIMALS), SensitivityResult.Interaction::alone)
            .number(
                    "differenceTogetherS",
                    "together",
                    "s",
                    Numbers.signed(DECIMALS),
                    SensitivityResult.Interaction::together)
            .number(
                    "differenceBeyondS",
                    "beyond",
                    "s",
                    Numbers.signed(DECIMALS),
                    SensitivityResult.Interaction::beyond);

    public SensitivityReport {
        checks = List.copyOf(checks);
        opinions = List.copyOf(opinions);
    }

    /** All that was found, for people, machines and files. */
    public Report report() {
        Report report = subject.heading().gap();
        figures(report);
        report.gap()
                .paragraph(
                        "Differences of the lap time by each alone, in seconds (minus is faster); the one worth most over its"
                                + " range stands first.")
                .rows(shownWorths(), result.worths())
                .gap()
                .paragraph(
                        "Where it arises at the best setting, or where the car stands best already at the worst; and how"
                                + " many laps with each of the two settings it takes to see it.")
                .rows(seen(), felt());
        if (!result.interactions().isEmpty()) {
            report.gap()
                    .paragraph("One step of two adjustments together, and what that does beyond the sum of the two:")
                    .rows(
                            pairs(),
                            result.interactions()
                                    .subList(
                                            0,
                                            Math.min(
                                                    PAIRS_SHOWN,
                                                    result.interactions().size())));
        }
        reading().forEach(paragraph -> report.gap().paragraph(paragraph));
        List<String> lessIsSlower = LessIsSlower.told(result, DECIMALS);
        lessIsSlower.forEach(why -> report.gap().paragraph(why));
        doubt.ifPresent(drawn -> doubt(report, drawn));
        ModelCheck.addTo(report, opinions);
        cautions().forEach(report::caution);
        report.fields(fields(result));
        doubt.ifPresent(drawn -> {
            drawn.rehash(report);
            report.field("doubt", drawn.tree())
                    .field("standings", standings(drawn), result.worths())
                    .field("doubtReading", doubted(drawn));
        });
        return report.field("setup", subject.setup().name())
                .field("line", subject.line().tree())
                .field("ownLines", checks.stream().map(LineCheck::tree).toList())
                .field("reading", reading())
                .field("lessIsSlower", lessIsSlower)
                .field("cautions", cautions())
                .csv("sensitivity.csv", table(result), result.worths());
    }

    /** What of it stands on the cars that this one may be. */
    private void doubt(Report report, Standings drawn) {
        report.gap()
                .paragraph("On " + drawn.result().lapped() + " cars that this one may be, each adjustment alone at the"
                        + " setting named above:")
                .rows(standings(drawn), felt());
        doubted(drawn).forEach(sentence -> report.gap().paragraph(sentence));
        drawn.addMeasures(report);
        report.gap().paragraph(drawn.drawn());
    }

    private Table<SensitivityResult.Worth> standings(Standings drawn) {
        Map<SensitivityResult.Worth, RobustnessResult.Standing> standings = new HashMap<>();
        for (int i = 0; i < result.worths().size(); i++) {
            standings.put(result.worths().get(i), drawn.result().standings().get(i));
        }
        List<AdjustmentVerdict> verdicts = Robustness.verdicts(result, drawn.result());
        Table<SensitivityResult.Worth> table = Table.<SensitivityResult.Worth>of("How each adjustment stands")
                .words("adjustment", "adjustment", worth -> worth.adjustment().name())
                .said(
                        "setting",
                        "at",
                        "",
                        worth -> worth.shown().setting(),
                        worth -> setting(worth, worth.shown().setting()))
                .said(
                        "differenceS",
                        "delta",
                        "s",
                        worth -> worth.shown().difference(),
                        worth -> Standings.signed(worth.shown().difference(), standings.get(worth)));
        return drawn.addTo(table, standings::get, false)
                .words(
                        "verdict",
                        "stands",
                        worth -> verdicts.get(result.worths().indexOf(worth)).label());
    }

    /** What stops a setting at an end of its range on the real car; empty for one inside it. */
    private static String stopped(SensitivityResult.Worth worth) {
        if (!EndStop.isEnd(worth.adjustment(), worth.shown().setting())) {
            return "";
        }
        return " (the end of its range; nothing in the model stops it there"
                + EndStop.at(worth.adjustment(), worth.shown().setting())
                        .map(stop -> ", on the car " + stop)
                        .orElse("")
                + ")";
    }

    /** One rule for all: what nine of ten cars agree on, each on its own list. */
    private List<String> doubted(Standings drawn) {
        Map<AdjustmentVerdict, List<String>> lists = new EnumMap<>(AdjustmentVerdict.class);
        List<AdjustmentVerdict> verdicts = Robustness.verdicts(result, drawn.result());
        for (int i = 0; i < verdicts.size(); i++) {
            SensitivityResult.Worth worth = result.worths().get(i);
            String name = worth.adjustment().name();
            String told = verdicts.get(i) == AdjustmentVerdict.GAIN
                    ? name + " at " + setting(worth, worth.shown().setting()) + stopped(worth)
                    : name;
            lists.computeIfAbsent(verdicts.get(i), verdict -> new ArrayList<>()).add(told);
        }
        List<String> said = new ArrayList<>();
        for (AdjustmentVerdict verdict : AdjustmentVerdict.values()) {
            add(said, LISTS.get(verdict), String.join(", ", lists.getOrDefault(verdict, List.of())));
        }
        int asked = drawn.result().asked();
        if (asked >= 0 && asked < result.worths().size()) {
            said.add(drawn.hangsOn(
                    "What " + result.worths().get(asked).adjustment().name() + " is worth"));
        }
        return said;
    }

    /** What was found, for machines. */
    static Map<String, Object> fields(SensitivityResult result) {
        Supplier<String> hash = () -> InputHash.of(result.car(), result.conditions(), result.track())
                .with("scatterS", result.scatter())
                .with("laps", result.laps())
                .sha256();
        return new Report()
                .fields(ResultHeader.of("sensitivity/2", hash, result.car(), result.track(), result.conditions()))
                .field("lapTimeS", result.baseline().lapTime())
                .field("scatterS", result.scatter())
                .field("laps", result.laps())
                .field("differenceVisibleS", result.visible())
                .field(
                        "adjustments",
                        trials("name")
                                .value("sectorsAt", worth -> worth.shown().setting())
                                .value("differenceBySectorS", SensitivityResult.Worth::bySector)
                                .value(
                                        "lapsToSeeWithEach",
                                        worth -> worth.isEverSeen() ? worth.lapsToSee() : Double.NaN)
                                .value("canBeSeen", result::canBeSeen),
                        result.worths())
                .field("interactions", PAIRS, result.interactions())
                .field("fixed", result.fixed().stream().map(Adjustment::name).toList())
                .fields();
    }

    /** One row for each adjustment, the one worth most first. */
    static Table<SensitivityResult.Worth> table(SensitivityResult result) {
        Table<SensitivityResult.Worth> table = trials("adjustment")
                .value("lapsToSeeWithEach", worth -> worth.isEverSeen() ? worth.lapsToSee() : Double.NaN)
                .value("canBeSeen", result::canBeSeen)
                .value("sectorsAt", worth -> worth.shown().setting());
        int sectors = result.worths().get(0).bySector().size();
        for (int i = 0; i < sectors; i++) {
            int sector = i;
            table.value(
                    "differenceSector" + (i + 1) + "S",
                    worth -> worth.bySector().get(sector));
        }
        return table;
    }

    private static Table<SensitivityResult.Worth> trials(String name) {
        return Table.<SensitivityResult.Worth>of("What each adjustment is worth")
                .value(name, worth -> worth.adjustment().name())
                .value("unit", worth -> worth.adjustment().unit().symbol())
                .value("setting", SensitivityResult.Worth::setting)
                .value("stepDownTo", worth -> worth.lower().setting())
                .value("differenceStepDownS", worth -> worth.lower().difference())
                .value("stepUpTo", worth -> worth.higher().setting())
                .value("differenceStepUpS", worth -> worth.higher().difference())
                .value("best", worth -> worth.best().setting())
                .value("differenceBestS", worth -> worth.best().difference())
                .value("worst", worth -> worth.worst().setting())
                .value("differenceWorstS", worth -> worth.worst().difference())
                .value("differenceRangeS", SensitivityResult.Worth::range)
                .value("curvatureS", SensitivityResult.Worth::curvature);
    }

    private void figures(Report report) {
        String name = result.track().isClosed() ? "Lap time" : "Run time";
        report.item(name, Report.strong(Numbers.lapTime(result.baseline().lapTime())))
                .item(
                        "Laps to try",
                        result.laps() + ", " + result.lapsWithEach() + " with each of two setups, that scatter by "
                                + Numbers.plain(result.scatter()) + " s")
                .item(
                        "They show",
                        Numbers.fixed(result.visible(), DECIMALS) + " s or more (two-sided "
                                + Numbers.plain(100 * LapsToSee.SIGNIFICANCE) + " %, power "
                                + Numbers.plain(100 * LapsToSee.POWER) + " %)");
    }

    /** Decimals of a difference that an adjustment makes: those that its doubt leaves. */
    private int digits(SensitivityResult.Worth worth) {
        return doubt.map(drawn -> Standings.decimals(drawn.result()
                        .standings()
                        .get(result.worths().indexOf(worth))
                        .halfWidth()))
                .orElse(DECIMALS);
    }

    private String signed(SensitivityResult.Worth worth, double difference) {
        return Numbers.signed(difference, digits(worth));
    }

    private Table<SensitivityResult.Worth> shownWorths() {
        return Table.<SensitivityResult.Worth>of("What each adjustment is worth")
                .words("", "adjustment", worth -> worth.adjustment().name())
                .words("", "unit", worth -> worth.adjustment().unit().symbol())
                .with(Table.Trait.LESSER)
                .number("", "now", "", Numbers::plain, SensitivityResult.Worth::setting)
                .text("step down", "s", worth -> step(worth, worth.lower()))
                .text("step up", "s", worth -> step(worth, worth.higher()))
                .text("bend", "s", worth -> signed(worth, worth.curvature()))
                .with(Table.Trait.LESSER)
                .number(
                        "",
                        "best at",
                        "",
                        Numbers::plain,
                        worth -> worth.hasFaster() ? worth.best().setting() : null)
                .text(
                        "delta",
                        "s",
                        worth -> worth.hasFaster() ? signed(worth, worth.best().difference()) : "-")
                .number(
                        "",
                        "worst at",
                        "",
                        Numbers::plain,
                        worth -> worth.hasSlower() ? worth.worst().setting() : null)
                .text(
                        "delta",
                        "s",
                        worth -> worth.hasSlower() ? signed(worth, worth.worst().difference()) : "-")
                .text("range", "s", worth -> Numbers.fixed(worth.range(), digits(worth)));
    }

    private String step(SensitivityResult.Worth worth, SensitivityResult.Trial trial) {
        return Double.isNaN(trial.setting()) || !Double.isNaN(trial.difference())
                ? signed(worth, trial.difference())
                : "no lap";
    }

    private Table<SensitivityResult.Worth> seen() {
        Table<SensitivityResult.Worth> table = Table.<SensitivityResult.Worth>of("What can be seen")
                .words("", "adjustment", worth -> worth.adjustment().name())
                .text("at", "", worth -> setting(worth, worth.shown().setting()))
                .text("delta", "s", worth -> signed(worth, worth.shown().difference()));
        int sectors = result.worths().get(0).bySector().size();
        for (int i = 0; i < sectors; i++) {
            int sector = i;
            table.text(
                            "sector " + (i + 1),
                            "s",
                            worth -> signed(worth, worth.bySector().get(sector)))
                    .with(Table.Trait.LESSER);
        }
        return table.text("laps with each", "", SensitivityReport::laps)
                .words("", "in " + result.laps() + " laps", worth -> result.canBeSeen(worth) ? "seen" : "not seen")
                .marking(result::canBeSeen);
    }

    private static String laps(SensitivityResult.Worth worth) {
        if (!worth.isEverSeen()) {
            return "never";
        }
        return worth.lapsToSee() > MOST_LAPS_SHOWN ? ">" + MOST_LAPS_SHOWN : Integer.toString(worth.lapsToSee());
    }

    private Table<SensitivityResult.Interaction> pairs() {
        return Table.<SensitivityResult.Interaction>of("Pairs that act together")
                .words("", "one", pair -> Subject.said(result.car(), pair.first(), pair.firstSetting()))
                .words("", "other", pair -> Subject.said(result.car(), pair.second(), pair.secondSetting()))
                .all(PAIRS, pair -> pair);
    }

    /** Adjustments that the lap time answers to at all, the one worth most first. */
    private List<SensitivityResult.Worth> felt() {
        return result.worths().stream()
                .filter(worth -> !LapTimeDifference.isNone(worth.range()))
                .toList();
    }

    /** A setting with its unit. */
    public static String setting(SensitivityResult.Worth worth, double setting) {
        return Numbers.with(setting, worth.adjustment().unit());
    }

    /** What was found, in plain words. */
    private List<String> reading() {
        List<SensitivityResult.Worth> felt = felt();
        if (felt.isEmpty()) {
            List<String> said = new ArrayList<>();
            said.add("No adjustment of this car makes a difference to the lap time here.");
            fixed(result).ifPresent(said::add);
            return said;
        }
        String laps = result.laps() + " laps";
        List<String> said = new ArrayList<>();
        List<SensitivityResult.Worth> small = felt.stream()
                .filter(worth -> !LapTimeDifference.counts(worth.range()))
                .toList();
        List<SensitivityResult.Worth> large =
                felt.stream().filter(worth -> !small.contains(worth)).toList();
        Set<String> delicate = Optimisation.leftAlone(result.car()).stream()
                .map(OptimisationResult.LeftAlone::name)
                .collect(Collectors.toSet());
        List<SensitivityResult.Worth> asked = large;
        large = asked.stream()
                .filter(worth -> !delicate.contains(worth.adjustment().name()))
                .toList();
        String visible = joined(large, worth -> isFaster(worth) && result.canBeSeen(worth));
        said.add(
                visible.isEmpty()
                        ? "In " + laps
                                + " nothing faster is so by enough to show on the timing screen in four tries of five."
                        : "Faster, and can be seen in " + laps + ": " + visible + ".");
        add(
                said,
                "Faster by the model, but cannot be seen in " + laps + "; choose it by the model or leave it alone",
                joined(large, worth -> isFaster(worth) && !result.canBeSeen(worth)));
        if (!checks.isEmpty()) {
            said.add(checks.stream().map(one -> one.reading(one.what())).collect(Collectors.joining(" ")));
        }
        add(
                said,
                "Faster by less than " + DifferenceWords.least() + ", which does not count",
                joined(large, worth -> worth.hasFaster() && !isFaster(worth)));
        add(
                said,
                "At their fastest already, of the settings tried; what the slowest costs can be seen",
                joined(large, worth -> !worth.hasFaster() && result.canBeSeen(worth)));
        add(
                said,
                "At their fastest already; what the slowest costs cannot be seen",
                joined(large, worth -> !worth.hasFaster() && !result.canBeSeen(worth)));
        add(
                said,
                "No difference that counts over the whole range, less than " + DifferenceWords.least()
                        + (doubt.isPresent() ? ", on the car as it is described" : ""),
                small.stream().map(worth -> worth.adjustment().name()).collect(Collectors.joining(", ")));
        add(
                said,
                "No difference to the lap time in this model",
                result.worths().stream()
                        .filter(worth -> !felt.contains(worth))
                        .map(worth -> worth.adjustment().name())
                        .collect(Collectors.joining(", ")));
        add(
                said,
                "Faster or slower by the model, which knows too little of them to choose by (pressures by the tyre's maker, brakes by"
                        + " how the car stops, fuel and ballast by the distance and the rules)",
                asked.stream()
                        .filter(worth -> delicate.contains(worth.adjustment().name()))
                        .map(worth -> worth.adjustment().name())
                        .collect(Collectors.joining(", ")));
        Map<Adjustment, Double> ended = new LinkedHashMap<>();
        large.stream()
                .filter(worth -> isFaster(worth)
                        && EndStop.isEnd(worth.adjustment(), worth.best().setting()))
                .forEach(worth -> ended.put(worth.adjustment(), worth.best().setting()));
        String ends = Cautions.ends(ended);
        if (!ends.isEmpty()) {
            said.add(ends);
        }
        pairs(result).ifPresent(said::add);
        fixed(result).ifPresent(said::add);
        return said;
    }

    /**
     * Of the adjustments with a faster setting by what counts, the few that gain most by it, the most first: what a reader turns first. Those of
     * which a lap time says too little, as fuel, are left out.
     */
    public static List<SensitivityResult.Worth> first(SensitivityResult result) {
        List<OptimisationResult.LeftAlone> delicate = Optimisation.leftAlone(result.car());
        return result.worths().stream()
                .filter(SensitivityReport::isFaster)
                .filter(worth -> delicate.stream()
                        .noneMatch(kept -> kept.name().equals(worth.adjustment().name())))
                .sorted(Comparator.comparingDouble(
                        (SensitivityResult.Worth worth) -> worth.best().difference()))
                .limit(CHECKED)
                .toList();
    }

    /** Whether another setting is faster by what counts. */
    private static boolean isFaster(SensitivityResult.Worth worth) {
        return worth.hasFaster() && LapTimeDifference.counts(worth.best().difference());
    }

    private static void add(List<String> said, String beginning, String list) {
        if (!list.isEmpty()) {
            said.add(beginning + ": " + list + ".");
        }
    }

    private String joined(List<SensitivityResult.Worth> worths, Predicate<SensitivityResult.Worth> which) {
        return worths.stream()
                .filter(which)
                .map(worth -> worth.adjustment().name() + " at "
                        + setting(worth, worth.shown().setting()) + " ("
                        + signed(worth, worth.shown().difference()) + " s)")
                .collect(Collectors.joining(", "));
    }

    private static Optional<String> fixed(SensitivityResult result) {
        if (result.fixed().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(result.fixed().stream()
                .map(Adjustment::name)
                .collect(Collectors.joining(", ", "With one setting only, and so left out: ", ".")));
    }

    private static Optional<String> pairs(SensitivityResult result) {
        if (result.interactions().isEmpty()) {
            return Optional.empty();
        }
        SensitivityResult.Interaction strongest = result.interactions().get(0);
        double beyond = Math.abs(strongest.beyond());
        if (LapTimeDifference.isNone(beyond)) {
            return Optional.of("Steps of the strongest pairs add up: each can be chosen by itself.");
        }
        double size = Math.max(Math.abs(strongest.alone()), LapTimeDifference.NONE);
        String all = "Of the strongest pairs " + strongest.first() + " and " + strongest.second()
                + " act together most, by " + Numbers.signed(strongest.beyond(), 3)
                + " s beyond the sum of their steps";
        return Optional.of(all
                + (beyond > size / 2
                        ? ": choose them together."
                        : ": small beside that sum, so each can be chosen nearly by itself."));
    }

    /** Where turning what makes the lap faster can hurt somebody. */
    private List<String> cautions() {
        Set<Caution> cautions = EnumSet.noneOf(Caution.class);
        felt().stream().filter(SensitivityResult.Worth::hasFaster).forEach(worth -> cautions.addAll(worth.cautions()));
        return cautions.stream().map(Caution::text).toList();
    }
}
