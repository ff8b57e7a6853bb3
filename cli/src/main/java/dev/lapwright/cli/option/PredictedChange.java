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
        LapSolver solver = LapSolver.on(from.driven());
        double difference = lapTime(solver, to) - lapTime(solver, from);
        return doubted ? drawn(difference, from, to, console) : none(difference);
    }

    private static double lapTime(LapSolver solver, Subject subject) {
        return solver.lapTime(Vehicle.of(subject.car(), subject.day()));
    }

    private static PredictedChange none(double difference) {
        return new PredictedChange(difference, OptionalDouble.empty(), 0);
    }

    private static PredictedChange drawn(double difference, Subject from, Subject to, Console console) {
        Robustness study = Robustness.of(from.car(), from.driven(), from.day())
                .against(to.car(), to.day(), Double.NaN)
                .withDraws(UsualDoubtOptions.USUAL);
        try (ProgressBar bar = new ProgressBar(console, "drawn cars")) {
            RobustnessResult found = study.run(StudyRun.onAllCores().reporting(bar));
            double doubt = found.standings().get(0).deviation();
            return doubt > 0
                    ? new PredictedChange(difference, OptionalDouble.of(doubt), found.lapped())
                    : none(difference);
        }
    }
}
