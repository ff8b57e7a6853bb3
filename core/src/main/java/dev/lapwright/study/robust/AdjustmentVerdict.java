package dev.lapwright.study.robust;

import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Verdict on an adjustment turned by itself; one rule for all studies. One about which a lap time says too little is not in this model; one
 * that moves no lap time at all on the car as it is described makes no difference. Of all others the fastest setting, if that is
 * faster by {@link LapTimeDifference#COUNTS} or more, and both ends of the range are held against the car as it stands on drawn cars, and
 * what nine of ten of them agree on is said ({@link RobustnessResult.Verdict}).
 */
public enum AdjustmentVerdict {
    /** Its fastest setting is faster. */
    GAIN("a gain"),
    /** None of those settings is faster, and at least one slower: a miss would cost. */
    RIGHT("already right"),
    /** None of those settings makes a difference that counts. */
    ALIKE("makes no difference"),
    /** One of those settings makes a difference that counts on some cars and none or the opposite one on others, or is not the one that seemed to. */
    UNTOLD("cannot be told"),
    /** The model knows too little of it, or nothing. */
    UNSEEN("not in this model");

    private static final Set<RobustnessResult.Verdict> EITHER =
            EnumSet.of(RobustnessResult.Verdict.UNTOLD, RobustnessResult.Verdict.FASTER);

    private final String label;

    AdjustmentVerdict(String label) {
        this.label = label;
    }

    /** In a few words. */
    public String label() {
        return label;
    }

    /**
     * What is said without drawn cars; empty where they decide.
     *
     * @param range lap time at its slowest setting over that at its fastest, on the car as it is described, s
     * @param delicate whether a lap time says too little of it, as of pressures and dampers ({@link
     *     dev.lapwright.study.optimise.Optimisation#leftAlone})
     */
    public static Optional<AdjustmentVerdict> undrawn(double range, boolean delicate) {
        if (delicate) {
            return Optional.of(UNSEEN);
        }
        // A range worth little on the car as it is described may be worth much on others.
        return LapTimeDifference.isNone(range) ? Optional.of(ALIKE) : Optional.empty();
    }

    /** The settings of an adjustment that are held against the car as it stands; see {@link #settings(double, double, double, double, double)}. */
    public static List<Double> settings(SensitivityResult.Worth worth) {
        List<Double> legal = worth.adjustment().legalSettings();
        return settings(
                worth.setting(),
                worth.best().setting(),
                worth.best().difference(),
                legal.get(0),
                legal.get(legal.size() - 1));
    }

    /**
     * The settings that are held against the car as it stands: the fastest first where it is faster by what counts, then the ends.
     *
     * @param standing where it stands
     * @param best its fastest setting of those tried
     * @param difference lap time there over that of the car as it stands, s
     * @param least one end of its range
     * @param most the other
     */
    public static List<Double> settings(double standing, double best, double difference, double least, double most) {
        List<Double> settings = new ArrayList<>();
        if (isAsked(difference)) {
            settings.add(best);
        }
        for (double end : new double[] {least, most}) {
            if (!settings.contains(end) && end != standing) {
                settings.add(end);
            }
        }
        return settings;
    }

    /**
     * What can be said of it.
     *
     * @param difference lap time at its fastest setting over that of the car as it stands, s
     * @param standings of {@link #settings}, in that order
     */
    public static AdjustmentVerdict of(double difference, List<RobustnessResult.Standing> standings) {
        return of(
                        isAsked(difference),
                        standings.stream().map(AdjustmentVerdict::said).toList())
                .orElseThrow();
    }

    private static Set<RobustnessResult.Verdict> said(RobustnessResult.Standing standing) {
        return standing.laps() > 0 ? EnumSet.of(standing.verdict()) : Set.of();
    }

    /**
     * The rule.
     *
     * @param faster whether the first setting is one that is faster on the car as it is described
     * @param possible of each setting what may be said of it; nothing of one that has no lap
     * @return empty where that leaves it open
     */
    static Optional<AdjustmentVerdict> of(boolean faster, List<Set<RobustnessResult.Verdict>> possible) {
        if (faster && !possible.isEmpty() && possible.get(0).contains(RobustnessResult.Verdict.FASTER)) {
            return possible.get(0).size() == 1 ? Optional.of(GAIN) : Optional.empty();
        }
        List<Set<RobustnessResult.Verdict>> lapped =
                possible.stream().filter(one -> !one.isEmpty()).toList();
        if (lapped.isEmpty() || lapped.stream().anyMatch(EITHER::containsAll)) {
            return Optional.of(UNTOLD);
        }
        if (lapped.stream().anyMatch(one -> one.size() > 1)) {
            return Optional.empty();
        }
        return Optional.of(lapped.contains(EnumSet.of(RobustnessResult.Verdict.SLOWER)) ? RIGHT : ALIKE);
    }

    /** Whether the fastest setting, so much faster, is the first that is asked of; s. */
    static boolean isAsked(double difference) {
        return LapTimeDifference.isFaster(difference) && LapTimeDifference.counts(difference);
    }
}
