package dev.lapwright.charts.lap;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.Obstacles;
import dev.lapwright.charts.plot.PlacedText;
import dev.lapwright.charts.plot.PointCloud;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.PlotState;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYItemRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;
import org.jfree.data.xy.XYDataset;

/**
 * Longitudinal over lateral acceleration in g at every station, on equal scales, marked by what limits the car there. To the
 * right is a left turn, up is gaining speed. One g is the standard acceleration of free fall, 9.80665 m/s² (3rd General
 * Conference on Weights and Measures, 1901).
 */
public final class GgDiagram {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.SQUARE;

    static final double RING = 0.5;

    private GgDiagram() {}

    /** The diagram of a lap. */
    public static JFreeChart of(Lap lap, ChartStyle style) {
        double[] across = inG(lap.column(Channel.LATERAL_ACCELERATION));
        double[] along = inG(lap.column(Channel.LONGITUDINAL_ACCELERATION));
        Map<Limit, List<Integer>> stations = new EnumMap<>(Limit.class);
        for (int i = 0; i < across.length; i++) {
            stations.computeIfAbsent(lap.limit(i), limit -> new ArrayList<>()).add(i);
        }
        Map<Limit, Double> shares = lap.limitShares();
        List<Limit> order = new ArrayList<>(stations.keySet());
        order.sort(Comparator.comparing((Limit limit) -> shares.getOrDefault(limit, 0.0))
                .reversed());
        DefaultXYDataset data = new DefaultXYDataset();
        PointCloud points = new PointCloud();
        for (Limit limit : order) {
            int series = data.getSeriesCount();
            String share = percent(shares.getOrDefault(limit, 0.0)) + " of the time";
            data.addSeries(limit.label() + ": " + share, pick(stations.get(limit), across, along));
            LimitMark mark = LimitMark.of(limit);
            points.setSeriesShape(series, mark.shape());
            points.setSeriesShapesFilled(series, mark.filled());
            points.setSeriesPaint(series, style.colour(mark.series()));
            points.setSeriesOutlineStroke(series, ChartStyle.solid(1.2));
        }
        EqualScalePlot plot = new EqualScalePlot(
                data,
                axis("Lateral acceleration (g), left turns positive", across, style),
                axis("Longitudinal acceleration (g), braking negative", along, style),
                points);
        ChartLayout.style(plot, style);
        // The rarest limit is drawn last and so is never hidden.
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinesVisible(false);
        points.addAnnotation(new GRings(List.<double[][]>of(new double[][] {across, along}), style), Layer.BACKGROUND);
        String facts = ChartLayout.facts(
                lap.vehicle().car().name(),
                (lap.track().isClosed() ? "lap " : "run ") + NumberText.lapTime(lap.time()),
                "points marked by what limits the car");
        JFreeChart chart = ChartLayout.chart("g-g diagram: " + lap.track().name(), facts, plot, style);
        chart.addLegend(ChartLayout.legend(plot, style));
        return chart;
    }

    /** In whole percent; what would round to none is more than that. */
    static String percent(double share) {
        double percent = 100 * share;
        return percent < 0.5 ? "under 1%" : NumberText.fixed(0).format(percent) + "%";
    }

    private static double[] inG(double[] acceleration) {
        for (int i = 0; i < acceleration.length; i++) {
            acceleration[i] /= StandardAtmosphere.GRAVITY;
        }
        return acceleration;
    }

    private static double[][] pick(List<Integer> stations, double[] x, double[] y) {
        double[][] picked = new double[2][stations.size()];
        for (int i = 0; i < stations.size(); i++) {
            picked[0][i] = x[stations.get(i)];
            picked[1][i] = y[stations.get(i)];
        }
        return picked;
    }

