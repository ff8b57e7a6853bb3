package dev.lapwright.cli.brief;

import dev.lapwright.brief.AdjustmentVerdicts;
import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.ChangePlan;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.EndStop;
import dev.lapwright.cli.page.Page;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.results.DifferenceWords;
import dev.lapwright.results.ModelCheck;
import dev.lapwright.results.Standings;
import dev.lapwright.study.opinion.SecondOpinionResult.Verdict;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Plan of changes of a brief, said once for page, terminal and JSON. */
public final class BriefPlan {
    /** Digits of a gain and of the lap times it leads to: no interval here leaves it more. */
    private static final int DECIMALS = 2;

    private static final double DIGIT = 100;

    private final BriefResult result;

    public BriefPlan(BriefReport brief) {
        result = brief.result();
    }

    /**
     * Row of the table of steps: a step, or all of them.
     *
     * @param number from 1; 0 for the whole
     * @param turns what is turned; none for the whole
     * @param effect what it does
     * @param doubt how that stands
     * @param opinion of the fuller model; none for the whole
     * @param before what the steps before it gain, s, minus where faster, to the digits shown
     * @param after the same with it
     */
    public record Row(
            int number,
            List<ChangePlan.Turn> turns,
            BriefResult.ChangeEffect effect,
            Optional<RobustnessResult.Standing> doubt,
            Optional<ModelCheck> opinion,
            double before,
            double after) {
        /** As it is shown: so that what is shown adds up to the whole. */
        public double shown() {
            return after - before;
        }
    }

    /** The steps, and the whole last; empty without a plan that changes anything. */
    public List<Row> rows() {
        Optional<ChangePlan> plan =
                result.plan().value().filter(found -> !found.steps().isEmpty());
        if (plan.isEmpty()) {
            return List.of();
        }
        List<Row> rows = new ArrayList<>();
        for (ChangePlan.Step step : plan.get().steps()) {
            rows.add(row(
                    rows.size() + 1,
                    step.turns(),
                    step.effect(),
                    step.doubt(),
                    step.opinion().map(said -> ModelCheck.of(said, step.doubt()))));
        }
        rows.add(row(0, List.of(), plan.get().effect(), plan.get().doubt(), Optional.empty()));
        return rows;
    }

    private Row row(
            int number,
            List<ChangePlan.Turn> turns,
            BriefResult.ChangeEffect effect,
            Optional<RobustnessResult.Standing> doubt,
            Optional<ModelCheck> opinion) {
        return new Row(
                number,
                turns,
                effect,
                doubt,
                opinion,
                gained(effect.comparison().first()),
                gained(effect.comparison().second()));
    }

    /** The gain of several steps together, in their order, s, minus where faster: as those of the single steps add up to it where they are shown. */
    double shown(List<ChangePlan.Step> steps) {
        return gained(steps.get(steps.size() - 1).effect().comparison().second())
                - gained(steps.get(0).effect().comparison().first());
    }

    private double gained(Lap lap) {
        return digits(lap.time() - result.lap().time());
    }

    private static double digits(double seconds) {
        return Math.rint(DIGIT * seconds) / DIGIT;
    }

    /** The steps, one row each. */
    public Table<Row> table() {
        return Table.<Row>of("The changes, one run each, each on top of those before; the gains add up")
                .value("step", row -> row.number() == 0 ? null : row.number())
                .words("", "Change", BriefPlan::title)
                .value("turns", BriefPlan::turns)
                .text("Now → set", "", BriefPlan::settings)
                .value("differenceS", row -> row.effect().difference())
                .text("Gain", "s", row -> Numbers.signed(row.shown(), DECIMALS))
                .value(
                        "differenceLowS",
                        row -> row.doubt().map(one -> one.low()).orElse(null))
                .value(
                        "differenceHighS",
                        row -> row.doubt().map(one -> one.high()).orElse(null))
                .text("Nine in ten", "s", BriefPlan::interval)
                .value("chanceOfGain", row -> chance(row).orElse(null))
                .text("Gain on", "% of cars", BriefPlan::percent)
                .value(
                        "standing",
                        row -> row.doubt().map(one -> one.verdict().label()).orElse(null))
                .text(
                        "Lap then",
                        "min:s",
                        row -> lapTime(row.effect().comparison().second().time()))
                .value("lapTimeS", row -> row.effect().comparison().second().time())
                .value(
                        "secondOpinion",
                        row -> row.opinion().map(ModelCheck::tree).orElse(null))
                .value("why", row -> row.number() == 0 ? null : Report.plain(why(row)))
                .words("", "Why", BriefPlan::why)
                .with(Table.Trait.LONG)
                .marking(row -> row.number() == 0);
    }

