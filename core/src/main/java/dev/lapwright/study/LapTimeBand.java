package dev.lapwright.study;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.survey.CurvatureBand;
import dev.lapwright.track.survey.ImportedTrack;

/**
 * The doubt that a survey leaves in a lap time: a car's laps on tracks drawn from all those that the points allow
 * ({@link CurvatureBand}).
 *
 * <p>The lap of the most probable track stays in the middle: a drawn one has wiggles that no road has, and is slower. The
 * spread of the drawn laps is {@linkplain CurvatureBand#widened() widened}.
 *
 * @param lapTime on the track, s
 * @param deviation standard deviation of what the track's errors change of it, s
 */
public record LapTimeBand(double lapTime, double deviation) {
    /** Quantile of a normal distribution that nine of ten lie within. */
    private static final double NINE_OF_TEN = 1.645;

    /**
     * The band of one car's lap.
     *
     * @param imported with a band of its curvature
     * @throws dev.lapwright.fault.NoLapException if this car cannot get round this track
     */
    public static LapTimeBand of(ImportedTrack imported, Car car, Conditions conditions) {
        Vehicle vehicle = Vehicle.of(car, conditions);
        double lapTime = LapSolver.on(imported.track()).lapTime(vehicle);
        CurvatureBand band = imported.band();
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < band.draws(); i++) {
            double change = LapSolver.on(band.drawn(i)).lapTime(vehicle) - lapTime;
            sum += change;
            squares += change * change;
        }
        int n = band.draws();
        return new LapTimeBand(lapTime, band.widened() * Math.sqrt(Math.max(0, squares - sum * sum / n) / (n - 1)));
    }

    /** Half the width of the band that the true lap time should lie in nine times of ten, s. */
    public double nineOfTen() {
        return NINE_OF_TEN * deviation;
    }
}
