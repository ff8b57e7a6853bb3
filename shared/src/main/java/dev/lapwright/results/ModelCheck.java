package dev.lapwright.results;

import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.study.opinion.EitherModel;
import dev.lapwright.study.opinion.SecondOpinionResult;
import dev.lapwright.study.opinion.SecondOpinionResult.Verdict;
import dev.lapwright.study.robust.RobustnessResult.Standing;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Check of a recommendation by the fuller model of a lap beside the fast one that found it.
 *
 * @param what is recommended, for people
 * @param opinion both models' words on it
 * @param refusal why the fuller model has none; empty where it has one
 * @param drawn how it stands on drawn cars by the fast model; empty if none were drawn
 */
public record ModelCheck(
        String what, SecondOpinionResult.Opinion opinion, Optional<String> refusal, Optional<Standing> drawn) {
    private static final double PERCENT = 100;

    /** The check of one of the changes that both models were asked about. */
    public static ModelCheck of(SecondOpinionResult asked, int change, Optional<Standing> drawn) {
        SecondOpinionResult.Opinion opinion = asked.opinions().get(change);
        return new ModelCheck(opinion.name(), opinion, asked.refusal(), drawn);
    }

    /** Half of the interval on drawn cars, s; NaN if none were drawn. */
    private double doubt() {
        return drawn.map(Standing::halfWidth).orElse(Double.NaN);
    }

    /** On drawn cars by either model; empty without such cars, or without a lap. */
    private Optional<EitherModel> either() {
        return verdict() == Verdict.UNKNOWN
                ? Optional.empty()
                : drawn.filter(one -> !Double.isNaN(one.halfWidth()))
                        .map(one -> EitherModel.of(one, opinion.fuller() - opinion.fast()));
    }

    /** Both models' doubt together, behind a sentence; empty if not known. */
    private String together() {
        return either().map(all -> " Either model counted alike, it makes "
                        + Numbers.signed(all.low(), digits()) + " to " + Numbers.signed(all.high(), digits())
                        + " s and gains on " + Numbers.fixed(PERCENT * all.gain(), 0) + " of 100 plausible cars.")
                .orElse("");
    }

    /** What both models together leave of it; without drawn cars nothing is in doubt. */
    public Verdict verdict() {
        return opinion.verdict(LapTimeDifference.COUNTS, drawn.isPresent() ? doubt() : 0);
    }

    /** No finer than what counts, nor than how far the models are apart, which is in doubt as well. */
    private int digits() {
        double apart = 0.5 * Math.abs(opinion.fuller() - opinion.fast());
        double known = Double.isNaN(apart) ? LapTimeDifference.COUNTS : Math.max(LapTimeDifference.COUNTS, apart);
        return Standings.decimals(drawn.isPresent() ? Math.max(known, doubt()) : known);
    }

    private String said(double difference) {
        return DifferenceWords.said(difference, digits());
    }

    private String noneBecause() {
        return refusal.orElse("one of the two cars has no lap by the fuller model");
    }

    /** Both differences, as an item of a heading. */
    public String text() {
        return verdict() == Verdict.UNKNOWN
                ? "none: " + noneBecause()
                : Numbers.signed(opinion.fuller(), digits()) + " s by the fuller model, "
                        + Numbers.signed(opinion.fast(), digits()) + " s by the fast one";
    }

    /**
     * What it comes to, in a sentence or two.
     *
     * @param subject what was checked, as the sentence calls it
     */
    public String reading(String subject) {
        Verdict verdict = verdict();
        if (verdict == Verdict.UNKNOWN) {
            return "There is no second opinion on " + subject + " (" + noneBecause() + ").";
        }
        String both = "By the fuller model " + subject + " is " + said(opinion.fuller());
        String words = switch (verdict) {
            case BOTH_GAIN -> both + ": both models call it a gain.";
            case NO_GAIN -> both + ": no gain that counts by either model.";
            case CONTRADICTED ->
                both + ", by the fast one " + said(opinion.fast())
                        + (drawn.isEmpty() ? "" : ", further apart than what is in doubt of the car") + apart()
                        + " Not recommended before a test on track.";
            default -> both + ", by the fast one " + said(opinion.fast()) + ": try both on track" + apart();
        };
        return words + together();
    }

    /** The check of a step of a plan, whose name stands beside it. */
    public static ModelCheck of(SecondOpinionResult.Opinion opinion, Optional<Standing> drawn) {
        return new ModelCheck(opinion.name(), opinion, Optional.empty(), drawn);
    }

    /** The fuller model's difference alone, where the fast one's stands beside it. */
    public String inShort() {
        return switch (verdict()) {
            case UNKNOWN -> "no word";
            case CONTRADICTED -> Numbers.signed(opinion.fuller(), digits()) + " s (denied)";
            default -> Numbers.signed(opinion.fuller(), digits()) + " s";
        };
    }

    /** The same in a line. */
    public String line() {
        return "Second opinion: " + text()
                + switch (verdict()) {
                    case BOTH_GAIN -> "; both call it a gain.";
                    case CONTRADICTED -> "; not to be counted on before a test on track.";
                    default -> ".";
                }
                + either().map(all -> " Either model counted alike, a gain on " + Numbers.fixed(PERCENT * all.gain(), 0)
                                + " of 100 plausible cars.")
                        .orElse("");
    }

    /** Adds what the fuller model says of recommendations to a report, a paragraph each after some space; nothing if it was not asked. */
    static void addTo(Report report, List<ModelCheck> checks) {
        if (checks.isEmpty()) {
            return;
        }
        List<String> said = checks.stream().map(one -> one.reading(one.what())).toList();
        said.forEach(sentence -> report.gap()
                .paragraph("Second opinion: " + sentence.substring(0, 1).toLowerCase(Locale.ROOT)
                        + sentence.substring(1)));
        report.field("secondOpinion", checks.stream().map(ModelCheck::tree).toList())
                .field("secondOpinionReading", said);
    }

    /** Where the models part most, and what limits the car there by each. */
    private String apart() {
        return opinion.most()
                .map(place -> ". They part most in " + Report.verbatim(place.label()) + ", where "
                        + (place.fastLimit() == place.fullerLimit()
                                ? "both are limited by " + place.fastLimit().label()
                                : "the fuller one is limited by "
                                        + place.fullerLimit().label() + " and the fast one by "
                                        + place.fastLimit().label())
                        + ".")
                .orElse(".");
    }

    /** The same for machines. */
    public Map<String, Object> tree() {
        Map<String, Object> apart = new LinkedHashMap<>();
        opinion.apart().forEach((limit, seconds) -> apart.put(limit.label(), seconds));
        return new Report()
                .field("what", what)
                .field("differenceFastS", known(opinion.fast()))
                .field("differenceFullerS", known(opinion.fuller()))
                .field("differenceEitherLowS", either().map(EitherModel::low).orElse(null))
                .field("differenceEitherHighS", either().map(EitherModel::high).orElse(null))
                .field(
                        "eitherGainPercent",
                        either().map(all -> PERCENT * all.gain()).orElse(null))
                .field("verdict", verdict().name().toLowerCase(Locale.ROOT).replace('_', ' '))
                .field("noneBecause", refusal.orElse(null))
                .field("differenceApartByCauseS", apart)
                .field(
                        "mostApartAt",
                        opinion.most().map(SecondOpinionResult.Place::label).orElse(null))
                .fields();
    }

    private static Double known(double difference) {
        return Double.isNaN(difference) ? null : (Double) difference;
    }
}
