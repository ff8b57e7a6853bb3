package dev.lapwright.brief;

import dev.lapwright.evidence.CleanLaps;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Check of the model's predictions against a timing log, for each change of setup in it. */
final class LapProof {
    /**
     * A log's fastest clean lap over the model's lies between these, or it is no log of this car at this circuit: a model that
     * is off by a fifth, and a driver who is slower by a third, have no use for a brief. Our choice, no source.
     */
    static final double LEAST_RATIO = 0.8;

    static final double MOST_RATIO = 1.3;

    private final BriefChoices choices;
    private final BriefLaps laps;

    LapProof(BriefChoices choices, BriefLaps laps) {
        this.choices = choices;
        this.laps = laps;
    }

    BriefResult.Part<Proof> proof() {
        return choices.log()
                .map(log -> BriefResult.Part.ask(() -> proof(log)))
                .orElseGet(() -> BriefResult.Part.missing(
                        "no laps have been logged yet",
                        "drive the tests, log lap times with the name of the setup, and give the log"));
    }

    private Proof proof(TimingLog log) {
        CleanLaps clean = CleanLaps.of(log, choices.evidence().rule());
        double best = bestLap(clean);
        List<Proof.Change> changes = new ArrayList<>();
        Set<Set<String>> known = new HashSet<>();
        String before = log.laps().get(0).setup();
        for (TimingLog.Lap lap : log.laps()) {
            String after = lap.setup();
            if (!after.equals(before) && known.add(Set.of(before, after))) {
                changes.add(change(log, before, after));
            }
            before = after;
        }
        return new Proof(
                clean,
                any(log, changes).paces(),
                changes,
                best,
                laps.asItStands().time());
    }

    /** A look at the log, of which the paces of all its setups are wanted. */
    private EvidenceResult any(TimingLog log, List<Proof.Change> changes) {
        Optional<EvidenceResult> seen = changes.stream()
                .flatMap(change -> change.seen().value().stream())
                .findFirst();
        String before = changes.isEmpty() ? "" : changes.get(0).before();
        String after = changes.isEmpty() ? "" : changes.get(0).after();
        return seen.orElseGet(() -> between(before, after).run(log));
    }

    private double bestLap(CleanLaps clean) {
        double best = Arrays.stream(clean.clean())
                .mapToDouble(i -> clean.log().laps().get(i).time())
                .min()
                .orElse(Double.NaN);
        double model = laps.asItStands().time();
        if (best < LEAST_RATIO * model || best > MOST_RATIO * model) {
            throw new InvalidValueException(
                    "lap log",
                    "its fastest clean lap takes " + Check.text(best) + " s, the model's "
                            + Check.text(Math.rint(1000 * model) / 1000) + " s: "
                            + Check.text(Math.rint(100 * best / model) / 100)
                            + " times as long, so it cannot be a log of this car at "
                            + laps.asItStands().track().name(),
                    "give a log of this circuit, and the car and the conditions that were driven; the times must be within "
                            + Check.text(LEAST_RATIO) + " to " + Check.text(MOST_RATIO) + " of the model's");
        }
        return best;
    }

    /** As asked, but for these two setups and without a prediction. */
    private Evidence between(String before, String after) {
        return choices.evidence().between(before, after).predicted(OptionalDouble.empty(), OptionalDouble.empty());
    }

    private Proof.Change change(TimingLog log, String before, String after) {
        BriefResult.Part<BriefResult.ChangeEffect> expected = BriefResult.Part.ask(() -> BriefLaps.effect(
                laps.lap(SetupName.set(laps.car(), before)), laps.lap(SetupName.set(laps.car(), after))));
        Evidence how = between(before, after);
        return new Proof.Change(
                before,
                after,
                BriefResult.Part.ask(() -> expected.value()
                        .map(effect -> how.predicting(effect.difference()))
                        .orElse(how)
                        .run(log)),
                expected);
    }
}
