package dev.lapwright.results;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Caution;
import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Report of a study of sensitivities: what each adjustment is worth, where it arises, and which of it the timing screen can
 * show.
 *
 * @param subject the car as it stands
 * @param line on which the laps were driven
 * @param result what was found
 */
public record SensitivityReport(Subject subject, ChosenLine line, SensitivityResult result) {
    private static final int PAIRS_SHOWN = 5;
    /** More than anybody drives to compare two setups. */
    private static final int MOST_LAPS_SHOWN = 1000;

    private static final int DECIMALS = 3;

    private static final Table<SensitivityResult.Interaction> PAIRS = Table.<SensitivityResult.Interaction>of("Pairs")
            .value("first", SensitivityResult.Interaction::first)
            .value("firstSetting", SensitivityResult.Interaction::firstSetting)
            .value("second", SensitivityResult.Interaction::second)
            .value("secondSetting", SensitivityResult.Interaction::secondSetting)
            .number("aloneGainS", "sum", "s", Numbers.signed(DECIMALS), SensitivityResult.Interaction::alone)
            .number("togetherGainS", "together", "s", Numbers.signed(DECIMALS), SensitivityResult.Interaction::together)
            .number("beyondS", "beyond", "s", Numbers.signed(DECIMALS), SensitivityResult.Interaction::beyond);

    /** All that was found, for people, machines and files. */
    public Report report() {
        Report report = line.addTo(subject.heading()).gap();
        figures(report);
        report.gap()
                .paragraph(
                        "Seconds gained by each alone (+ is faster); the one worth most over its range stands first.")
                .rows(worth(), result.gains())
                .gap()
                .paragraph(
                        "Where it arises at the best setting, or where the car stands best already at the worst; and how"
                                + " many laps with each of the two settings it takes to see it.")
                .rows(seen(), felt());
        if (!result.interactions().isEmpty()) {
            report.gap()
                    .paragraph("One step of two adjustments together, and what that gains beyond the sum of the two:")
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
        cautions().forEach(report::caution);
        return report.fields(fields(result))
                .field("setup", subject.setup().name())
                .field("line", line.tree())
                .field("reading", reading())
                .field("cautions", cautions())
                .csv("sensitivity.csv", table(result), result.gains());
    }

    /** What was found, for machines. */
    static Map<String, Object> fields(SensitivityResult result) {
        String hash = InputHash.of(result.car(), result.conditions(), result.track())
                .with("scatterS", result.scatter())
                .with("laps", result.laps())
                .sha256();
        return new Report()
                .fields(ResultHeader.of("sensitivity/1", hash, result.car(), result.track(), result.conditions()))
                .field("lapTimeS", result.baseline().lapTime())
                .field("scatterS", result.scatter())
                .field("laps", result.laps())
                .field("visibleGainS", result.visibleGain())
                .field(
                        "adjustments",
                        trials("name")
                                .value("sectorsAt", gain -> gain.shown().setting())
                                .value("sectorGainsS", SensitivityResult.Gain::sectorGains)
                                .value("lapsToSeeWithEach", gain -> gain.isEverSeen() ? gain.lapsToSee() : Double.NaN)
                                .value("canBeSeen", result::canBeSeen),
                        result.gains())
                .field("interactions", PAIRS, result.interactions())
                .field("fixed", result.fixed().stream().map(Adjustment::name).toList())
                .fields();
    }

    /** One row for each adjustment, the one worth most first. */
    static Table<SensitivityResult.Gain> table(SensitivityResult result) {
        Table<SensitivityResult.Gain> table = trials("adjustment")
                .value("lapsToSeeWithEach", gain -> gain.isEverSeen() ? gain.lapsToSee() : Double.NaN)
                .value("canBeSeen", result::canBeSeen)
                .value("sectorsAt", gain -> gain.shown().setting());
        int sectors = result.gains().get(0).sectorGains().size();
        for (int i = 0; i < sectors; i++) {
            int sector = i;
            table.value("sector" + (i + 1) + "GainS", gain -> gain.sectorGains().get(sector));
        }
        return table;
    }

    private static Table<SensitivityResult.Gain> trials(String name) {
        return Table.<SensitivityResult.Gain>of("What each adjustment is worth")
                .value(name, gain -> gain.adjustment().name())
                .value("unit", gain -> gain.adjustment().unit().symbol())
                .value("setting", SensitivityResult.Gain::setting)
                .value("stepDownTo", gain -> gain.lower().setting())
                .value("stepDownGainS", gain -> gain.lower().gain())
                .value("stepUpTo", gain -> gain.higher().setting())
                .value("stepUpGainS", gain -> gain.higher().gain())
                .value("best", gain -> gain.best().setting())
                .value("bestGainS", gain -> gain.best().gain())
                .value("worst", gain -> gain.worst().setting())
                .value("worstGainS", gain -> gain.worst().gain())
                .value("rangeS", SensitivityResult.Gain::range)
                .value("curvatureS", SensitivityResult.Gain::curvature);
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
                        Numbers.fixed(result.visibleGain(), DECIMALS) + " s or more (two-sided "
                                + Numbers.plain(100 * LapsToSee.SIGNIFICANCE) + " %, power "
                                + Numbers.plain(100 * LapsToSee.POWER) + " %)");
    }

