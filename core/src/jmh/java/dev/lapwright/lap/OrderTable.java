package dev.lapwright.lap;

import dev.lapwright.car.Conditions;
import dev.lapwright.lap.ConvergenceTest.Sample;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Prints errors over spacing, and the order that follows, as Markdown: what {@link ConvergenceTest} asserts, and laps. */
public final class OrderTable {
    private static final String WING = "aero.wings.rear.angleDeg";

    private OrderTable() {}

    /** Prints it. */
    public static void main(String... ignored) {
        say("| error | spacing × 4 | × 2 | × 1 | × ½ | × ¼ | × ⅛ | order |");
        say("|---|---|---|---|---|---|---|---|");
        row("speed, constant power and drag (closed form)", ConvergenceTest.constantPower());
        row("speed, braking with drag and downforce (closed form)", ConvergenceTest.braking());
        row("speed out of 12 opening bends, point mass", ConvergenceTest.openingBend(ConvergenceTest.pointMass()));
        row("speed out of 12 opening bends, full car", ConvergenceTest.openingBend(ConvergenceTest.fullCar()));
        row("lap time of 12 wings on the benchmark circuit, s", lapTimes());
    }

    /** Root of the mean square over wing angles, against a 32nd of the default spacing. */
    private static List<Sample> lapTimes() {
        Track track = BenchmarkScene.circuit();
        List<Vehicle> cars = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            cars.add(Vehicle.of(BenchmarkScene.car().with(WING, 0.5 + i), Conditions.STANDARD));
        }
        LapSolver fine = new LapSolver(track.stations(StationSpacing.DEFAULT.scaled(1 / 32.0)));
        double[] exact = cars.stream().mapToDouble(fine::lapTime).toArray();
        return ConvergenceTest.samples(spacing -> {
            LapSolver solver = new LapSolver(track.stations(spacing));
            double sum = 0;
            for (int i = 0; i < exact.length; i++) {
                double error = solver.lapTime(cars.get(i)) - exact[i];
                sum += error * error;
            }
            return Math.sqrt(sum / exact.length);
        });
    }

    private static void row(String what, List<Sample> samples) {
        StringBuilder line = new StringBuilder("| " + what);
        for (Sample sample : samples) {
            line.append(String.format(Locale.ROOT, " | %.1e", sample.error()));
        }
        say(line.append(String.format(Locale.ROOT, " | %.1f |", ConvergenceTest.order(samples)))
                .toString());
    }

    private static void say(String line) {
        System.out.println(line);
    }
}
