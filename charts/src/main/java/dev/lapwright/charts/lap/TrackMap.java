package dev.lapwright.charts.lap;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.map.MapScale;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.ColourScale;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapFigures;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import org.jfree.chart.JFreeChart;

/**
 * The track in plan, north up and true to scale, coloured by speed (km/h), with corners, start and driving direction. The
 * road is drawn wider than it is.
 */
public final class TrackMap {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.MAP;

    private static final double STEP = 10;

    private TrackMap() {}

    /** The map of a lap. */
    public static JFreeChart of(Lap lap, ChartStyle style) {
        LapFigures figures = lap.figures();
        // A standing start would spend half of the ramp on a few metres: below the slowest corner all is one colour.
        double corner = figures.minimumCornerSpeed();
        double slowest = lap.track().isClosed() || Double.isNaN(corner) ? figures.minimumSpeed() : corner;
        double low = STEP * Math.floor(NumberText.kmh(slowest) / STEP);
        boolean slower = NumberText.kmh(figures.minimumSpeed()) < low;
        double high = STEP * Math.ceil(NumberText.kmh(figures.topSpeed()) / STEP);
        ColourScale ramp = new ColourScale(low, high, style.palette(), false);
        String facts = ChartLayout.facts(
                lap.vehicle().car().name(),
                (lap.track().isClosed() ? "lap " : "run ") + NumberText.lapTime(lap.time()),
                NumberText.fixed(0).format(lap.track().length()) + " m",
                "top " + NumberText.wholeKmh(figures.topSpeed()) + " km/h",
                "lowest " + NumberText.wholeKmh(figures.minimumSpeed()) + " km/h"
                        + (slower ? " (one colour below " + NumberText.fixed(0).format(low) + ")" : ""));
        JFreeChart chart =
                ChartLayout.chart("Speed map: " + lap.track().name(), facts, new MapPlot(lap, ramp, style), style);
        chart.addSubtitle(ChartLayout.colourScale(ramp, new UnitAxis("Speed (km/h)", style, 1), style));
        return chart;
    }

    /** The road in plan coloured by speed, and what is written beside it. */
    static final class MapPlot extends LapPlan {
        private static final long serialVersionUID = 1L;
        private static final double ROAD = 7;
        private static final double CASING = 10;

        private static final double REACH = 0.8;
        /** Colours told apart along the road. */
        private static final int SHADES = 48;

        private final transient ColourScale ramp;

        MapPlot(Lap lap, ColourScale ramp, ChartStyle style) {
            super(lap, style, 1.5, CASING);
            this.ramp = ramp;
        }

        @Override
        public String getPlotType() {
            return "track map";
        }

        @Override
        void drawRoad(Graphics2D g2, MapScale scale, double[] x, double[] y) {
            double[] v = lap().column(Channel.SPEED);
            int n = x.length;
            g2.setStroke(ChartStyle.solid(CASING));
            g2.setPaint(style().palette().muted());
            g2.draw(scale.path(x, y, 0, n - 1));
            // Each stretch reaches a little under the next one, so that no seam shows between them.
            g2.setStroke(ChartStyle.solid(ROAD));
            int from = 0;
            while (from + 1 < n) {
                int to = from + 1;
                int shade = shade(v[from], v[to]);
                while (to + 1 < n && shade(v[to], v[to + 1]) == shade) {
                    to++;
                }
                g2.setPaint(colour(shade));
                Path2D stretch = scale.path(x, y, from, to);
                if (to + 1 < n) {
                    reach(stretch, scale, x, y, to);
                }
                g2.draw(stretch);
                from = to;
            }
        }

        /** Lengthens a stretch that ends at a station by a px or so towards the next station. */
        private static void reach(Path2D stretch, MapScale scale, double[] x, double[] y, int end) {
            double px = scale.px(x[end]);
            double py = scale.py(y[end]);
            double dx = scale.px(x[end + 1]) - px;
            double dy = scale.py(y[end + 1]) - py;
            double length = Math.hypot(dx, dy);
            double part = length > REACH ? REACH / length : 1;
            stretch.lineTo(px + part * dx, py + part * dy);
        }

        private int shade(double a, double b) {
            double kmh = NumberText.kmh((a + b) / 2);
            double share = (kmh - ramp.getLowerBound()) / (ramp.getUpperBound() - ramp.getLowerBound());
            return (int) Math.max(0, Math.min(SHADES - 1, share * SHADES));
        }

        private Color colour(int shade) {
            double share = (shade + 0.5) / SHADES;
            return ramp.getPaint(ramp.getLowerBound() + share * (ramp.getUpperBound() - ramp.getLowerBound()));
        }
    }
}