    private static Table<SensitivityResult.Gain> worth() {
        return Table.<SensitivityResult.Gain>of("What each adjustment is worth")
                .words("", "adjustment", gain -> gain.adjustment().name())
                .words("", "unit", gain -> gain.adjustment().unit().symbol())
                .number("", "now", "", Numbers::plain, SensitivityResult.Gain::setting)
                .text("step down", "s", gain -> step(gain.lower()))
                .text("step up", "s", gain -> step(gain.higher()))
                .number("", "bend", "s", Numbers.signed(DECIMALS), SensitivityResult.Gain::curvature)
                .number(
                        "",
                        "best at",
                        "",
                        Numbers::plain,
                        gain -> gain.isGain() ? gain.best().setting() : null)
                .number(
                        "",
                        "gain",
                        "s",
                        Numbers.signed(DECIMALS),
                        gain -> gain.isGain() ? gain.best().gain() : null)
                .number(
                        "",
                        "worst at",
                        "",
                        Numbers::plain,
                        gain -> gain.isLoss() ? gain.worst().setting() : null)
                .number(
                        "",
                        "gain",
                        "s",
                        Numbers.signed(DECIMALS),
                        gain -> gain.isLoss() ? gain.worst().gain() : null)
                .number("", "range", "s", Numbers.fixed(DECIMALS), SensitivityResult.Gain::range);
    }

    private static String step(SensitivityResult.Trial trial) {
        return Double.isNaN(trial.setting()) || !Double.isNaN(trial.gain())
                ? Numbers.signed(trial.gain(), DECIMALS)
                : "no lap";
    }

    private Table<SensitivityResult.Gain> seen() {
        Table<SensitivityResult.Gain> table = Table.<SensitivityResult.Gain>of("What can be seen")
                .words("", "adjustment", gain -> gain.adjustment().name())
                .text("at", "", gain -> setting(gain, gain.shown().setting()))
                .number(
                        "",
                        "gain",
                        "s",
                        Numbers.signed(DECIMALS),
                        gain -> gain.shown().gain());
        int sectors = result.gains().get(0).sectorGains().size();
        for (int i = 0; i < sectors; i++) {
            int sector = i;
            table.number(
                    "",
                    "sector " + (i + 1),
                    "s",
                    Numbers.signed(DECIMALS),
                    gain -> gain.sectorGains().get(sector));
        }
        return table.text("laps with each", "", SensitivityReport::laps)
                .words("", "in " + result.laps() + " laps", gain -> result.canBeSeen(gain) ? "seen" : "not seen")
                .marking(result::canBeSeen);
    }

    private static String laps(SensitivityResult.Gain gain) {
        if (!gain.isEverSeen()) {
            return "never";
        }
        return gain.lapsToSee() > MOST_LAPS_SHOWN ? ">" + MOST_LAPS_SHOWN : Integer.toString(gain.lapsToSee());
    }

