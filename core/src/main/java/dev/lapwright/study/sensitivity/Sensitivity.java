package dev.lapwright.study.sensitivity;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Supplier;

/**
 * Study of sensitivity: what each adjustment of a car is worth at a circuit, one step each way and across its range, one
 * adjustment at a time; for the strongest, how pairs act together; and how many laps it takes to see it on the timing
 * screen.
 *
 * <pre>{@code
 * SensitivityResult result = Sensitivity.of(car, track, Conditions.STANDARD).run();
 * }</pre>
 */
public final class Sensitivity implements Study<SensitivityResult> {
    /** Settings tried across a range, its ends among them. */
    private static final int ACROSS = 9;
    /** The strongest, of which all pairs are tried. */
    private static final int STRONGEST = 5;

    private static final int MOST_LAPS = 100_000;

    private final Car car;
    private final Stations stations;
    private final Conditions conditions;
    private final double scatter;
    private final int laps;

    private Sensitivity(Car car, Stations stations, Conditions conditions, double scatter, int laps) {
        this.car = car;
        this.stations = stations;
        this.conditions = conditions;
        this.scatter = Check.inRange("lap-to-lap scatter (s)", scatter, 1e-3, 60);
        this.laps = laps;
    }

    /** A study about a car as it stands, with laps that scatter by 0.3 s and 30 laps to try something. */
    public static Sensitivity of(Car car, Track track, Conditions conditions) {
        return new Sensitivity(car, track.stations(StationSpacing.DEFAULT), conditions, 0.3, 30);
    }

    /** The same for laps that scatter by this standard deviation, s. */
    public Sensitivity withScatter(double seconds) {
        return new Sensitivity(car, stations, conditions, seconds, laps);
    }

    /** The same with this many laps to try something, both setups together. */
    public Sensitivity withLaps(int count) {
        if (count < 4 || count > MOST_LAPS) {
            throw new InvalidValueException(
                    "laps", count + " are no laps to compare two setups", "give 4 to " + MOST_LAPS);
        }
        return new Sensitivity(car, stations, conditions, scatter, count);
    }

    /**
     * Runs it.
     *
     * @throws InvalidValueException if the car has no adjustment that can be turned
     * @throws NoLapException if the car as it stands has no lap
     */
    @Override
    public SensitivityResult run(StudyRun how) {
        List<Adjustment> turned = new ArrayList<>();
        List<Adjustment> fixed = new ArrayList<>();
        for (Adjustment adjustment : car.adjustments()) {
            (adjustment.legalSettings().size() > 1 ? turned : fixed).add(adjustment);
        }
        if (turned.isEmpty()) {
            throw new InvalidValueException(
                    "car",
                    "it has no adjustment that can be turned",
                    "list adjustments in its document, or sweep a quantity");
        }
        Lap baseline = new LapSolver(stations).solve(Vehicle.of(car, conditions));
        int pairs = Math.min(STRONGEST, turned.size()) * (Math.min(STRONGEST, turned.size()) - 1) / 2;
        int total = turned.size() + pairs;
        List<SensitivityResult.Gain> gains = how.inParallel(
                turned.size(),
                () -> new LapSolver(stations),
                (solver, i) -> gain(turned.get(i), baseline, solver),
                done -> how.report(done, total));
        List<SensitivityResult.Gain> ranked = new ArrayList<>(gains);
        ranked.sort(Comparator.comparingDouble(SensitivityResult.Gain::range).reversed());
        List<SensitivityResult.Gain[]> strongest = new ArrayList<>();
        for (int i = 0; i < Math.min(STRONGEST, ranked.size()); i++) {
            for (int j = i + 1; j < Math.min(STRONGEST, ranked.size()); j++) {
                strongest.add(new SensitivityResult.Gain[] {ranked.get(i), ranked.get(j)});
            }
        }
        List<SensitivityResult.Interaction> interactions = new ArrayList<>(how.inParallel(
                strongest.size(),
                () -> new LapSolver(stations),
                (solver, i) -> interaction(strongest.get(i)[0], strongest.get(i)[1], baseline.time(), solver),
                done -> how.report(turned.size() + done, total)));
        interactions.removeIf(pair -> Double.isNaN(pair.beyond()));
        interactions.sort(Comparator.comparingDouble((SensitivityResult.Interaction pair) -> Math.abs(pair.beyond()))
                .reversed());
        return new SensitivityResult(
                car, stations.track(), conditions, baseline.figures(), scatter, laps, ranked, fixed, interactions);
    }

