package dev.lapwright.cli.option;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.OptionalDouble;

/**
 * Prediction by the lap model of what a change of setup does to the lap time.
 *
 * @param difference s, minus where faster
 * @param doubt its standard deviation on drawn cars, s; none if it was not asked for, or too few of them had a lap
 * @param drawn cars that tell it
 */
public record PredictedChange(double difference, OptionalDouble doubt, int drawn) {
    /**
     * By a lap before and one after, on the line that the first is to be driven on.
     *
     * @param doubted whether cars are drawn for its doubt
     */
    public static PredictedChange of(Subject from, Subject to, boolean doubted, Console console) {
        if (!doubted) {
            return none(difference(from, to));
        }
        try (ProgressBar bar = new ProgressBar(console, "drawn cars")) {
            return drawn(from, to, StudyRun.onAllCores().reporting(bar));
        }
    }

    private static double difference(Subject from, Subject to) {
        LapSolver solver = LapSolver.on(from.driven());
        return lapTime(solver, to) - lapTime(solver, from);
    }

    private static double lapTime(LapSolver solver, Subject subject) {
        return solver.lapTime(Vehicle.of(subject.car(), subject.day()));
    }

    private static PredictedChange none(double difference) {
        return new PredictedChange(difference, OptionalDouble.empty(), 0);
    }

    /** The same with its doubt, for somebody who may stop it. */
    public static PredictedChange drawn(Subject from, Subject to, StudyRun how) {
        double difference = difference(from, to);
        RobustnessResult found = Robustness.of(from.car(), from.driven(), from.day())
                .against(to.car(), to.day(), Double.NaN)
                .withDraws(UsualDoubtOptions.USUAL)
                .run(how);
        double doubt = found.standings().get(0).deviation();
        return doubt > 0 ? new PredictedChange(difference, OptionalDouble.of(doubt), found.lapped()) : none(difference);
    }
}
