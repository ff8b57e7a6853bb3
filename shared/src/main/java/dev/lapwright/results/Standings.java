package dev.lapwright.results;

import dev.lapwright.car.CarDoubt;
import dev.lapwright.doubt.Unknown;
import dev.lapwright.doubt.UnknownShare;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;

/**
 * Standing of settings on the cars that a car may be, said once for all reports: columns, fields and sentences.
 *
 * @param result what was found
 */
public record Standings(RobustnessResult result) {
    /** Digits of a lap time. */
    private static final int MOST_DECIMALS = 3;

    /** Those in which 0.05 s can be told. */
    private static final int LEAST_DECIMALS = 2;

    private static final double TWO_DIGITS = 3.55;

    private static final int OTHERS_SAID = 2;

    static final Table<Unknown> UNKNOWN = Table.<Unknown>of("What is not known exactly")
            .words("name", "", Unknown::title)
            .value("standardDeviation", unknown -> unknown.limit() ? null : (Object) unknown.size())
            .value("limit", unknown -> unknown.limit() ? (Object) unknown.size() : null)
            .value("unit", Unknown::unit)
            .value("source", unknown -> unknown.source().map(Standings::word).orElse("assumed"))
            .value("measure", Unknown::measure);

    static final Table<UnknownShare> SHARES = Table.<UnknownShare>of("What it hangs on")
            .value("name", share -> share.unknown().title())
            .value("share", UnknownShare::share)
            .value("measure", share -> share.unknown().measure());

    private static final int SHARES_SAID = 4;

    /**
     * Decimals of a difference of lap times that an interval of such a half width (s) leaves: two digits of a half width that begins with 1.00
     * to 3.54, one of others (the rounding of the Particle Data Group, <i>Review of Particle Physics</i>, introduction; from memory). No fewer
     * than hundredths while it is below a second, as 0.05 s are what counts.
     */
    public static int decimals(double halfWidth) {
        if (!(halfWidth > 0)) {
            return MOST_DECIMALS;
        }
        int exponent = (int) Math.floor(Math.log10(halfWidth));
        int digits = (halfWidth < TWO_DIGITS * Math.pow(10, exponent) ? 1 : 0) - exponent;
        return Math.max(halfWidth < 1 ? LEAST_DECIMALS : 0, Math.min(MOST_DECIMALS, digits));
    }

    /** A difference (s) with as many digits as a standing leaves it. */
    public static String signed(double difference, RobustnessResult.Standing standing) {
        return Numbers.signed(difference, standing == null ? MOST_DECIMALS : decimals(standing.halfWidth()));
    }

    /** A difference in words, with as many digits as a standing leaves it: "0.12 s faster". */
    public static String said(double difference, RobustnessResult.Standing standing) {
        return DifferenceWords.said(difference, decimals(standing == null ? 0 : standing.halfWidth()));
    }

    /** The same beside what it is compared with: "0.12 s faster than standard". */
    static String than(double difference, RobustnessResult.Standing standing, String what) {
        return DifferenceWords.than(difference, what, decimals(standing == null ? 0 : standing.halfWidth()));
    }

    /** A standing in a line: interval, chance and verdict. */
    String told(RobustnessResult.Standing standing) {
        if (standing.laps() == 0) {
            return "no lap on any of " + cars() + " that this one may be";
        }
        return interval(standing) + " s in nine of ten of " + cars() + " that this one may be, faster on "
                + percent(standing, result::chanceOfGain) + " %: "
                + Report.strong(standing.verdict().label());
    }

    /** A standing for machines. */
    Map<String, Object> fields(RobustnessResult.Standing standing) {
        return addTo(Table.of("Standing"), (RobustnessResult.Standing one) -> one, false)
                .map(standing);
    }

