package dev.lapwright.study.sweep;

import dev.lapwright.car.Car;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineProgress;
import dev.lapwright.line.LineSearch;

/**
 * How a sweep finds the fastest line anew for each car: from one line, always the same, so that no point's result depends on
 * another's.
 *
 * @param from where each search begins
 * @param choices margin and nodes
 */
public record LineRefresh(Line from, LineChoices choices) {
    /** The fastest line found from there for this car. */
    Line line(Car car, Vehicle vehicle) {
        return new LineSearch(from.road(), car, choices).fastest(from, vehicle, LineProgress.NONE);
    }

    /** A lap in short on the fastest line found from there for this car. */
    LapFigures figures(Car car, Vehicle vehicle) {
        return LapSolver.on(line(car, vehicle).driven()).figures(vehicle);
    }
}
