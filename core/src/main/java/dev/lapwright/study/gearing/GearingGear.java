package dev.lapwright.study.gearing;

import dev.lapwright.lap.Drivetrain;
import dev.lapwright.lap.Vehicle;
import java.util.ArrayList;
import java.util.List;

/**
 * One gear: engine speed over road speed is a straight line through the origin, used from {@code fromSpeed} to
 * {@code toSpeed}. All gears together draw the saw.
 *
 * @param gear from 1
 * @param ratio of the gear alone
 * @param overallRatio with the final drive
 * @param engineSpeedPerSpeed 1/min per m/s
 * @param fromSpeed road speed at which it is taken, m/s; 0 in first gear
 * @param toSpeed road speed at which it is left for the next, m/s; that at the rev limit in top gear
 * @param limitSpeed road speed at the rev limit, m/s
 */
public record GearingGear(
        int gear,
        double ratio,
        double overallRatio,
        double engineSpeedPerSpeed,
        double fromSpeed,
        double toSpeed,
        double limitSpeed) {

    /** The gears of a car, first gear first. */
    public static List<GearingGear> of(Vehicle vehicle) {
        Drivetrain drivetrain = Drivetrain.of(vehicle);
        double[] ratios = vehicle.car().gearRatios();
        double finalDrive = vehicle.car().value("gearbox.finalDrive");
        List<GearingGear> gears = new ArrayList<>();
        for (int gear = 1; gear <= ratios.length; gear++) {
            double limit = drivetrain.limitSpeed(gear);
            gears.add(new GearingGear(
                    gear,
                    ratios[gear - 1],
                    ratios[gear - 1] * finalDrive,
                    drivetrain.engineSpeed(gear, 1),
                    gear == 1 ? 0 : drivetrain.shiftSpeed(gear - 1),
                    gear == ratios.length ? limit : drivetrain.shiftSpeed(gear),
                    limit));
        }
        return gears;
    }

    /** Engine speed at a road speed (m/s), 1/min. */
    public double engineSpeed(double speed) {
        return engineSpeedPerSpeed * speed;
    }
}