    /**
     * Adds the columns of a setting's standing.
     *
     * @param of the standing of a row; null where it has none
     * @param rivals whether the rows are settings of which one is taken, so that one is the best
     */
    <R> Table<R> addTo(Table<R> table, Function<? super R, RobustnessResult.Standing> of, boolean rivals) {
        table.value("differenceLowS", row -> known(of.apply(row), RobustnessResult.Standing::low))
                .value("differenceHighS", row -> known(of.apply(row), RobustnessResult.Standing::high))
                .said("", "nine in ten", "s", row -> null, row -> interval(of.apply(row)))
                .said(
                        "chanceOfGain",
                        "gain in",
                        "%",
                        row -> known(of.apply(row), result::chanceOfGain),
                        row -> isNone(of.apply(row)) ? "-" : percent(of.apply(row), result::chanceOfGain));
        if (rivals) {
            table.said(
                            "chanceOfBest",
                            "best in",
                            "%",
                            row -> known(of.apply(row), result::chanceOfBest),
                            row -> percent(of.apply(row), result::chanceOfBest))
                    .value("differenceToBestS", row -> known(of.apply(row), RobustnessResult.Standing::cost));
        }
        return table.value(
                "standing",
                row -> of.apply(row) == null ? null : of.apply(row).verdict().label());
    }

    private static Double known(
            RobustnessResult.Standing standing, Function<RobustnessResult.Standing, Double> figure) {
        return standing == null ? null : figure.apply(standing);
    }

    /** An interval of a difference, as in "-0.12 to +0.22". */
    public static String interval(RobustnessResult.Standing standing) {
        if (isNone(standing)) {
            return "-";
        }
        return signed(standing.low(), standing) + " to " + signed(standing.high(), standing);
    }

    /** Whether there is nothing to tell: no lap, or the car as it stands itself. */
    private static boolean isNone(RobustnessResult.Standing standing) {
        return standing == null || standing.laps() == 0 || (standing.low() == 0 && standing.high() == 0);
    }

    private static String percent(
            RobustnessResult.Standing standing, Function<RobustnessResult.Standing, Double> chance) {
        return standing == null ? "-" : Numbers.fixed(100 * chance.apply(standing), 0);
    }

    /** Adds what they were drawn by; what is assumed goes with the version. */
    void addTo(InputHash hash) {
        hash.with("draws", result.draws()).with("seed", result.seed()).with("assumed", result.assumed());
    }

    /** Writes over a report's hash of its inputs one that knows the draws too. */
    void rehash(Report report) {
        InputHash hash = new InputHash().with("undoubted", report.fields().get(ResultHeader.HASH));
        addTo(hash);
        report.field(ResultHeader.HASH, hash.sha256());
    }

