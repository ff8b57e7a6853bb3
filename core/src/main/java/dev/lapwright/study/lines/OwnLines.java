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
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/**
 * Comparison of cars, each on the minimum-time line found for itself. On one line for all, a car that turns faster or slower than the
 * one it was laid for cannot make use of it.
 *
 * <p>A search ends in a local minimum; from another start it may end some hundredths lower or higher, which would be taken for a difference of the
 * cars. So only the first car's line is sought from the minimum-curvature line. The others' are sought from there, {@linkplain
 * LineSearch#roughly() roughly}, as they lie near; one that is slower so than the first car is sought from the minimum-curvature line too; then the
 * first car's once more, from that of the others' on which it is fastest. In the end each car takes the fastest of all lines found: whatever one finds, all may use.
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
        int count = others.size();
        int total = others.isEmpty() ? 1 : count + 2;
        how.report(0, total);
        Drive one = new Drive(first, how);
        List<Drive> drives = others.stream().map(car -> new Drive(car, how)).toList();
        List<Line> lines = new ArrayList<>();
        lines.add(one.anew());
        how.report(1, total);
        lines.addAll(how.inParallel(
                count, () -> drives, (all, i) -> all.get(i).from(lines.get(0)), done -> how.report(1 + done, total)));
        if (count > 0) {
            double reference = one.quickest(lines).lapTime();
            // Searches may end beside the best. Where a change that was made for a reason loses, it gets one of its
            // own.
            List<Drive> slower = drives.stream()
                    .filter(drive -> drive.quickest(lines).lapTime() > reference)
                    .toList();
            lines.addAll(how.inParallel(
                    slower.size(), () -> slower, (all, i) -> all.get(i).anew(), done -> {}));
            lines.add(one.from(one.quickest(lines.subList(1, lines.size())).line()));
            how.report(total, total);
        }
        List<OwnLinesResult.OwnLap> best =
                how.inParallel(count, () -> drives, (all, i) -> all.get(i).quickest(lines), done -> {});
        return new OwnLinesResult(one.quickest(lines), best);
    }

    /** One car and the search for its line; for one thread at a time. */
    private final class Drive {
        /** Laps driven, by the very line. */
        private final Map<Line, OwnLinesResult.OwnLap> driven = new IdentityHashMap<>();

        private final Car car;
        private final Vehicle vehicle;
        private final LineSearch search;

        Drive(Car car, StudyRun how) {
            this.car = car;
            vehicle = Vehicle.of(car, conditions);
            search = LineSearch.of(road, car, choices).reporting((steps, difference) -> how.stopIfWanted());
        }

        Line anew() {
            return finder.fastest(search, vehicle);
        }

        Line from(Line start) {
            return finder.fastest(search.from(start).roughly(), vehicle);
        }

        /** The lap on the one of some lines on which it is fastest. */
        OwnLinesResult.OwnLap quickest(List<Line> lines) {
            OwnLinesResult.OwnLap best = null;
            for (Line line : lines) {
                OwnLinesResult.OwnLap lap = driven.computeIfAbsent(line, this::on);
                best = best == null || lap.lapTime() < best.lapTime() ? lap : best;
            }
            return best;
        }

        /** A lap on a line that may have been found for a narrower car. */
        private OwnLinesResult.OwnLap on(Line found) {
            Line line = search.at(found.distances(), found.offsets());
            try {
                return new OwnLinesResult.OwnLap(
                        car, line, LapSolver.on(line.driven()).lapTime(vehicle));
            } catch (NoLapException onlyOnItsOwn) {
                return new OwnLinesResult.OwnLap(car, line, Double.POSITIVE_INFINITY);
            }
        }
    }
}
