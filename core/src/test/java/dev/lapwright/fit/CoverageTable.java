package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/**
 * Counts how often intervals hold the truth where noise alone is in doubt: fits to synthetic laps of a known car with fresh noise each time. Run by
 * hand for many trials: {@code CoverageTable <trials> [s1|s6|l1|l6]}, the short or the long circuit with one lap or
 * six.
 */
final class CoverageTable {
    private final Car car;
    private final Track track;
    private final Lap lap;
    private final int laps;
    private final Set<FitParameter> parameters;
    private final Map<FitParameter, int[]> counts = new EnumMap<>(FitParameter.class);
    private final Map<FitParameter, double[]> sums = new EnumMap<>(FitParameter.class);

    CoverageTable(Car car, Track track, int laps, Set<FitParameter> parameters) {
        this.car = car;
        this.track = track;
        this.laps = laps;
        this.parameters = parameters;
        lap = LapSolver.lap(car, track, Conditions.STANDARD);
        parameters.forEach(p -> {
            counts.put(p, new int[2]);
            sums.put(p, new double[2]);
        });
    }

    /** Trials from one seed: noise of a deviation (m/s) that keeps 1/e of itself over a length (m, 0 is white). */
    CoverageTable run(int trials, double deviation, double length, long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < trials; i++) {
            List<DrivenLap> driven = new ArrayList<>();
            for (int k = 0; k < laps; k++) {
                driven.add(Recorder.at(20).noisy(deviation, length, random).of("lap " + (k + 1), lap));
            }
            FitResult result = Fit.of(car, track, Conditions.STANDARD)
                    .laps(driven)
                    .fitting(parameters)
                    .doubting(FitDoubts.none())
                    .run();
            for (FitResult.Estimate e : result.estimates()) {
                if (e.identifiability() != FitResult.Identifiability.HELD) {
                    counts.get(e.parameter())[0]++;
                    // The truth is the car as given.
                    boolean held = e.lower() <= e.before() && e.before() <= e.upper();
                    counts.get(e.parameter())[1] += held ? 1 : 0;
                    double miss = e.value() - e.before();
                    sums.get(e.parameter())[0] += miss * miss;
                    sums.get(e.parameter())[1] += e.standardError() * e.standardError();
                }
            }
        }
        return this;
    }

    /** How many intervals there were. */
    int trials(FitParameter parameter) {
        return counts.get(parameter)[0];
    }

    /** How many of them held the truth. */
    int held(FitParameter parameter) {
        return counts.get(parameter)[1];
    }

    /** Root mean square of the standard errors over that of the misses. */
    double claimedOverScatter(FitParameter parameter) {
        double[] s = sums.get(parameter);
        return Math.sqrt(s[1] / s[0]);
    }

    /** Runs the table that docs/theory.md prints. */
    public static void main(String[] arguments) {
        int trials = Integer.parseInt(arguments[0]);
        System.out.println(
                "| circuit | laps | noise keeps 1/e over, m | parameter | told | intervals that hold the truth, % |"
                        + " scatter | standard error claimed |");
        System.out.println("|---|---|---|---|---|---|---|---|");
        Object[][] cases = {
            {FitScene.shortCircuit(), 1, EnumSet.of(FitParameter.GRIP, FitParameter.POWER)},
            {FitScene.shortCircuit(), 6, EnumSet.of(FitParameter.GRIP, FitParameter.POWER)},
            {FitScene.longCircuit(), 1, EnumSet.allOf(FitParameter.class)},
            {FitScene.longCircuit(), 6, EnumSet.allOf(FitParameter.class)}
        };
        for (Object[] one : cases) {
            if (arguments.length > 1
                    && !arguments[1].contains(((Track) one[0]).name().substring(0, 1) + one[1])) {
                continue;
            }
            for (double length : new double[] {0, 30, 60}) {
                @SuppressWarnings("unchecked")
                CoverageTable table =
                        new CoverageTable(FitScene.car(), (Track) one[0], (Integer) one[1], (Set<FitParameter>) one[2]);
                table.run(trials, 0.3, length, 7);
                for (FitParameter p : table.parameters) {
                    double n = table.trials(p);
                    System.out.printf(
                            Locale.ROOT,
                            "| %s | %d | %.0f | %s | %.0f | %.1f | %.4f | %.4f |%n",
                            table.track.name(),
                            table.laps,
                            length,
                            p.title(),
                            n,
                            100 * table.held(p) / n,
                            Math.sqrt(table.sums.get(p)[0] / n),
                            Math.sqrt(table.sums.get(p)[1] / n));
                }
            }
        }
    }
}
