package dev.lapwright.study.sensitivity;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.doubt.PlausibleCars;
import dev.lapwright.lap.LapDerivatives;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Worth of every number of a car at a circuit: how far each is in doubt, and what the lap time gains or loses by it, by the lap's own
 * derivatives ({@link LapDerivatives}). They tell what a small change is worth; what a whole range is worth takes laps of its own
 * ({@link Sensitivity}).
 *
 * <p>A number's doubt is its standard deviation over cars that this one may be ({@link PlausibleCars}): what the document states of it, or what
 * is usual for its class. Numbers that are in doubt together, as the friction of all tyres, each have their own here.
 */
public final class QuantityWorths implements Study<QuantityWorths.Result> {
    /** Cars drawn for the deviations: stratified, so that each is told to a few percent of itself. */
    private static final int DRAWN = 200;

    private static final long SEED = 1;
    /** A whole number, which a lap has no derivative by. */
    private static final String WHOLE = Quantity.LOWEST_GEAR.path();

    private final Car car;
    private final Track track;
    private final Conditions day;

    private QuantityWorths(Car car, Track track, Conditions day) {
        this.car = car;
        this.track = track;
        this.day = day;
    }

    /**
     * Of a car as it is set up.
     *
     * @param track that laps are driven on
     */
    public static QuantityWorths of(Car car, Track track, Conditions day) {
        return new QuantityWorths(car, track, day);
    }

    /**
     * What was found.
     *
     * @param lapTime of the car as it stands, s
     * @param worths in the order of {@link Car#quantityNames()}; unmodifiable
     */
    public record Result(double lapTime, List<Worth> worths) {
        public Result {
            worths = List.copyOf(worths);
        }
    }

    /**
     * Worth of one number.
     *
     * @param quantity its name
     * @param value in its unit
     * @param deviation one standard deviation of its doubt, in its unit; 0 where nothing is supposed
     * @param perUnit lap time for each unit more, s; NaN on a side where it can be no more or less
     */
    public record Worth(String quantity, double value, double deviation, LapDerivatives.Sides perUnit) {
        private static final double PERCENT = 100;

        /** Difference of lap time where the number is one standard deviation greater, s; NaN where it has no derivative. */
        public double ofDeviation() {
            return deviation == 0 ? 0 : deviation * perUnit.mean();
        }

        /** Difference of lap time where it is one percent of its size greater, s; NaN where it has no derivative. */
        public double ofPercent() {
            return Math.abs(value) / PERCENT * perUnit.mean();
        }
    }

    /** @throws dev.lapwright.fault.NoLapException if the car cannot get round */
    @Override
    public Result run(StudyRun how) {
        how.stopIfWanted();
        List<String> names = new ArrayList<>(car.quantityNames());
        names.remove(WHOLE);
        LapDerivatives slopes = LapSolver.on(track).derivatives(Vehicle.of(car, day), names);
        how.stopIfWanted();
        Map<String, Double> deviations = PlausibleCars.of(car, day).deviations(DRAWN, SEED);
        LapDerivatives.Sides none = new LapDerivatives.Sides(Double.NaN, Double.NaN);
        List<Worth> worths = new ArrayList<>();
        for (String name : car.quantityNames()) {
            worths.add(new Worth(
                    name, car.value(name), deviations.get(name), name.equals(WHOLE) ? none : slopes.of(name)));
        }
        return new Result(slopes.time(), worths);
    }
}
