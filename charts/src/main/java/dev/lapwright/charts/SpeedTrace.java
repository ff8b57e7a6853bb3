package dev.lapwright.charts;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapFigures;
import java.util.Arrays;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYStepRenderer;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * Speed (km/h) over distance (m) with the gear beneath; corners shaded, numbered and marked with their lowest speed, sectors
 * ruled off.
 */
public final class SpeedTrace {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    private SpeedTrace() {}

    /** The chart of a lap. */
    public static JFreeChart of(Lap lap, ChartStyle style) {
        DistancePanels panels = new DistancePanels(lap.stations(), lap.sectorTimes(), style);
        panels.add(speed(lap, style), 400);
        panels.add(gear(lap, style), 110);
        LapFigures figures = lap.figures();
        String facts = Sheet.facts(
                lap.vehicle().car().name(),
                (lap.track().isClosed() ? "lap " : "run ") + Numbers.lapTime(lap.time()),
                "top " + Numbers.wholeKmh(figures.topSpeed()) + " km/h",
                lowest(lap));
        return Sheet.of("Speed trace: " + lap.track().name(), facts, panels.plot(), style);
    }

    /** A standing start is no news: there the slowest corner is told. */
    private static String lowest(Lap lap) {
        LapFigures figures = lap.figures();
        double corner = figures.minimumCornerSpeed();
        boolean standing = !(figures.minimumSpeed() > 0);
        if (standing) {
            return "standing start" + (corner > 0 ? " · slowest corner " + Numbers.wholeKmh(corner) + " km/h" : "");
        }
        return "lowest " + Numbers.wholeKmh(figures.minimumSpeed()) + " km/h";
    }

    private static XYPlot speed(Lap lap, ChartStyle style) {
        DefaultXYDataset data = new DefaultXYDataset();
        data.addSeries("speed", SpeedAxis.series(lap));
        XYPlot plot = new XYPlot(data, null, SpeedAxis.over(data, style), Lines.of(1, style));
        plot.addAnnotation(new ApexSpeeds(lap, style));
        return plot;
    }

    private static XYPlot gear(Lap lap, ChartStyle style) {
        DefaultXYDataset data = new DefaultXYDataset();
        data.addSeries("gear", changes(lap.column(Channel.DISTANCE), lap.column(Channel.GEAR)));
        XYStepRenderer steps = new XYStepRenderer();
        steps.setSeriesPaint(0, style.colour(0));
        steps.setSeriesStroke(0, ChartStyle.solid(2));
        UnitAxis axis = new UnitAxis("Gear", style, 1).withCloseTicks();
        int gears = lap.vehicle().car().gearRatios().length;
        axis.setRange(0.5, gears + 0.5);
        return new XYPlot(data, null, axis, steps);
    }

    /** The first and last points and those where the value changes: all that steps need. */
    private static double[][] changes(double[] x, double[] y) {
        double[][] kept = new double[2][x.length];
        int n = 0;
        for (int i = 0; i < x.length; i++) {
            if (i == 0 || i == x.length - 1 || y[i] != y[i - 1]) {
                kept[0][n] = x[i];
                kept[1][n++] = y[i];
            }
        }
        return new double[][] {Arrays.copyOf(kept[0], n), Arrays.copyOf(kept[1], n)};
    }
}
