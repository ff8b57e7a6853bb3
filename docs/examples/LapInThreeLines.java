package examples;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.track.Track;
import java.util.Locale;

/** A lap of a demo car. */
public final class LapInThreeLines {
    private LapInThreeLines() {}

    public static void main(String[] arguments) {
        Car car = Documents.car("gt-talvex");
        Track track = Documents.circuit("castelvane");
        Lap lap = LapSolver.lap(car, track, Conditions.STANDARD);

        System.out.printf(Locale.ROOT, "%s round %s: %.3f s%n", car.name(), track.name(), lap.time());
        System.out.printf(Locale.ROOT, "top speed %.1f m/s%n", lap.figures().topSpeed());
    }
}
