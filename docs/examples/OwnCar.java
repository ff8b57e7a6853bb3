package examples;

import dev.lapwright.air.PowerCorrection;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.powertrain.TorqueCurve;
import dev.lapwright.track.Track;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A car made in code: the quantities that every car must give, its engine and gears, and one thing to turn. */
public final class OwnCar {
    private OwnCar() {}

    public static void main(String[] arguments) {
        Car car = car();
        Track track = Documents.circuit("harrowmere");
        for (double finalDrive : car.adjustment("final-drive").legalSettings()) {
            double time = LapSolver.lap(car.with("final-drive", finalDrive), track, Conditions.STANDARD)
                    .time();
            System.out.printf(Locale.ROOT, "final drive %.2f: %.3f s%n", finalDrive, time);
        }
    }

    /** An invented club racer without wings. */
    static Car car() {
        Map<Quantity, Double> values = new EnumMap<>(Quantity.class);
        values.put(Quantity.MASS, 780.0);
        values.put(Quantity.WHEELBASE, 2.35);
        values.put(Quantity.FRONT_WEIGHT, 47.0);
        values.put(Quantity.CG_HEIGHT, 0.42);
        values.put(Quantity.TRACK_FRONT, 1.45);
        values.put(Quantity.TRACK_REAR, 1.44);
        values.put(Quantity.WIDTH, 1.70);
        values.put(Quantity.SPRING_FRONT, 45.0);
        values.put(Quantity.SPRING_REAR, 50.0);
        values.put(Quantity.RIDE_HEIGHT_FRONT, 90.0);
        values.put(Quantity.RIDE_HEIGHT_REAR, 95.0);
        values.put(Quantity.DRAG_AREA, 0.62);
        values.put(Quantity.FRICTION_X_FRONT, 1.30);
        values.put(Quantity.FRICTION_Y_FRONT, 1.28);
        values.put(Quantity.REFERENCE_LOAD_FRONT, 2000.0);
        values.put(Quantity.FRICTION_X_REAR, 1.32);
        values.put(Quantity.FRICTION_Y_REAR, 1.31);
        values.put(Quantity.REFERENCE_LOAD_REAR, 2000.0);
        values.put(Quantity.VERTICAL_RATE_FRONT, 190.0);
        values.put(Quantity.VERTICAL_RATE_REAR, 195.0);
        values.put(Quantity.REV_LIMIT, 7200.0);
        values.put(Quantity.FINAL_DRIVE, 4.1);
        values.put(Quantity.WHEEL_RADIUS, 0.29);
        values.put(Quantity.FRONT_DRIVE_SHARE, 0.0);
        values.put(Quantity.BRAKE_FRONT_SHARE, 62.0);

        TorqueCurve engine = new TorqueCurve(
                new double[] {1500, 3000, 4500, 6000, 7200}, // rpm
                new double[] {130, 158, 172, 168, 145}); // Nm
        Adjustment finalDrive = new Adjustment(
                "final-drive",
                "Final drive",
                Unit.NONE,
                Adjustment.Range.among(4.1, List.of(3.7, 4.1, 4.5)),
                List.of(new Effect.Absolute(Quantity.FINAL_DRIVE.path(), 0, 1)));
        return Car.of(
                "Club racer",
                "made in code",
                values,
                Map.of(),
                new double[] {3.1, 2.1, 1.6, 1.25, 1.0},
                engine,
                PowerCorrection.NONE,
                List.of(finalDrive));
    }
}
