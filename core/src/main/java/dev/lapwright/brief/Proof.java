package dev.lapwright.brief;

import dev.lapwright.evidence.CleanLaps;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.NormalMixture;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Evidence of a timing log for or against what the model predicted.
 *
 * @param laps the log, and which laps count
 * @param paces of all setups in the order of their first laps
 * @param changes of setup, one for each setup but the first, in that order: see {@link Change#before}
 * @param kept setup that is best as far as model and laps together tell, as the log names it: from the first along changes to be kept
 * @param bestLap fastest clean lap of the log, s
 * @param modelLap lap time of the car as it stood, s
 */
public record Proof(
        CleanLaps laps,
        List<EvidenceResult.SetupPace> paces,
        List<Change> changes,
        String kept,
        double bestLap,
        double modelLap) {
    /** Name in a log of the car as it stands, before anything is changed. */
    public static final String BASE = "base";

    /** So many degrees of freedom tell the scatter of laps to a third of it; fewer are not asked (our choice, no source). */
    private static final int TELLING = 5;

    public Proof {
        paces = List.copyOf(paces);
        changes = List.copyOf(changes);
    }

    /** Fastest clean lap over the model's. */
    public double ratio() {
        return bestLap / modelLap;
    }

    /** Standard deviation of the clean laps of one setup, all setups together, the day's course taken out, s; empty for too few laps. */
    public OptionalDouble scatter() {
        double squares = 0;
        int freedom = 0;
        for (EvidenceResult.SetupPace pace : paces) {
            if (pace.clean() > 1) {
                squares += (pace.clean() - 1) * pace.spread() * pace.spread();
                freedom += pace.clean() - 1;
            }
        }
        return freedom < TELLING || !(squares > 0)
                ? OptionalDouble.empty()
                : OptionalDouble.of(Math.sqrt(squares / freedom));
    }

    /** Fate of a change after driving. */
    public enum Fate {
        /** Faster by nine chances in ten or more. */
        KEEP("keep"),
        /** Slower by nine chances in ten or more. */
        PUT_BACK("put back"),
        /** Neither, or nothing is known of it. */
        OPEN("open: drive it again, or leave it");

        /** Chance that decides, as for all that is said of drawn cars. */
        public static final double SURE = 0.9;

        private final String label;

        Fate(String label) {
            this.label = label;
        }

        /** For people. */
        public String label() {
            return label;
        }
    }

    /**
     * Change of setup found in a log, and what the model had expected of it.
     *
     * @param before setup that was changed, as the log names it: of those driven before the one that differs in the fewest settings, and of
     *     equals the one driven last; where names do not tell settings, the one driven just before
     * @param after setup that it was changed to
     * @param seen what the laps say, and together with what was expected; missing where they cannot be compared
     * @param expected what the model said of the car as it stood; missing where the names of the setups do not tell what was set
     * @param doubt how that stood on drawn cars; empty where none were drawn
     */
    public record Change(
            String before,
            String after,
            BriefResult.Part<EvidenceResult> seen,
            BriefResult.Part<BriefResult.ChangeEffect> expected,
            Optional<RobustnessResult.Standing> doubt) {
        /** The comparison of the two setups, if there is one. */
        public Optional<EvidenceResult.Comparison> comparison() {
            return seen.value().flatMap(EvidenceResult::comparison);
        }

        /** Difference of the lap times, below nought is faster; empty with too few laps. */
        public Optional<EvidenceResult.Difference> difference() {
            return comparison().flatMap(EvidenceResult.Comparison::difference);
        }

        /** Difference by what was expected and seen together; empty where one of them is missing. */
        public Optional<NormalMixture> together() {
            return comparison().flatMap(EvidenceResult.Comparison::together);
        }

        /** Whether what was expected lies within the interval of what was seen; empty where one of them is missing. */
        public Optional<Boolean> agrees() {
            return difference()
                    .flatMap(difference ->
                            expected.value().map(effect -> difference.once().holds(effect.difference())));
        }

        /** Chance that it is faster, by all that is known: expected and seen together, or seen alone; empty with too few laps. */
        public OptionalDouble chance() {
            return together()
                    .map(known -> OptionalDouble.of(known.below(0)))
                    .or(() -> difference().map(seen -> OptionalDouble.of(seen.faster())))
                    .orElse(OptionalDouble.empty());
        }

        /** What is to be done with it. */
        public Fate fate() {
            double chance = chance().orElse(0.5);
            return chance >= Fate.SURE ? Fate.KEEP : chance <= 1 - Fate.SURE ? Fate.PUT_BACK : Fate.OPEN;
        }

        /** Mean of what is known, s: together, or seen alone. */
        double mean() {
            return together()
                    .map(NormalMixture::mean)
                    .or(() -> difference().map(EvidenceResult.Difference::mean))
                    .orElse(0.0);
        }
    }
}
