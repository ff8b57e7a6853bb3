package dev.lapwright.charts;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.ui.Layer;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * Longitudinal over lateral acceleration in g at every station, on equal scales, marked by what limits the car there. To the
 * right is a left turn, up is gaining speed. One g is the standard acceleration of free fall, 9.80665 m/s² (3rd General
 * Conference on Weights and Measures, 1901).
 */
public final class GgDiagram {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.SQUARE;

    static final double STANDARD_GRAVITY = 9.80665;
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
        Sheet.plain(plot, style);
        // The rarest limit is drawn last and so is never hidden.
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinesVisible(false);
        points.addAnnotation(new GRings(List.<double[][]>of(new double[][] {across, along}), style), Layer.BACKGROUND);
        String facts = Sheet.facts(
                lap.vehicle().car().name(),
                (lap.track().isClosed() ? "lap " : "run ") + Numbers.lapTime(lap.time()),
                "points marked by what limits the car");
        JFreeChart chart = Sheet.of("g-g diagram: " + lap.track().name(), facts, plot, style);
        chart.addLegend(Legends.above(plot, style));
        return chart;
    }

    /** In whole percent; what would round to none is more than that. */
    static String percent(double share) {
        double percent = 100 * share;
        return percent < 0.5 ? "under 1%" : Numbers.fixed(0).format(percent) + "%";
    }

    private static double[] inG(double[] acceleration) {
        for (int i = 0; i < acceleration.length; i++) {
            acceleration[i] /= STANDARD_GRAVITY;
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
        UnitAxis axis = new UnitAxis(label, style, 0);
        axis.setRange(RING * Math.floor(low / RING - 0.05), RING * Math.ceil(high / RING + 0.05));
        axis.setTickUnit(new NumberTickUnit(RING, Numbers.fixed(1)));
        return axis;
    }
}
