package dev.lapwright.study.lines;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineFinder;
import dev.lapwright.line.LineSearch;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Comparison of cars, each on the minimum-time line found for itself. On one line for all, a car that turns faster or slower than the
 * one it was laid for cannot make use of it.
 *
 * <p>A search ends in a local minimum; from another start it may end some hundredths lower or higher. So each car's line is sought from
 * the minimum-curvature line and from the first car's, and the first car's from all of the others': whatever one finds, all may use. The
 * lowest counts.
 *
 * <pre>{@code
 * OwnLinesResult found = OwnLines.of(road, car, Conditions.STANDARD).against(List.of(car.with("rear-wing", 8))).run();
 * System.out.println(found.difference(0) + " s");
 * }</pre>
 */
public final class OwnLines implements Study<OwnLinesResult> {
    private final Track road;
    private final Car first;
    private final Conditions conditions;
    private final List<Car> others;
    private final LineChoices choices;
    private final LineFinder finder;

    private OwnLines(
            Track road, Car first, Conditions conditions, List<Car> others, LineChoices choices, LineFinder finder) {
        this.road = road;
        this.first = first;
        this.conditions = conditions;
        this.others = List.copyOf(others);
        this.choices = choices;
        this.finder = finder;
    }

    /** The first car alone, at the usual margin. */
    public static OwnLines of(Track road, Car first, Conditions conditions) {
        return new OwnLines(road, first, conditions, List.of(), LineChoices.DEFAULT, LineFinder.SEARCH);
    }

    /** The same against other cars. */
    public OwnLines against(List<Car> cars) {
        return new OwnLines(road, first, conditions, cars, choices, finder);
    }

    /** The same with another margin or other nodes. */
    public OwnLines with(LineChoices other) {
        return new OwnLines(road, first, conditions, others, other, finder);
    }

    /** The same, its lines found by somebody who may remember them. */
    public OwnLines with(LineFinder other) {
        return new OwnLines(road, first, conditions, others, choices, other);
    }

    /**
     * Looks for all lines.
     *
     * @param how its progress is told in searches
     * @throws dev.lapwright.fault.InvalidValueException if the road leaves a car no room
     * @throws NoLapException if a car has no lap
     */
    @Override
    public OwnLinesResult run(StudyRun how) {
        List<Car> cars = new ArrayList<>();
        cars.add(first);
        cars.addAll(others);
        int count = cars.size();
        int total = count + 2 * others.size();
        List<Drive> drives = cars.stream().map(car -> new Drive(car, how)).toList();
        how.report(0, total);
        List<OwnLinesResult.OwnLap> anew =
                how.inParallel(count, () -> drives, (all, i) -> all.get(i).anew(), done -> how.report(done, total));
        // Second, the others from the first's line, and the first from each of the others'.
        List<OwnLinesResult.OwnLap> again = how.inParallel(
                2 * others.size(),
                () -> drives,
                (all, i) -> i % 2 == 0
                        ? all.get(1 + i / 2).from(anew.get(0).line())
                        : all.get(0).from(anew.get(1 + i / 2).line()),
                done -> how.report(count + done, total));
        List<OwnLinesResult.OwnLap> best = new ArrayList<>(anew);
        IntStream.range(0, again.size()).forEach(i -> {
            int car = i % 2 == 0 ? 1 + i / 2 : 0;
            if (again.get(i).lapTime() < best.get(car).lapTime()) {
                best.set(car, again.get(i));
            }
        });
        return new OwnLinesResult(best.get(0), best.subList(1, count));
    }

    /** One car and the search for its line; nothing in it changes. */
    private final class Drive {
        private final Car car;
        private final Vehicle vehicle;
        private final LineSearch search;

        Drive(Car car, StudyRun how) {
            this.car = car;
            vehicle = Vehicle.of(car, conditions);
            search = LineSearch.of(road, car, choices).reporting((steps, difference) -> how.stopIfWanted());
        }

        OwnLinesResult.OwnLap anew() {
            return found(search);
        }

        OwnLinesResult.OwnLap from(Line start) {
            return found(search.from(start));
        }

        private OwnLinesResult.OwnLap found(LineSearch from) {
            Line line = finder.fastest(from, vehicle);
            return new OwnLinesResult.OwnLap(
                    car, line, LapSolver.on(line.driven()).lapTime(vehicle));
        }
    }
}
