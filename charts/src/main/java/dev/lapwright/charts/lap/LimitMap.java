package dev.lapwright.charts.lap;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.map.MapScale;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Line2D;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.LegendItemSource;

/**
 * The track in plan, north up and true to scale, drawn by what limits the car where, each limit by a line of its own width and
 * dashes, so that none needs its colour to be told.
 */
public final class LimitMap {
    private static final double TO_SHOW = 0.005;

    private LimitMap() {}

    /** The map of a lap; a limit of less than half a percent of the time is drawn, and not named. */
    public static JFreeChart of(Lap lap, ChartStyle style) {
        String facts = ChartLayout.facts(
                lap.vehicle().car().name(),
                (lap.track().isClosed() ? "lap " : "run ") + NumberText.lapTime(lap.time()));
        LimitPlot plot = new LimitPlot(lap, style);
        JFreeChart chart =
                ChartLayout.chart("What limits the car: " + lap.track().name(), facts, plot, style);
        chart.addLegend(ChartLayout.legend(plot, style));
        return chart;
    }

    /** How the road is drawn where one thing limits. */
    static Stroke stroke(Limit limit) {
        return switch (limit) {
            case POWER -> line(2.5);
            case BRAKES -> line(9);
            case REAR_GRIP -> line(6, 5, 3);
            case FRONT_GRIP -> line(6, 2, 3);
            default -> line(4, 9, 3);
        };
    }

    private static Stroke line(double width, float... dashes) {
        return dashes.length == 0
                ? ChartStyle.solid(width)
                : new BasicStroke((float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dashes, 0);
    }

    /** The road in plan, and what is written beside it. */
    static final class LimitPlot extends LapPlan implements LegendItemSource {
        private static final long serialVersionUID = 1L;
        private static final double WIDEST = 10;

        LimitPlot(Lap lap, ChartStyle style) {
            super(lap, style, 1, WIDEST);
        }

        @Override
        public String getPlotType() {
            return "limit map";
        }

        @Override
        public LegendItemCollection getLegendItems() {
            Map<Limit, Double> shares = lap().limitShares();
            List<Limit> limits = shares.keySet().stream()
                    .filter(limit -> shares.get(limit) >= TO_SHOW)
                    .sorted(Comparator.comparing((Limit limit) -> shares.get(limit))
                            .reversed())
                    .toList();
            LegendItemCollection items = new LegendItemCollection();
            for (Limit limit : limits) {
                items.add(new LegendItem(
                        limit.label() + " " + GgDiagram.percent(shares.get(limit)),
                        null,
                        null,
                        null,
                        new Line2D.Double(-10, 0, 10, 0),
                        stroke(limit),
                        style().colour(GgDiagram.LimitMark.of(limit).series())));
            }
            return items;
        }

        /** The limit of a station rules from it to the next one. */
        @Override
        void drawRoad(Graphics2D g2, MapScale scale, double[] x, double[] y) {
            int n = x.length;
            int from = 0;
            while (from + 1 < n) {
                Limit limit = lap().limit(from);
                int to = from + 1;
                while (to + 1 < n && lap().limit(to) == limit) {
                    to++;
                }
                g2.setStroke(stroke(limit));
                g2.setPaint(style().colour(GgDiagram.LimitMark.of(limit).series()));
                g2.draw(scale.path(x, y, from, to));
                from = to;
            }
        }
    }
}