    /** An axis with ends at whole rings, at least one ring either side of zero. */
    private static UnitAxis axis(String label, double[] values, ChartStyle style) {
        double low = -RING;
        double high = RING;
        for (double value : values) {
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
        UnitAxis axis = new UnitAxis(label, style, RING).withCloseTicks();
        axis.setRange(RING * Math.floor(low / RING - 0.05), RING * Math.ceil(high / RING + 0.05));
        return axis;
    }

    /** A plot whose two axes have the same scale: it takes no more of its area than that allows, in the middle. */
    private static final class EqualScalePlot extends XYPlot {
        private static final long serialVersionUID = 1L;

        EqualScalePlot(XYDataset data, ValueAxis domain, ValueAxis range, XYItemRenderer renderer) {
            super(data, domain, range, renderer);
        }

        @Override
        public void draw(Graphics2D g2, Rectangle2D area, Point2D anchor, PlotState parent, PlotRenderingInfo info) {
            AxisSpace space = calculateAxisSpace(g2, area);
            double width = area.getWidth() - space.getLeft() - space.getRight();
            double height = area.getHeight() - space.getTop() - space.getBottom();
            double acrossUnits = getDomainAxis().getRange().getLength();
            double upUnits = getRangeAxis().getRange().getLength();
            double pixelsPerUnit = Math.min(width / acrossUnits, height / upUnits);
            double spareWidth = width - pixelsPerUnit * acrossUnits;
            double spareHeight = height - pixelsPerUnit * upUnits;
            Rectangle2D fitted = new Rectangle2D.Double(
                    area.getX() + spareWidth / 2,
                    area.getY() + spareHeight / 2,
                    area.getWidth() - spareWidth,
                    area.getHeight() - spareHeight);
            super.draw(g2, fitted, anchor, parent, info);
        }

        @Override
        public boolean equals(Object other) {
            return this == other;
        }

        @Override
        public int hashCode() {
            return System.identityHashCode(this);
        }
    }

    /**
     * How points limited by one thing are marked: each limit by its own shape, so that none needs its colour to be told.
     *
     * @param series the palette's series whose colour it takes
     * @param shape about the origin, px
     * @param filled or drawn as an outline
     */
    record LimitMark(int series, Shape shape, boolean filled) {
        private static final double R = 3.4;

        static LimitMark of(Limit limit) {
            return switch (limit) {
                case FRONT_GRIP -> new LimitMark(2, polygon(3, -90), true);
                case REAR_GRIP -> new LimitMark(1, new Ellipse2D.Double(-R, -R, 2 * R, 2 * R), true);
                case POWER -> new LimitMark(0, cross(), false);
                case REV_LIMIT -> new LimitMark(5, polygon(4, 0), false);
                case BRAKES -> new LimitMark(4, new Rectangle2D.Double(-R, -R, 2 * R, 2 * R), false);
                case ROLL_OVER -> new LimitMark(3, polygon(3, 90), false);
                case PITCH_OVER -> new LimitMark(3, polygon(4, 0), true);
                case SPEED_RULE -> new LimitMark(3, new Ellipse2D.Double(-R, -R, 2 * R, 2 * R), false);
            };
        }

        private static Shape polygon(int corners, double firstDegrees) {
            Path2D path = new Path2D.Double();
            for (int i = 0; i < corners; i++) {
                double angle = Math.toRadians(firstDegrees + 360.0 * i / corners);
                double x = 1.25 * R * Math.cos(angle);
                double y = 1.25 * R * Math.sin(angle);
                if (i == 0) {
                    path.moveTo(x, y);
                } else {
                    path.lineTo(x, y);
                }
            }
            path.closePath();
            return path;
        }

        /** Two strokes: the commonest mark of a lap should cost least in a file. */
        private static Shape cross() {
            Path2D path = new Path2D.Double();
            path.append(new Line2D.Double(-R, 0, R, 0), false);
            path.append(new Line2D.Double(0, -R, 0, R), false);
            return path;
        }
    }

    /** Light circles of equal acceleration at every half g, labelled where most labels are clear of points, and the lines of zero. */
    private static final class GRings extends AbstractXYAnnotation {
        private static final long serialVersionUID = 1L;

        /** Where to try the labels, degrees: first under braking in a left turn, where a lap has few points. */
        private static final double[] ANGLES = {-45, -60, -30, -135, -120, -150, 45, 60, 30, 135};

        private static final double CLEAR = 3;

        private final transient List<double[][]> data;
        private final ChartStyle style;

        /** @param data points that labels keep clear of, g: each [2][n] */
        GRings(List<double[][]> data, ChartStyle style) {
            this.data = List.copyOf(data);
            this.style = style;
        }

        @Override
        public void draw(
                Graphics2D g2,
                XYPlot plot,
                Rectangle2D area,
                ValueAxis across,
                ValueAxis along,
                int rendererIndex,
                PlotRenderingInfo info) {
            double x0 = across.valueToJava2D(0, area, RectangleEdge.BOTTOM);
            double y0 = along.valueToJava2D(0, area, RectangleEdge.LEFT);
            double perG = Math.abs(across.valueToJava2D(1, area, RectangleEdge.BOTTOM) - x0);
            double reach = Math.hypot(
                    Math.max(across.getUpperBound(), -across.getLowerBound()),
                    Math.max(along.getUpperBound(), -along.getLowerBound()));
            g2.setStroke(ChartStyle.solid(1));
            g2.setPaint(style.palette().grid());
            for (double g = GgDiagram.RING; g < reach; g += GgDiagram.RING) {
                double r = g * perG;
                g2.draw(new Ellipse2D.Double(x0 - r, y0 - r, 2 * r, 2 * r));
            }
            g2.setPaint(style.palette().muted());
            g2.draw(new Line2D.Double(area.getMinX(), y0, area.getMaxX(), y0));
            g2.draw(new Line2D.Double(x0, area.getMinY(), x0, area.getMaxY()));
            Obstacles points = new Obstacles(area, across, along);
            for (double[][] series : data) {
                points.addPoints(series);
            }
            List<PlacedText> best = List.of();
            for (double angle : ANGLES) {
                List<PlacedText> notes = notes(g2, area, Math.toRadians(angle), x0, y0, perG, reach);
                notes.removeIf(note -> !points.leaves(note.box(g2), CLEAR));
                best = notes.size() > best.size() ? notes : best;
            }
            for (PlacedText note : best) {
                note.drawOn(g2, style.palette().muted(), style.palette().background());
            }
        }

        /** A label for each ring that has room for one at an angle. */
        private List<PlacedText> notes(
                Graphics2D g2, Rectangle2D area, double angle, double x0, double y0, double perG, double reach) {
            List<PlacedText> notes = new ArrayList<>();
            for (double g = GgDiagram.RING; g < reach; g += GgDiagram.RING) {
                double x = x0 + g * perG * Math.cos(angle);
                double y = y0 - g * perG * Math.sin(angle);
                PlacedText note =
                        new PlacedText(NumberText.fixed(1).format(g) + " g", x, y, TextAnchor.CENTER, style.small());
                if (area.contains(note.box(g2))) {
                    notes.add(note);
                }
            }
            return notes;
        }
    }
}
