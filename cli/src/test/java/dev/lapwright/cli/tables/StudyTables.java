package dev.lapwright.cli.tables;

import dev.lapwright.brief.Brief;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fit.DrivenLap;
import dev.lapwright.fit.Fit;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.logs.DrivenLapSelection;
import dev.lapwright.logs.DrivenLog;
import dev.lapwright.logs.DrivenLogs;
import dev.lapwright.logs.LapLogs;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.ride.Ride;
import dev.lapwright.study.sensitivity.Sensitivity;
import dev.lapwright.track.Track;
import dev.lapwright.track.survey.ImportChoices;
import dev.lapwright.track.survey.Survey;
import dev.lapwright.track.survey.SurveyImport;
import dev.lapwright.track.survey.SurveyPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Prints as Markdown what studies of a demo car round a demo circuit cost, beside a lap of the same in the same run. Uses the
 * public API alone; run from the top of the project, with the command built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/StudyTables.java</pre>
 */
public final class StudyTables {
    private static final int ROUNDS = 4;
    private static final int POINTS = 10_000;

    private StudyTables() {}

    /** Prints them. */
    public static void main(String... ignored) {
        Car car = Documents.car("gt-talvex");
        Track track = Documents.circuit("castelvane");
        Conditions day = Conditions.STANDARD;
        Vehicle vehicle = Vehicle.of(car, day);
        LapSolver solver = LapSolver.on(track);
        LineSearch search = LineSearch.of(track, car, LineChoices.DEFAULT);
        Line smoothest = search.smoothest();
        List<String> six = List.of("rear-wing", "rake", "ride-height", "final-drive", "rear-bar", "lock-under-drive");
        int cores = Runtime.getRuntime().availableProcessors();
        System.out.println("| what | threads | wall clock, s | laps' worth |");
        System.out.println("|---|---|---|---|");
        for (int i = 0; i < 200; i++) {
            solver.lapTime(vehicle);
        }
        double lap = quickest(() -> {
                    for (int i = 0; i < 100; i++) {
                        solver.lapTime(vehicle);
                    }
                })
                / 100;
        row("a lap", 1, lap, lap);
        row("the smoothest line", 1, quickest(search::smoothest), lap);
        row(
                "the fastest line from there",
                1,
                quickest(() -> search.from(smoothest).fastest(vehicle)),
                lap);
        Survey survey = survey();
        row(
                "a circuit from 10 000 points",
                1,
                quickest(() -> SurveyImport.of("survey", survey, ImportChoices.circuit())),
                lap);
        row(
                "sensitivity of " + car.adjustments().size() + " adjustments",
                cores,
                quickest(() -> Sensitivity.of(car, track, day).run()),
                lap);
        row(
                "the best of six adjustments",
                cores,
                quickest(() -> Optimisation.of(car, track, day).over(six).run()),
                lap);
        row(
                "both axles over a kerb and a road, each with a map of 400 damper pairs",
                cores,
                quickest(() -> Ride.of(car, day, 55).run()),
                lap);
        DrivenLog driven = DrivenLogs.read(DrivenLogs.find("castelvane-laps.csv"), List.of());
        // As the command does: the laps were driven on this line, and a road's middle has other bends.
        Track line = smoothest.driven();
        List<DrivenLap> laps =
                DrivenLapSelection.of(List.of(driven), line, List.of()).laps();
        row(
                "a fit of five parameters to " + laps.size() + " laps",
                1,
                quickest(() -> Fit.of(car, line, day).laps(laps).run()),
                lap);
        row("a brief", cores, quickest(() -> Brief.of(car, track, day).run()), lap);
        TimingLog log = LapLogs.read(LapLogs.find("castelvane-wings.csv")).log();
        row(
                "evidence from " + log.laps().size() + " laps, and a plan",
                1,
                quickest(() -> Evidence.DEFAULT.run(log)),
                lap);
    }

    /** Points of a closed curve of some five kilometres, with errors of a decimetre. */
    private static Survey survey() {
        Random random = new Random(7);
        List<SurveyPoint> points = new ArrayList<>();
        for (int i = 0; i < POINTS; i++) {
            double a = 2 * Math.PI * i / POINTS;
            points.add(new SurveyPoint(
                    900 * Math.cos(a) + 60 * Math.cos(5 * a) + 0.1 * random.nextGaussian(),
                    500 * Math.sin(a) + 60 * Math.sin(4 * a) + 0.1 * random.nextGaussian(),
                    100 + 8 * Math.sin(2 * a) + 0.1 * random.nextGaussian(),
                    5,
                    5));
        }
        return new Survey(points, true, true);
    }

    private static double quickest(Runnable work) {
        double least = Double.POSITIVE_INFINITY;
        for (int round = 0; round < ROUNDS; round++) {
            long start = System.nanoTime();
            work.run();
            least = Math.min(least, (System.nanoTime() - start) / 1e9);
        }
        return least;
    }

    private static void row(String what, int threads, double seconds, double lap) {
        System.out.println(
                String.format(Locale.ROOT, "| %s | %d | %.4f | %.0f |", what, threads, seconds, seconds / lap));
    }
}