    /** What machines read of the draws. */
    Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("draws", result.draws());
        tree.put("lapped", result.lapped());
        result.before().ifPresent(before -> tree.put("lappedBeforeTheDriversWord", before.lapped()));
        tree.put("seed", result.seed());
        tree.put("assumed", result.assumed());
        tree.put("intervalPercent", 90);
        tree.put("differenceToBestAsItStandsS", result.present().cost());
        tree.put("bestAsItStands", result.present().best());
        tree.put("hangsOn", SHARES.maps(result.shares()));
        tree.put("leastShareTold", result.leastShare());
        tree.put("unknowns", UNKNOWN.maps(result.unknowns()));
        return tree;
    }

    /** Of how many cars a setting is the best for how many, with those that are so most often beside it. */
    String best(int asked, List<String> names) {
        List<RobustnessResult.Standing> all = result.standings();
        StringBuilder text = new StringBuilder("Of " + cars() + " that this one may be, " + names.get(asked)
                + " is the best setting for " + all.get(asked).best());
        List<Integer> others = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (i != asked && all.get(i).best() > 0) {
                others.add(i);
            }
        }
        others.sort((a, b) -> Integer.compare(all.get(b).best(), all.get(a).best()));
        for (int k = 0; k < Math.min(OTHERS_SAID, others.size()); k++) {
            int i = others.get(k);
            text.append(", ")
                    .append(names.get(i))
                    .append(" for ")
                    .append(all.get(i).best());
        }
        return text.append('.').toString();
    }

    private String cars() {
        return result.lapped() + (result.lapped() == 1 ? " car" : " cars");
    }

    /** What it costs to keep the car as it stands, and which setting costs least. */
    String cost(List<String> names) {
        double keeping = result.present().cost();
        String kept = "Keeping the baseline loses " + loss(keeping) + " on average to the best setting of each car";
        return result.least()
                .filter(i -> keeping - result.standings().get(i).cost() > 0)
                .map(i -> {
                    double least = result.standings().get(i).cost();
                    boolean counts = LapTimeDifference.counts(keeping - least);
                    return kept + "; " + names.get(i) + " loses least, " + loss(least)
                            + (counts ? "." : ": no difference that counts.");
                })
                .orElse(kept + "; no setting loses less.");
    }

    private static String loss(double seconds) {
        return Numbers.fixed(seconds, 2) + " s";
    }

    /** What the answer hangs on, and how to know it better. */
    String hangsOn(String answer) {
        return hangsOn(answer, result.shares(), result.leastShare());
    }

    /** What a single setting's difference hangs on, what to measure first, and what hearing the driver changes: a paragraph each. */
    List<String> said(String answer) {
        List<String> said = new ArrayList<>();
        if (result.before().isPresent()) {
            said.add(heard());
        }
        said.add((hangsOn(answer) + " " + first(result.shares())).strip());
        return said;
    }

    /** Adds what to measure first, a line each. */
    void addMeasures(Report report) {
        addMeasures(report, result.shares());
    }

    /** What hearing the driver changes of the best setting; empty where nothing was said. */
    String heard(int asked, String name) {
        return heard(before ->
                name + " was the best for " + before.standings().get(asked).best());
    }

    /** What hearing the driver changes of a single setting; empty where nothing was said. */
    private String heard() {
        return heard(before ->
                "it was " + new Standings(before).told(before.standings().get(0)));
    }

    private String heard(Function<RobustnessResult, String> said) {
        return result.before()
                .map(before -> "What the driver says goes with " + result.lapped() + " of " + before.lapped()
                        + " cars drawn, and only they count. Of all, " + said.apply(before) + ".")
                .orElse("");
    }

    /** From what the cars were drawn. */
    String drawn() {
        int lost = result.draws() - result.before().orElse(result).lapped();
        return drawn(result.draws(), lost, result.seed(), result.unknowns());
    }

    private static String word(CarDoubt.Source source) {
        return source.name().toLowerCase(Locale.ROOT);
    }

    /** What an answer hangs on, in a sentence. */
    static String hangsOn(String answer, List<UnknownShare> shares, double least) {
        if (shares.isEmpty()) {
            return answer + " hangs on no single unknown, as far as so many draws tell: none has a share of more than "
                    + Numbers.fixed(100 * least, 0) + " %.";
        }
        List<String> said = new ArrayList<>();
        for (UnknownShare share : foremost(shares)) {
            said.add(Report.verbatim(share.unknown().title()) + " (" + Numbers.fixed(100 * share.share(), 0) + " %)");
        }
        return answer + " hangs most on " + String.join(", ", said) + "; shares of its variance, each alone.";
    }

    private static List<UnknownShare> foremost(List<UnknownShare> shares) {
        return shares.subList(0, Math.min(SHARES_SAID, shares.size()));
    }

    /** What to measure first, in a sentence; empty where nothing stands out. */
    static String first(List<UnknownShare> shares) {
        return foremost(shares).stream()
                .filter(share -> !share.unknown().measure().isEmpty())
                .findFirst()
                .map(share -> "To know it better, first "
                        + Report.verbatim(share.unknown().measure()) + " (common practice).")
                .orElse("");
    }

    /** Adds what to measure first, a line each. */
    static void addMeasures(Report report, List<UnknownShare> shares) {
        List<UnknownShare> measured = foremost(shares).stream()
                .filter(share -> !share.unknown().measure().isEmpty())
                .toList();
        if (!measured.isEmpty()) {
            report.line("To know it better, first things first (common practice):");
            measured.forEach(
                    share -> report.point(Report.verbatim(share.unknown().title()) + ": "
                            + Report.verbatim(share.unknown().measure())));
        }
    }

    /**
     * From what cars were drawn.
     *
     * @param lost drawn cars that had no lap
     */
    static String drawn(int draws, int lost, long seed, List<Unknown> unknowns) {
        int assumed = (int) unknowns.stream().filter(Unknown::isAssumed).count();
        return draws + " cars were drawn (seed " + seed + ") by " + unknowns.size()
                + (unknowns.size() == 1 ? " unknown" : " unknowns") + ", " + (unknowns.size() - assumed)
                + " stated in the documents and " + assumed + " assumed by their class"
                + (lost == 0 ? "" : "; on " + lost + " of them the baseline had no lap, and they do not count")
                + ". What the model leaves out is in none of them.";
    }
}
