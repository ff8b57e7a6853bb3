package dev.lapwright.charts.lap;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.distance.DistancePanels;
import dev.lapwright.charts.distance.SpeedAxis;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.LabelSpace;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.Obstacles;
import dev.lapwright.charts.plot.PlacedText;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.CornerFigures;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapFigures;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYStepRenderer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;
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
        String facts = ChartLayout.facts(
                lap.vehicle().car().name(),
                (lap.track().isClosed() ? "lap " : "run ") + NumberText.lapTime(lap.time()),
                "top " + NumberText.wholeKmh(figures.topSpeed()) + " km/h",
                lowest(lap));
        return ChartLayout.chart("Speed trace: " + lap.track().name(), facts, panels.plot(), style);
    }

    /** A standing start is no news: there the slowest corner is told. */
    private static String lowest(Lap lap) {
        LapFigures figures = lap.figures();
        double corner = figures.minimumCornerSpeed();
        boolean standing = !(figures.minimumSpeed() > 0);
        if (standing) {
            return "standing start" + (corner > 0 ? " · slowest corner " + NumberText.wholeKmh(corner) + " km/h" : "");
        }
        return "lowest " + NumberText.wholeKmh(figures.minimumSpeed()) + " km/h";
    }

    private static XYPlot speed(Lap lap, ChartStyle style) {
        DefaultXYDataset data = new DefaultXYDataset();
        data.addSeries("speed", SpeedAxis.series(lap));
        XYPlot plot = new XYPlot(data, null, SpeedAxis.over(data, style), SeriesRenderers.of(1, style));
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

    /**
     * The lowest speed of each corner, written in km/h beneath the trace, or aside where the trace is in the way. Where there is
     * not room for all, the slowest corners come first.
     */
    static final class ApexSpeeds extends AbstractXYAnnotation {
        private static final long serialVersionUID = 1L;
        private static final double DOT = 5;
        /** Speeds so near the lowest belong to it, m/s. */
        private static final double LEVEL = 0.03;

        private static final TextAnchor[] SIDES = {
            TextAnchor.TOP_CENTER,
            TextAnchor.TOP_LEFT,
            TextAnchor.TOP_RIGHT,
            TextAnchor.CENTER_LEFT,
            TextAnchor.CENTER_RIGHT,
            TextAnchor.BOTTOM_CENTER
        };

        /** Where a corner is slowest: m, m/s. */
        record Lowest(double at, double speed) {}

        private final transient List<Lowest> slowestFirst;
        private final double[][] trace;
        private final double[] sectorEnds;
        private final ChartStyle style;

        ApexSpeeds(Lap lap, ChartStyle style) {
            double[] s = lap.column(Channel.DISTANCE);
            double[] v = lap.column(Channel.SPEED);
            List<Lowest> all = new ArrayList<>();
            for (CornerFigures corner : lap.corners()) {
                all.add(lowest(corner, s, v));
            }
            all.sort(Comparator.comparingDouble(Lowest::speed));
            slowestFirst = List.copyOf(all);
            trace = SpeedAxis.series(lap);
            sectorEnds = lap.track().sectorEnds();
            this.style = style;
        }

        List<Lowest> slowestFirst() {
            return slowestFirst;
        }

        /** The middle of the stretch driven at the lowest speed, which in a steady corner is long. */
        private static Lowest lowest(CornerFigures corner, double[] s, double[] v) {
            int first = 0;
            while (first + 1 < s.length && s[first] < corner.minimumSpeedAt()) {
                first++;
            }
            double most = corner.minimumSpeed() + LEVEL;
            int from = first;
            while (from > 0 && v[from - 1] <= most && v[from - 1] >= corner.minimumSpeed()) {
                from--;
            }
            int to = first;
            while (to + 1 < s.length && v[to + 1] <= most && v[to + 1] >= corner.minimumSpeed()) {
                to++;
            }
            return new Lowest((s[from] + s[to]) / 2, corner.minimumSpeed());
        }

        @Override
        public void draw(
                Graphics2D g2,
                XYPlot plot,
                Rectangle2D area,
                ValueAxis distance,
                ValueAxis speed,
                int rendererIndex,
                PlotRenderingInfo info) {
            Obstacles line = new Obstacles(area, distance, speed);
            line.addLine(trace);
            Obstacles both = new Obstacles(area, distance, speed);
            both.addLine(trace);
            for (double end : sectorEnds) {
                both.addUpright(end);
            }
            LabelSpace space = new LabelSpace();
            for (Lowest lowest : slowestFirst) {
                if (!distance.getRange().contains(lowest.at)) {
                    continue;
                }
                double x = distance.valueToJava2D(lowest.at, area, RectangleEdge.BOTTOM);
                double y = speed.valueToJava2D(NumberText.kmh(lowest.speed), area, RectangleEdge.LEFT);
                // Clear of the lines between sectors if there is a way, across one rather than not at all.
                PlacedText note = note(g2, lowest, x, y, area, space, both);
                note = note == null ? note(g2, lowest, x, y, area, space, line) : note;
                if (note != null) {
                    space.take(note.box(g2));
                    g2.setPaint(style.colour(0));
                    g2.fill(new Ellipse2D.Double(x - DOT / 2, y - DOT / 2, DOT, DOT));
                    note.draw(g2, style.palette().ink());
                }
            }
        }

        /** The label where trace and other labels leave it room, or null. */
        private PlacedText note(
                Graphics2D g2, Lowest lowest, double x, double y, Rectangle2D area, LabelSpace space, Obstacles line) {
            String text = NumberText.wholeKmh(lowest.speed);
            for (TextAnchor side : SIDES) {
                double dx = side.isLeft() ? DOT : side.isRight() ? -DOT : 0;
                double dy = side.equals(TextAnchor.TOP_CENTER) ? DOT : side.equals(TextAnchor.BOTTOM_CENTER) ? -DOT : 0;
                PlacedText note = new PlacedText(text, x + dx, y + dy, side, style.small())
                        .within(g2, area.getMinX(), area.getMaxX());
                Rectangle2D box = note.box(g2);
                boolean free = space.isFree(box, 3) && area.contains(box);
                if (free && line.leaves(box, 1)) {
                    return note;
                }
            }
            return null;
        }
    }
}
