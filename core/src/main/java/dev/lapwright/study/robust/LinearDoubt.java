package dev.lapwright.study.robust;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.doubt.PlausibleDays;
import dev.lapwright.doubt.Unknown;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Study of the doubt of settings by derivatives: how each unknown moves a setting's difference to the car as it stands, to first order and by
 * itself, from the adjoint of each lap; no car is drawn. Cheap, and exact for small doubts; it knows no kink, no curve and nothing that two
 * unknowns do together, so that the interval lies evenly about the difference on the car as it is described. {@link Robustness} drives the
 * drawn cars instead; docs/doubt.md shows by how much both part.
 *
 * <p>Variance of a linear function of independent variables: {@code Σ (∂d/∂z_k)²}, z_k standard normal (ISO/IEC Guide 98-3:2008, 5.1.2, from memory).
 *
 * <pre>{@code
 * LinearDoubt.Result wing = LinearDoubt.of(car, track, Conditions.STANDARD).against(car.with("rear-wing", 8)).run();
 * }</pre>
 */
public final class LinearDoubt implements Study<LinearDoubt.Result> {
    /** Standard deviations on either side over which a derivative is taken. */
    private static final double STEP = 1e-3;
    /** Half of an interval of 90 % of the normal distribution over its standard deviation (its tables). */
    private static final double NORMAL_90 = 1.645;
    /**
     * Deviation of a number that lies anywhere within a limit alike, 1/√3 of it, over its slope in the standard normal number that it is drawn
     * by, √(2/π) of it in the middle.
     */
    private static final double WITHIN_LIMIT = Math.sqrt(Math.PI / 6);

    private final Car present;
    private final Track track;
    private final StationSpacing spacing;
    private final Conditions day;
    private final List<Car> settings;
    private final boolean assuming;

    private LinearDoubt(
            Car present, Track track, StationSpacing spacing, Conditions day, List<Car> settings, boolean assuming) {
        this.present = present;
        this.track = track;
        this.spacing = spacing;
        this.day = day;
        this.settings = settings;
        this.assuming = assuming;
    }

    /** A study about a car as it stands; add settings before running it. */
    public static LinearDoubt of(Car present, Track track, Conditions day) {
        return of(present, track, StationSpacing.DEFAULT, day);
    }

    /** The same on stations that lie otherwise. */
    public static LinearDoubt of(Car present, Track track, StationSpacing spacing, Conditions day) {
        return new LinearDoubt(present, track, spacing, day, List.of(), true);
    }

    /** The same with one more setting of the car. */
    public LinearDoubt against(Car setUp) {
        List<Car> more = new ArrayList<>(settings);
        more.add(setUp);
        return new LinearDoubt(present, track, spacing, day, List.copyOf(more), assuming);
    }

    /** The same by what documents state alone: of what they do not speak of nothing is assumed. */
    public LinearDoubt asStated() {
        return new LinearDoubt(present, track, spacing, day, settings, false);
    }

    /**
     * What it finds.
     *
     * @param unknowns what is in doubt
     * @param standings one for each setting, in the order given
     */
    public record Result(List<Unknown> unknowns, List<Standing> standings) {
        public Result {
            unknowns = List.copyOf(unknowns);
            standings = List.copyOf(standings);
        }
    }

    /**
     * Standing of one setting beside the car as it stands.
     *
     * @param difference of the lap time on the car as it is described, s, minus where faster; NaN where one of both has no lap
     * @param slopes by how much it changes with each unknown, s for one standard deviation
     */
    public record Standing(double difference, List<Double> slopes) {
        public Standing {
            slopes = List.copyOf(slopes);
        }

        /** Standard deviation of the difference, s. */
        public double deviation() {
            return Math.sqrt(slopes.stream().mapToDouble(slope -> slope * slope).sum());
        }

        /** Lower end of the interval of 90 %, s. */
        public double low() {
            return difference - NORMAL_90 * deviation();
        }

        /** Upper end, s. */
        public double high() {
            return difference + NORMAL_90 * deviation();
        }

        /** What can be said of it by that interval. */
        public RobustnessResult.Verdict verdict() {
            return RobustnessResult.Verdict.of(low(), high());
        }

        /** Share of an unknown in the variance; they add up to 1. */
        public double share(int unknown) {
            double slope = slopes.get(unknown);
            double deviation = deviation();
            return slope * slope / (deviation * deviation);
        }
    }

    @Override
    public Result run(StudyRun how) {
        PlausibleDays days = PlausibleDays.of(present, track, day, assuming, List.of());
        Stations stations = track.stations(spacing);
        int count = days.unknowns().size();
        double[][] draws = new double[2 * count][count];
        List<Stations> roads = new ArrayList<>();
        for (int i = 0; i < draws.length; i++) {
            draws[i][i / 2] = i % 2 == 0 ? STEP : -STEP;
            roads.add(days.isOfRoad(i / 2) ? days.road(draws[i]).stationsAt(stations.s()) : stations);
        }
        List<Car> all = new ArrayList<>(settings);
        all.add(0, present);
        List<double[]> changes = how.inParallel(
                all.size(),
                () -> new LapSolver(stations),
                (solver, k) -> changes(days, all.get(k), draws, roads, solver),
                done -> how.report(done, all.size()));
        List<Standing> standings = new ArrayList<>();
        for (int k = 1; k < all.size(); k++) {
            standings.add(standing(days, changes.get(0), changes.get(k)));
        }
        return new Result(days.unknowns(), standings);
    }

    /** The lap time of a setting, then its change to each draw, s; NaN where it has no lap. */
    private double[] changes(PlausibleDays days, Car setUp, double[][] draws, List<Stations> roads, LapSolver solver) {
        List<LapSolver.Nearby> nearby = new ArrayList<>();
        for (int i = 0; i < draws.length; i++) {
            Vehicle vehicle = Vehicle.of(days.car(setUp, draws[i]), days.day(day, draws[i]));
            nearby.add(new LapSolver.Nearby(vehicle, roads.get(i)));
        }
        try {
            return solver.changes(Vehicle.of(setUp, day), nearby);
        } catch (NoLapException noLap) {
            double[] none = new double[1 + draws.length];
            Arrays.fill(none, Double.NaN);
            return none;
        }
    }

    private static Standing standing(PlausibleDays days, double[] before, double[] after) {
        List<Double> slopes = new ArrayList<>();
        for (int u = 0; u < days.unknowns().size(); u++) {
            double over = after[1 + 2 * u] - before[1 + 2 * u];
            double under = after[2 + 2 * u] - before[2 + 2 * u];
            double slope = (over - under) / (2 * STEP);
            slopes.add(days.unknowns().get(u).limit() ? WITHIN_LIMIT * slope : slope);
        }
        return new Standing(after[0] - before[0], slopes);
    }
}
