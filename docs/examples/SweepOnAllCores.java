package examples;

import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import java.util.Locale;

/** Wing and final drive together on all cores, then on one: the same to the last bit. */
public final class SweepOnAllCores {
    private SweepOnAllCores() {}

    public static void main(String[] arguments) {
        Sweep sweep = Sweep.of(Documents.car("gt-talvex"), Documents.circuit("harrowmere"), Conditions.STANDARD)
                .over(SweepAxis.stepped("rear-wing", 0, 12, 2))
                .over(new SweepAxis("final-drive", new double[] {3.417, 3.615, 3.818}));
        SweepResult onAllCores = sweep.run();
        SweepResult onOne = sweep.run(StudyRun.onThreads(1));

        SweepResult.Point fastest = onAllCores.fastest().orElseThrow();
        System.out.printf(
                Locale.ROOT,
                "%d laps, fastest at %s: %.3f s%n",
                sweep.laps(),
                fastest.settings(),
                fastest.figures().orElseThrow().lapTime());
        System.out.println("the same on one core: " + onAllCores.points().equals(onOne.points()));
    }
}
