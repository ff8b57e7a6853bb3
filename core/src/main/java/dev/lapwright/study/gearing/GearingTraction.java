package dev.lapwright.study.gearing;

import dev.lapwright.lap.Drivetrain;
import dev.lapwright.lap.Vehicle;
import java.util.ArrayList;
import java.util.List;

/**
 * Force at the wheels in each gear, and what stands against it on a level straight without wind, over road speed.
 *
 * @param speeds m/s, rising in even steps
 * @param forces N, one array for each gear, first gear first; NaN above the gear's rev limit
 * @param resistance N
 */
public record GearingTraction(double[] speeds, List<double[]> forces, double[] resistance) {
    private static final int STEPS = 200;

    public GearingTraction {
        speeds = speeds.clone();
        forces = copies(forces);
        resistance = resistance.clone();
    }

    /** The curves of a car from a crawl to the rev limit in top gear. */
    public static GearingTraction of(Vehicle vehicle) {
        Drivetrain drivetrain = Drivetrain.of(vehicle);
        double step = vehicle.geared() / STEPS;
        double[] speeds = new double[STEPS + 1];
        double[] resistance = new double[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            speeds[i] = i == STEPS ? vehicle.geared() : step * i;
            resistance[i] = drivetrain.resistance(speeds[i], 0, 0);
        }
        List<double[]> forces = new ArrayList<>();
        for (int gear = 1; gear <= drivetrain.gears(); gear++) {
            double[] force = new double[STEPS + 1];
            for (int i = 0; i <= STEPS; i++) {
                boolean beyond = drivetrain.engineSpeed(gear, speeds[i]) > drivetrain.revLimit() * (1 + 1e-9);
                force[i] = beyond ? Double.NaN : drivetrain.force(gear, speeds[i]);
            }
            forces.add(force);
        }
        return new GearingTraction(speeds, forces, resistance);
    }

    private static List<double[]> copies(List<double[]> arrays) {
        return arrays.stream().map(double[]::clone).toList();
    }

    @Override
    public double[] speeds() {
        return speeds.clone();
    }

    @Override
    public List<double[]> forces() {
        return copies(forces);
    }

    @Override
    public double[] resistance() {
        return resistance.clone();
    }
}
