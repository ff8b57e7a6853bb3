package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.evidence.CleanLaps;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
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

    private final BriefChoices.Logged logged;
    private final BriefLaps laps;
    private final BriefDoubt doubt;

    LapProof(BriefChoices.Logged logged, BriefLaps laps, BriefDoubt doubt) {
        this.logged = logged;
        this.laps = laps;
        this.doubt = doubt;
    }

    BriefResult.Part<Proof> proof() {
        return logged.times()
                .map(log -> BriefResult.Part.ask(() -> proof(log)))
                .orElseGet(() -> BriefResult.Part.missing(
                        "no laps have been logged yet",
                        "drive the tests, log lap times with the name of the setup, and give the log"));
    }

    private Proof proof(TimingLog log) {
        log.setups().forEach(name -> SetupName.check(laps.car(), name));
        CleanLaps clean = CleanLaps.of(log, logged.evidence().rule());
        double best = bestLap(clean);
        List<Proof.Change> changes = new ArrayList<>();
        for (int i = 1; i < log.setups().size(); i++) {
            changes.add(change(log, before(log, i), log.setups().get(i)));
        }
        return new Proof(
                clean,
                any(log, changes).paces(),
                changes,
                kept(log.setups().get(0), changes),
                best,
                laps.asItStands().time());
    }

    /** The setup that another, given by its place, was made from: see {@link Proof.Change#before}. */
    private String before(TimingLog log, int place) {
        String after = log.setups().get(place);
        int first = 0;
        while (!log.laps().get(first).setup().equals(after)) {
            first++;
        }
        // From the one driven just before backwards.
        List<String> driven = new ArrayList<>();
        for (int lap = first - 1; lap >= 0; lap--) {
            String setup = log.laps().get(lap).setup();
            if (!driven.contains(setup)) {
                driven.add(setup);
            }
        }
        return driven.stream()
                .min(Comparator.comparingInt(setup -> settingsBetween(setup, after)))
                .orElseThrow();
    }

    /** In how many settings two setups differ; more than there are where one of their names does not tell. */
    private int settingsBetween(String one, String other) {
        try {
            Car here = SetupName.set(laps.car(), one);
            Car there = SetupName.set(laps.car(), other);
            Set<String> names = new HashSet<>(here.settings().keySet());
            names.addAll(there.settings().keySet());
            return (int) names.stream()
                    .filter(name -> setting(here, name) != setting(there, name))
                    .count();
        } catch (LapwrightException untold) {
            return Integer.MAX_VALUE;
        }
    }

    /** Where an adjustment stands, or what a quantity is. */
    static double setting(Car car, String name) {
        return car.adjustments().stream()
                        .anyMatch(adjustment -> adjustment.name().equals(name))
                ? car.setting(name)
                : car.value(name);
    }

    /** From a setup on along changes to be kept, each time that which gains most. */
    private static String kept(String first, List<Proof.Change> changes) {
        String here = first;
        for (Optional<Proof.Change> next = next(here, changes); next.isPresent(); next = next(here, changes)) {
            here = next.get().after();
        }
        return here;
    }

    private static Optional<Proof.Change> next(String here, List<Proof.Change> changes) {
        return changes.stream()
                .filter(change -> change.before().equals(here) && change.fate() == Proof.Fate.KEEP)
                .min(Comparator.comparingDouble(Proof.Change::mean));
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
        return logged.evidence().between(before, after).predicted(OptionalDouble.empty(), OptionalDouble.empty());
    }

    private Proof.Change change(TimingLog log, String before, String after) {
        BriefResult.Part<BriefResult.ChangeEffect> expected = BriefResult.Part.ask(() -> BriefLaps.effect(
                laps.lap(SetupName.set(laps.car(), before)), laps.lap(SetupName.set(laps.car(), after))));
        Optional<RobustnessResult.Standing> standing = expected.value()
                .flatMap(effect -> doubt.between(
                        effect.comparison().first().vehicle().car(),
                        effect.comparison().second().vehicle().car()));
        OptionalDouble deviation = standing.map(RobustnessResult.Standing::deviation)
                .filter(size -> size > 0)
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
        Evidence how = between(before, after);
        return new Proof.Change(
                before,
                after,
                BriefResult.Part.ask(() -> expected.value()
                        .map(effect -> how.predicted(OptionalDouble.of(effect.difference()), deviation))
                        .orElse(how)
                        .run(log)),
                expected,
                standing);
    }
}
