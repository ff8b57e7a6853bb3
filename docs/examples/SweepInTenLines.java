package examples;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import dev.lapwright.track.Track;
import java.util.Locale;

/** What each angle of the rear wing is worth. */
public final class SweepInTenLines {
    private SweepInTenLines() {}

    public static void main(String[] arguments) {
        Car car = Documents.car("gt-talvex");
        Track track = Documents.circuit("castelvane");
        SweepResult wing = Sweep.of(car, track, Conditions.STANDARD)
                .over(SweepAxis.stepped("rear-wing", 0, 12, 3))
                .run();
        for (SweepResult.Point point : wing.points()) {
            double degrees = point.settings().get(0);
            System.out.printf(Locale.ROOT, "%4.0f deg %+7.3f s%n", degrees, wing.difference(point));
        }
    }
}
