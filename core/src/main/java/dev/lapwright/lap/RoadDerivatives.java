package dev.lapwright.lap;

import java.util.EnumMap;
import java.util.Map;

/**
 * Derivatives of one lap time by what the road is at each station, all from one solved lap: seconds for each unit more at that station alone,
 * the path and its length as they are. The sum over a stretch is what a unit more all along it is worth, as {@link #between} tells. A stretch that
 * ends in the entry of a bend has a kink: which station the car brakes down to changes from one to the next there.
 *
 * <pre>{@code
 * RoadDerivatives road = new LapSolver(stations).roadDerivatives(vehicle);
 * double perGrip = road.between(RoadDerivatives.Column.GRIP, corner.entry(), corner.exit());
 * }</pre>
 */
public final class RoadDerivatives {
    private final double time;
    private final double[] s;
    private final Map<Column, double[]> perStation;

    /** What a road is at a station; headings, and with them winds, stay. */
    public enum Column {
        /** Curvature of the path, 1/m, positive to the left. */
        CURVATURE(1e-7),
        /** Slope along the path, rad, positive uphill. */
        SLOPE(1e-6),
        /** Bank, rad, positive lowers the left side. */
        BANK(1e-6),
        /** Vertical curvature, 1/m, positive in a dip. */
        VERTICAL_CURVATURE(1e-7),
        /** Grip factor of the surface. */
        GRIP(1e-5);

        /** By which it is moved to either side. */
        final double step;

        Column(double step) {
            this.step = step;
        }
    }

    /** @param perRow by column, for each station and each middle of a cell */
    RoadDerivatives(double time, Road road, Map<Column, double[]> perRow) {
        this.time = time;
        s = road.s.clone();
        perStation = new EnumMap<>(Column.class);
        perRow.forEach((column, rows) -> perStation.put(column, stations(rows, road)));
    }

    /** What lies half-way between two stations is the mean of both; the last of a closed road is its first. */
    private static double[] stations(double[] rows, Road road) {
        double[] stations = new double[road.cells + 1];
        for (int i = 0; i <= road.cells; i++) {
            stations[i] += rows[2 * i];
            if (i < road.cells) {
                stations[i] += 0.5 * rows[2 * i + 1];
                stations[i + 1] += 0.5 * rows[2 * i + 1];
            }
        }
        if (road.closed) {
            stations[0] += stations[road.cells];
            stations[road.cells] = 0;
        }
        return stations;
    }

    /** Lap time, s. */
    public double time() {
        return time;
    }

    /** Distances of the stations, m. */
    public double[] distances() {
        return s.clone();
    }

    /** Derivative by a column at each station, s per its unit; of a closed road nothing at the last, which is the first. */
    public double[] by(Column column) {
        return perStation.get(column).clone();
    }

    /** What a unit more is worth at all stations from one distance to another further on, m, s per the column's unit. */
    public double between(Column column, double from, double to) {
        double[] each = perStation.get(column);
        double sum = 0;
        for (int i = 0; i < s.length; i++) {
            sum += s[i] >= from && s[i] <= to ? each[i] : 0;
        }
        return sum;
    }
}
