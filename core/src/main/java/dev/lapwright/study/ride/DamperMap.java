package dev.lapwright.study.ride;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.ride.Damper;
import dev.lapwright.ride.PassSolver;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RidePass;
import dev.lapwright.ride.RoadProfile;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import java.util.ArrayList;
import java.util.List;

/**
 * Map of fast damper rates: passes over one road for a grid of fast bump and fast rebound rates, slow rates and knees kept.
 * Results are the same, bit for bit, for any number of threads.
 */
public final class DamperMap implements Study<DamperMapResult> {
    /** Rates to each side when nothing else is asked for. */
    private static final int STANDARD_COUNT = 20;

    private static final double LEAST_SHARE = 0.2;
    private static final double GREATEST_SHARE = 2;
    private static final double ROUND = 50;
    /** Step for slopes, as a share of a rate: small beside the map, large beside the integrator's error. */
    private static final double SLOPE_STEP = 0.05;

    private final QuarterCar car;
    private final PassSolver solver;
    private final double[] bump;
    private final double[] rebound;

    private DamperMap(QuarterCar car, PassSolver solver, double[] bump, double[] rebound) {
        this.car = car;
        this.solver = solver;
        this.bump = bump;
        this.rebound = rebound;
    }

    /**
     * Twenty rates each way about those of the car, the same both ways: from a fifth of the lesser to twice the greater fast
     * rate.
     *
     * @param speed m/s
     */
    public static DamperMap of(QuarterCar car, RoadProfile road, double speed) {
        Damper damper = car.damper();
        double low = LEAST_SHARE * Math.min(damper.fastBump(), damper.fastRebound());
        double high = GREATEST_SHARE * Math.max(damper.fastBump(), damper.fastRebound());
        double step = Math.max(1, ROUND * Math.ceil((high - low) / (STANDARD_COUNT - 1) / ROUND));
        double first = Math.max(0, step * Math.round(low / step));
        double[] rates = new double[STANDARD_COUNT];
        for (int i = 0; i < STANDARD_COUNT; i++) {
            rates[i] = first + i * step;
        }
        return new DamperMap(car, PassSolver.over(road, speed), rates, rates.clone());
    }

    /** The same over other rates, N s/m at the damper, rising, 2 or more each. */
    public DamperMap over(double[] bumpRates, double[] reboundRates) {
        return new DamperMap(car, solver, rates("fast bump", bumpRates), rates("fast rebound", reboundRates));
    }

    private static double[] rates(String name, double[] rates) {
        if (rates.length < 2) {
            throw new InvalidValueException(name, "a map needs 2 or more rates", "give more");
        }
        return Check.rising(name, rates.clone());
    }

    /** Number of pairs of rates. */
    public int pairs() {
        return bump.length * rebound.length;
    }

    /** Drives all passes. */
    @Override
    public DamperMapResult run(StudyRun how) {
        List<QuarterCar> cars = new ArrayList<>();
        for (double b : bump) {
            for (double r : rebound) {
                cars.add(car.withFast(b, r));
            }
        }
        Damper own = car.damper();
        double bumpStep = Math.max(1, SLOPE_STEP * own.fastBump());
        double reboundStep = Math.max(1, SLOPE_STEP * own.fastRebound());
        cars.add(car);
        cars.add(car.withFast(Math.max(0, own.fastBump() - bumpStep), own.fastRebound()));
        cars.add(car.withFast(own.fastBump() + bumpStep, own.fastRebound()));
        cars.add(car.withFast(own.fastBump(), Math.max(0, own.fastRebound() - reboundStep)));
        cars.add(car.withFast(own.fastBump(), own.fastRebound() + reboundStep));
        List<RidePass> passes = how.inParallel(
                cars.size(),
                () -> solver,
                (drive, i) -> drive.drive(cars.get(i)),
                done -> how.report(done, cars.size()));
        int pairs = pairs();
        return new DamperMapResult(
                car,
                bump,
                rebound,
                passes.subList(0, pairs),
                passes.get(pairs),
                new DamperMapResult.Beside(
                        passes.get(pairs + 1),
                        passes.get(pairs + 2),
                        Math.min(own.fastBump(), bumpStep) + bumpStep,
                        passes.get(pairs + 3),
                        passes.get(pairs + 4),
                        Math.min(own.fastRebound(), reboundStep) + reboundStep));
    }
}
