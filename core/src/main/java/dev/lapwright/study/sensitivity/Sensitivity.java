package dev.lapwright.study.sensitivity;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.ride.AxleEnd;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;

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

    /** Quantities that no lap reads: what moves nothing else needs none. */
    private static final Set<String> UNSEEN = Arrays.stream(AxleEnd.values())
            .flatMap(end -> end.dampers().stream())
            .map(Quantity::path)
            .collect(Collectors.toSet());

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
        List<SensitivityResult.Worth> worths = how.inParallel(
                turned.size(),
                () -> new LapSolver(stations),
                (solver, i) -> worth(turned.get(i), baseline, solver),
                done -> how.report(done, total));
        List<SensitivityResult.Worth> ranked = new ArrayList<>(worths);
        ranked.sort(Comparator.comparingDouble(SensitivityResult.Worth::range).reversed());
        List<SensitivityResult.Worth[]> strongest = new ArrayList<>();
        for (int i = 0; i < Math.min(STRONGEST, ranked.size()); i++) {
            for (int j = i + 1; j < Math.min(STRONGEST, ranked.size()); j++) {
                strongest.add(new SensitivityResult.Worth[] {ranked.get(i), ranked.get(j)});
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

    private SensitivityResult.Worth worth(Adjustment adjustment, Lap baseline, LapSolver solver) {
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
        double best = setting;
        double toBest = 0;
        double worst = setting;
        double toWorst = 0;
        Set<Double> tried = new LinkedHashSet<>(across(legal));
        tried.add(lower);
        tried.add(higher);
        Map<Double, double[]> known = new HashMap<>();
        known.put(setting, new double[1 + baseline.sectorTimes().length]);
        for (double value : tried) {
            double difference = known.computeIfAbsent(value, any -> differences(adjustment, any, baseline, solver))[0];
            if (difference < toBest) {
                best = value;
                toBest = difference;
            } else if (difference > toWorst) {
                worst = value;
                toWorst = difference;
            }
        }
        boolean better = LapTimeDifference.isFaster(toBest);
        List<Double> sectors =
                Arrays.stream(known.get(better ? best : worst)).skip(1).boxed().toList();
        return new SensitivityResult.Worth(
                adjustment,
                setting,
                new SensitivityResult.Trial(lower, known.get(lower)[0]),
                new SensitivityResult.Trial(higher, known.get(higher)[0]),
                new SensitivityResult.Trial(best, toBest),
                new SensitivityResult.Trial(worst, toWorst),
                curvature(setting - lower, known.get(lower)[0], higher - setting, known.get(higher)[0]),
                sectors,
                LapsToSee.perSetup(better ? toBest : toWorst, scatter));
    }

    /**
     * Second difference of the lap time from three settings that need not stand at even distances, for a step of their
     * geometric mean: Newton's divided difference [t₋, t₀, t₊] times 2 h₋ h₊.
     */
    private static double curvature(double down, double toLower, double up, double toHigher) {
        return 2 * (down * toHigher + up * toLower) / (down + up);
    }

    private static List<Double> across(List<Double> legal) {
        List<Double> chosen = new ArrayList<>();
        int count = Math.min(ACROSS, legal.size());
        for (int k = 0; k < count; k++) {
            chosen.add(legal.get((int) Math.round(k * (legal.size() - 1) / (count - 1.0))));
        }
        return chosen;
    }

    /** Difference of a setting, then by sector; NaN where there is none, or it has no lap or cannot be. */
    private double[] differences(Adjustment adjustment, double setting, Lap baseline, LapSolver solver) {
        double[] sectors = baseline.sectorTimes();
        double[] differences = new double[1 + sectors.length];
        if (UNSEEN.containsAll(
                adjustment.effects().stream().map(Effect::quantity).toList())) {
            return differences;
        }
        Arrays.fill(differences, Double.NaN);
        try {
            if (!Double.isNaN(setting)) {
                double[] times = solver.times(Vehicle.of(car.with(adjustment.name(), setting), conditions));
                differences[0] = times[0] - baseline.time();
                for (int i = 0; i < sectors.length; i++) {
                    differences[1 + i] = times[1 + i] - sectors[i];
                }
            }
        } catch (NoLapException | InvalidValueException noLap) {
            return differences;
        }
        return differences;
    }

    /** Difference of a car; NaN where it has no lap or cannot be. */
    private double difference(Supplier<Car> changed, double time, LapSolver solver) {
        try {
            return solver.lapTime(Vehicle.of(changed.get(), conditions)) - time;
        } catch (NoLapException | InvalidValueException noLap) {
            return Double.NaN;
        }
    }

    /** Both one step towards more of what each does best, or away from what it does worst. */
    private SensitivityResult.Interaction interaction(
            SensitivityResult.Worth a, SensitivityResult.Worth b, double time, LapSolver solver) {
        double first = step(a).setting();
        double second = step(b).setting();
        double alone = step(a).difference() + step(b).difference();
        double together = difference(
                () -> car.with(a.adjustment().name(), first).with(b.adjustment().name(), second), time, solver);
        return new SensitivityResult.Interaction(
                a.adjustment().name(), first, b.adjustment().name(), second, alone, together);
    }

    private static SensitivityResult.Trial step(SensitivityResult.Worth worth) {
        return upwards(worth) ? worth.higher() : worth.lower();
    }

    private static boolean upwards(SensitivityResult.Worth worth) {
        return Double.isNaN(worth.lower().difference())
                || worth.higher().difference() <= worth.lower().difference();
    }
}