    private SensitivityResult.Gain gain(Adjustment adjustment, Lap baseline, LapSolver solver) {
        double setting = car.setting(adjustment.name());
        double lower = Double.NaN;
        double higher = Double.NaN;
        double hair = 1e-9 * Math.max(1, adjustment.max() - adjustment.min());
        List<Double> legal = adjustment.legalSettings();
        for (double value : legal) {
            if (value < setting - hair) {
                lower = value;
            } else if (value > setting + hair && Double.isNaN(higher)) {
                higher = value;
            }
        }
        double lowerGain = gainAt(adjustment, lower, baseline.time(), solver);
        double higherGain = gainAt(adjustment, higher, baseline.time(), solver);
        double best = setting;
        double bestGain = 0;
        double worst = setting;
        double worstGain = 0;
        List<Double> tried = across(legal);
        tried.add(lower);
        tried.add(higher);
        for (double value : tried) {
            double gain = value == lower
                    ? lowerGain
                    : value == higher ? higherGain : gainAt(adjustment, value, baseline.time(), solver);
            if (gain > bestGain) {
                best = value;
                bestGain = gain;
            } else if (gain < worstGain) {
                worst = value;
                worstGain = gain;
            }
        }
        boolean better = bestGain >= SensitivityResult.Gain.NOTHING;
        List<Double> sectors = sectorGains(adjustment, better ? best : worst, baseline, solver);
        return new SensitivityResult.Gain(
                adjustment,
                setting,
                new SensitivityResult.Trial(lower, lowerGain),
                new SensitivityResult.Trial(higher, higherGain),
                new SensitivityResult.Trial(best, bestGain),
                new SensitivityResult.Trial(worst, worstGain),
                curvature(setting - lower, lowerGain, higher - setting, higherGain),
                sectors,
                LapsToSee.perSetup(better ? bestGain : worstGain, scatter));
    }

    /**
     * Second difference of the lap time from three settings that need not stand at even distances, for a step of their
     * geometric mean: Newton's divided difference [t₋, t₀, t₊] times 2 h₋ h₊.
     */
    private static double curvature(double down, double lowerGain, double up, double higherGain) {
        return -2 * (down * higherGain + up * lowerGain) / (down + up);
    }

    private static List<Double> across(List<Double> legal) {
        List<Double> chosen = new ArrayList<>();
        int count = Math.min(ACROSS, legal.size());
        for (int k = 0; k < count; k++) {
            chosen.add(legal.get((int) Math.round(k * (legal.size() - 1) / (count - 1.0))));
        }
        return chosen;
    }

    private double gainAt(Adjustment adjustment, double setting, double time, LapSolver solver) {
        return Double.isNaN(setting) ? Double.NaN : gain(() -> car.with(adjustment.name(), setting), time, solver);
    }

    /** Gain of a car; NaN where it has no lap or cannot be. */
    private double gain(Supplier<Car> changed, double time, LapSolver solver) {
        try {
            return time - solver.lapTime(Vehicle.of(changed.get(), conditions));
        } catch (NoLapException | InvalidValueException noLap) {
            return Double.NaN;
        }
    }

    private List<Double> sectorGains(Adjustment adjustment, double setting, Lap baseline, LapSolver solver) {
        double[] before = baseline.sectorTimes();
        double[] after = solver.solve(Vehicle.of(car.with(adjustment.name(), setting), conditions))
                .sectorTimes();
        List<Double> gains = new ArrayList<>();
        for (int i = 0; i < before.length; i++) {
            gains.add(before[i] - after[i]);
        }
        return gains;
    }

    /** Both one step towards more of what each does best, or away from what it does worst. */
    private SensitivityResult.Interaction interaction(
            SensitivityResult.Gain a, SensitivityResult.Gain b, double time, LapSolver solver) {
        double first = step(a).setting();
        double second = step(b).setting();
        double alone = step(a).gain() + step(b).gain();
        double together = gain(
                () -> car.with(a.adjustment().name(), first).with(b.adjustment().name(), second), time, solver);
        return new SensitivityResult.Interaction(
                a.adjustment().name(), first, b.adjustment().name(), second, alone, together);
    }

    private static SensitivityResult.Trial step(SensitivityResult.Gain gain) {
        return upwards(gain) ? gain.higher() : gain.lower();
    }

    private static boolean upwards(SensitivityResult.Gain gain) {
        return Double.isNaN(gain.lower().gain())
                || gain.higher().gain() >= gain.lower().gain();
    }
}