    private Table<SensitivityResult.Interaction> pairs() {
        return Table.<SensitivityResult.Interaction>of("Pairs that act together")
                .words("", "one", pair -> Subject.said(result.car(), pair.first(), pair.firstSetting()))
                .words("", "other", pair -> Subject.said(result.car(), pair.second(), pair.secondSetting()))
                .all(PAIRS, pair -> pair);
    }

    /** Adjustments that the lap time answers to at all, the one worth most first. */
    private List<SensitivityResult.Gain> felt() {
        return result.gains().stream()
                .filter(gain -> gain.range() >= SensitivityResult.Gain.NOTHING)
                .toList();
    }

    /** A setting with its unit. */
    public static String setting(SensitivityResult.Gain gain, double setting) {
        return Numbers.with(setting, gain.adjustment().unit());
    }

    /** What was found, in plain words. */
    private List<String> reading() {
        List<SensitivityResult.Gain> felt = felt();
        if (felt.isEmpty()) {
            List<String> said = new ArrayList<>();
            said.add("No adjustment of this car makes a difference to the lap time here.");
            fixed(result).ifPresent(said::add);
            return said;
        }
        String laps = result.laps() + " laps";
        List<String> said = new ArrayList<>();
        String visible = joined(felt, gain -> gain.isGain() && result.canBeSeen(gain));
        said.add(
                visible.isEmpty()
                        ? "In " + laps + " no gain is large enough to show on the timing screen in four tries of five."
                        : "Faster, and can be seen in " + laps + ": " + visible + ".");
        add(
                said,
                "Faster by the model, but cannot be seen in " + laps + "; choose it by the model or leave it alone",
                joined(felt, gain -> gain.isGain() && !result.canBeSeen(gain)));
        add(
                said,
                "At their fastest already, of the settings tried; what the slowest costs can be seen",
                joined(felt, gain -> !gain.isGain() && result.canBeSeen(gain)));
        add(
                said,
                "At their fastest already; what the slowest costs cannot be seen",
                joined(felt, gain -> !gain.isGain() && !result.canBeSeen(gain)));
        add(
                said,
                "No difference to the lap time in this model",
                result.gains().stream()
                        .filter(gain -> !felt.contains(gain))
                        .map(gain -> gain.adjustment().name())
                        .collect(Collectors.joining(", ")));
        pairs(result).ifPresent(said::add);
        fixed(result).ifPresent(said::add);
        return said;
    }

    private static void add(List<String> said, String beginning, String list) {
        if (!list.isEmpty()) {
            said.add(beginning + ": " + list + ".");
        }
    }

    private static String joined(List<SensitivityResult.Gain> gains, Predicate<SensitivityResult.Gain> which) {
        return gains.stream()
                .filter(which)
                .map(gain -> gain.adjustment().name() + " at "
                        + setting(gain, gain.shown().setting()) + " ("
                        + Numbers.signed(gain.shown().gain(), 3) + " s)")
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
        if (beyond < SensitivityResult.Gain.NOTHING) {
            return Optional.of("Steps of the strongest pairs add up: each can be chosen by itself.");
        }
        double size = Math.max(Math.abs(strongest.alone()), SensitivityResult.Gain.NOTHING);
        String all = "Of the strongest pairs " + strongest.first() + " and " + strongest.second()
                + " act together most, by " + Numbers.signed(strongest.beyond(), 3)
                + " s beyond the sum of their steps";
        return Optional.of(all
                + (beyond > size / 2
                        ? ": choose them together."
                        : ": small beside that sum, so each can be chosen nearly by itself."));
    }

    /** Where turning what gains can hurt somebody. */
    private List<String> cautions() {
        Set<Caution> cautions = EnumSet.noneOf(Caution.class);
        felt().stream().filter(SensitivityResult.Gain::isGain).forEach(gain -> cautions.addAll(gain.cautions()));
        return cautions.stream().map(Caution::text).toList();
    }
}