    private static String title(Row row) {
        return row.number() == 0
                ? "All of it"
                : row.number() + ". "
                        + BriefWords.listed(row.turns().stream()
                                .map(turn -> BriefWords.name(turn.change().adjustment()))
                                .toList());
    }

    private static List<Map<String, Object>> turns(Row row) {
        return row.number() == 0
                ? null
                : row.turns().stream().map(BriefPlan::turn).toList();
    }

    private static Map<String, Object> turn(ChangePlan.Turn turn) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("name", turn.change().adjustment().name());
        tree.put("unit", turn.change().adjustment().unit().symbol());
        tree.put("from", turn.change().from());
        tree.put("to", turn.change().to());
        tree.put("goal", turn.goal());
        return tree;
    }

    private static Map<String, Object> leftOut(ChangePlan.Left left) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("name", left.change().adjustment().name());
        tree.put("unit", left.change().adjustment().unit().symbol());
        tree.put("from", left.change().from());
        tree.put("to", left.change().to());
        tree.put("reason", reason(left));
        left.doubt().ifPresent(standing -> {
            tree.put("differenceLowS", standing.low());
            tree.put("differenceHighS", standing.high());
            tree.put("chanceOfGain", (double) standing.gains() / standing.laps());
        });
        return tree;
    }

    private static String settings(Row row) {
        return row.number() == 0
                ? "-"
                : String.join(
                        "; ",
                        row.turns().stream()
                                .map(turn -> BriefWords.fromTo(turn.change()))
                                .toList());
    }

    private static Optional<Double> chance(Row row) {
        return row.doubt()
                .filter(standing -> standing.laps() > 0)
                .map(standing -> (double) standing.gains() / standing.laps());
    }

    private static String interval(Row row) {
        return row.doubt().map(BriefPlan::interval).orElse("-");
    }

    /** An interval of nine in ten of a difference, with the digits of the plan. */
    static String interval(RobustnessResult.Standing standing) {
        return standing.laps() == 0
                ? "no lap"
                : Numbers.signed(standing.low(), Math.min(DECIMALS, Standings.decimals(standing.halfWidth()))) + " to "
                        + Numbers.signed(standing.high(), Math.min(DECIMALS, Standings.decimals(standing.halfWidth())));
    }

    private static String percent(Row row) {
        return chance(row).map(chance -> Numbers.fixed(100 * chance, 0)).orElse("-");
    }

    /** A lap time with the digits of the plan. */
    private static String lapTime(double seconds) {
        String thousandths = Numbers.lapTime(digits(seconds));
        return thousandths.substring(0, thousandths.length() - 1);
    }

    private static String why(Row row) {
        if (row.number() == 0) {
            return "-";
        }
        StringBuilder text = new StringBuilder(BriefWords.sentence(BriefWords.where(row.effect())));
        if (row.turns().size() > 1) {
            text.append(" Together, because by itself none of them makes a difference that counts.");
        }
        for (ChangePlan.Turn turn : row.turns()) {
            if (turn.isPartial()) {
                text.append(" Stops short of the end of its range, ")
                        .append(BriefWords.setting(turn.change().adjustment(), turn.goal()))
                        .append('.');
            } else if (EndStop.isEnd(turn.change().adjustment(), turn.change().to())) {
                text.append(" It is the end of its range, where nothing in the model stops it")
                        .append(EndStop.at(
                                        turn.change().adjustment(),
                                        turn.change().to())
                                .map(stop -> "; on the car, " + stop)
                                .orElse(""))
                        .append('.');
            }
        }
        return text.toString();
    }

    /** The steps as bars, each of which begins where the one before ends. */
    public Page.Block waterfall() {
        List<Row> rows = rows();
        double first = rows.get(0).before();
        double most =
                rows.stream().mapToDouble(row -> first - row.after()).max().orElseThrow();
        return Page.Block.shares(rows.stream()
                .map(row -> new Page.Share(
                        title(row).replaceAll(" \\(.*?\\)", ""),
                        Numbers.signed(row.shown(), DECIMALS) + " s",
                        percentOf(-row.before(), most),
                        percentOf(row.before() - row.after(), most)))
                .toList());
    }

    private static String percentOf(double part, double most) {
        return Numbers.fixed(100 * part / most, 1) + "%";
    }

    /** What is to be said below the steps: where the suggestion lies further on, and the rule of the order. */
    public String remarks() {
        return (result.choices().draws() == 0
                        ? ""
                        : "A step is a gain of " + DifferenceWords.least()
                                + " or more in the middle of the cars that this one may be, and a gain on two in"
                                + " three of them or more. ")
                + "The order, and to stop short of the end of a range, are common practice, no source."
                + seconded(rows())
                + result.plan()
                        .value()
                        .flatMap(BriefPlan::left)
                        .map(text -> " " + text)
                        .orElse("");
    }

    /** What the plan comes to, in a few sentences; empty without a plan. */
    public Optional<String> reading() {
        return result.plan().value().map(plan -> {
            List<Row> rows = rows();
            if (rows.isEmpty()) {
                return "Nothing: no change makes the lap faster by " + DifferenceWords.least() + " or more"
                        + left(plan).map(text -> " on the way. " + text).orElse(".");
            }
            List<String> said = rows.stream()
                    .filter(row -> row.number() > 0)
                    .map(row -> row.number() + ". "
                            + BriefWords.listed(row.turns().stream()
                                    .map(turn -> BriefWords.change(turn.change()))
                                    .toList())
                            + " (" + Numbers.signed(row.shown(), DECIMALS) + " s)")
                    .toList();
            Row whole = rows.get(rows.size() - 1);
            return String.join("; ", said) + ". "
                    + (said.size() > 1 ? "In this order, one run each: together " : "That is ")
                    + Numbers.signed(whole.shown(), DECIMALS) + " s a lap, "
                    + lapTime(whole.effect().comparison().second().time())
                    + doubtful(whole) + "." + denied(rows)
                    + left(plan).map(text -> " " + text).orElse("");
        });
    }

    /** What the steps are worth by the fuller model, in their order. */
    private static String seconded(List<Row> rows) {
        List<String> words = rows.stream()
                .flatMap(row -> row.opinion().stream())
                .map(ModelCheck::inShort)
                .toList();
        if (rows.stream().flatMap(row -> row.opinion().stream()).allMatch(said -> said.verdict() == Verdict.UNKNOWN)) {
            return words.isEmpty() ? "" : " The fuller model has no word on the steps.";
        }
        return " By the fuller model the steps are worth " + BriefWords.listed(words) + ".";
    }

    /** The steps that the fuller model takes for no gain. */
    private static String denied(List<Row> rows) {
        List<String> steps = rows.stream()
                .filter(row -> row.opinion()
                        .map(ModelCheck::verdict)
                        .filter(Verdict.CONTRADICTED::equals)
                        .isPresent())
                .map(row -> Integer.toString(row.number()))
                .toList();
        return steps.isEmpty()
                ? ""
                : " The fuller model denies " + (steps.size() == 1 ? "step " : "steps ") + BriefWords.listed(steps)
                        + ": believe it only after a test.";
    }

    private static String doubtful(Row whole) {
        return whole.doubt()
                .map(standing -> "; " + interval(standing) + " s in nine of ten of " + standing.laps()
                        + " cars that this one may be, faster on " + percent(whole) + " %")
                .orElse("");
    }

    /** What the suggestion turns as well. */
    private static Optional<String> left(ChangePlan plan) {
        if (plan.left().isEmpty()) {
            return Optional.empty();
        }
        boolean counts = plan.leftToGoal() <= -LapTimeDifference.COUNTS;
        List<String> further = plan.left().stream()
                .map(left -> BriefWords.change(left.change()) + " (" + reason(left) + ")")
                .toList();
        return Optional.of("Left out: " + BriefWords.listed(further) + ". On the car as it is described that is "
                + (counts
                        ? "another " + Numbers.signed(plan.leftToGoal(), DECIMALS) + " s."
                        : "no difference that counts."));
    }

    /** Why a change is left out; what stops it on the car where it would end at an end of its range. */
    private static String reason(ChangePlan.Left left) {
        return switch (left.reason()) {
            case END ->
                "the end of its range"
                        + EndStop.at(left.change().adjustment(), left.change().to())
                                .map(stop -> "; on the car, " + stop)
                                .orElse(", where nothing in the model stops it");
            case NOT_FIRM ->
                left.doubt()
                        .filter(standing -> standing.laps() > 0)
                        .map(standing -> (left.tried() == left.change().to()
                                        ? ""
                                        : "at "
                                                + BriefWords.setting(
                                                        left.change().adjustment(), left.tried()) + " ")
                                + "a gain on " + Numbers.fixed(100.0 * standing.gains() / standing.laps(), 0)
                                + " % of the cars that this one may be, " + interval(standing)
                                + " s, in the middle " + Numbers.signed(standing.middle(), DECIMALS) + " s")
                        .orElse("no gain on most cars that this one may be");
            case NO_GAIN -> "no gain that counts once the others are made";
            case BARS_FIRST -> "bars come before springs";
            case ENOUGH -> "enough for a day";
        };
    }

    /** The adjustments by what can be said of each: a name and a line for each list that is not empty. */
    public List<Page.Fact> verdicts() {
        List<Page.Fact> facts = new ArrayList<>();
        result.verdicts().value().ifPresent(found -> {
            add(facts, "A gain by itself", found.gains());
            add(facts, "Already right", found.right());
            add(facts, "Makes no difference", found.alike());
            add(facts, "Cannot be told", found.untold());
            add(facts, "Not in this model", found.unseen());
        });
        return facts;
    }

    private static void add(List<Page.Fact> facts, String name, List<SensitivityResult.Worth> worths) {
        if (!worths.isEmpty()) {
            List<String> names = worths.stream()
                    .map(SensitivityResult.Worth::adjustment)
                    .map(BriefPlan::shortName)
                    .toList();
            facts.add(new Page.Fact(name, BriefWords.sentence(BriefWords.listed(names))));
        }
    }

    /** Without what is said in brackets, or behind a comma. */
    private static String shortName(Adjustment adjustment) {
        String name = BriefWords.inSentence(adjustment).replaceAll(" \\([^)]*\\)|,.*", "");
        return name.isBlank() ? BriefWords.inSentence(adjustment) : name;
    }

    /** The rule of those lists, and of what it hangs on. */
    public String rule() {
        String drawn = result.verdicts()
                .value()
                .map(AdjustmentVerdicts::doubt)
                .flatMap(BriefResult.Part::value)
                .filter(found -> found.draws() > 0)
                .map(found -> "on nine in ten of " + found.draws() + " cars that this one may be (seed " + found.seed()
                        + "; sensitivity --draws " + found.draws() + " tells their intervals)")
                .orElse("on the car as it is described");
        return "One rule for the lists: each adjustment that the plan does not turn, turned by itself to its fastest setting, if that is faster by "
                + DifferenceWords.least() + ", and to both ends of its range; what holds " + drawn
                + " is said, and less than " + DifferenceWords.least() + " is no difference.";
    }

    /** All of it for machines. */
    Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        result.plan().value().ifPresent(plan -> {
            List<Row> rows = rows();
            tree.put("steps", table().maps(rows.isEmpty() ? rows : rows.subList(0, rows.size() - 1)));
            tree.put("whole", rows.isEmpty() ? null : table().map(rows.get(rows.size() - 1)));
            tree.put("leftOut", plan.left().stream().map(BriefPlan::leftOut).toList());
            tree.put("differenceLeftToSuggestionS", plan.leftToGoal());
        });
        reading().ifPresent(text -> tree.put("reading", Report.plain(text)));
        return tree;
    }
}
