package dev.lapwright.charts.distance;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import org.jfree.data.Range;
import org.jfree.data.general.DatasetUtils;
import org.jfree.data.xy.XYDataset;

/** Axes of a speed trace: km/h over m, on an axis with room for the figures written at the lowest speeds. */
public final class SpeedAxis {
    private static final double STEP = 20;
    private static final double ROOM_BELOW = 18;
    private static final double ROOM_ABOVE = 4;

    private SpeedAxis() {}

    /** Distance (m) and speed (km/h): [2][stations]. */
    public static double[][] series(Lap lap) {
        double[] s = lap.column(Channel.DISTANCE);
        double[] v = lap.column(Channel.SPEED);
        for (int i = 0; i < v.length; i++) {
            v[i] = NumberText.kmh(v[i]);
        }
        return new double[][] {s, v};
    }

    /** An axis that holds all of the data, with ends at round speeds. */
    public static UnitAxis over(XYDataset kmh, ChartStyle style) {
        Range range = DatasetUtils.findRangeBounds(kmh);
        UnitAxis axis = new UnitAxis("Speed (km/h)", style, 1);
        double low = Math.max(0, STEP * Math.floor((range.getLowerBound() - ROOM_BELOW) / STEP));
        double high = STEP * Math.ceil((range.getUpperBound() + ROOM_ABOVE) / STEP);
        axis.setRange(low, high);
        return axis;
    }
}
