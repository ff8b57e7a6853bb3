package dev.lapwright.charts;

import java.awt.geom.Ellipse2D;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.DefaultXYDataset;

/** The trade-off of two axes with many values each: a cloud of points coloured by lap time. */
final class TradeOffCloud {
    /** Colours told apart. */
    private static final int SHADES = 24;

    private TradeOffCloud() {}

    static JFreeChart of(SweepTable table, ChartStyle style) {
        List<SweepTable.Entry> entries = table.byLapTime();
        double low = entries.get(0).figures().lapTime();
        double high = entries.get(entries.size() - 1).figures().lapTime();
        ValueRamp ramp = new ValueRamp(low, high, style.palette(), true);
        DefaultXYDataset data = new DefaultXYDataset();
        PointCloud cloud = new PointCloud();
        for (int shade = SHADES - 1; shade >= 0; shade--) {
            double from = low + (high - low) * shade / SHADES;
            double to = shade == SHADES - 1 ? Double.POSITIVE_INFINITY : low + (high - low) * (shade + 1) / SHADES;
            List<SweepTable.Entry> within = entries.stream()
                    .filter(e -> e.figures().lapTime() >= from && e.figures().lapTime() < to)
                    .toList();
            if (!within.isEmpty()) {
                int series = data.getSeriesCount();
                data.addSeries(Numbers.lapTime(Math.max(low, from)), TradeOff.series(within));
                cloud.setSeriesPaint(series, ramp.getPaint((from + Math.min(to, high)) / 2));
                cloud.setSeriesShape(series, new Ellipse2D.Double(-4, -4, 8, 8));
            }
        }
        XYPlot plot = TradeOff.plot(table, data, style);
        plot.setRenderer(0, cloud);
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        plot.addAnnotation(new PointLabels(TradeOff.landmarks(table), data, false, new double[0], style));
        JFreeChart chart = TradeOff.sheet(
                table,
                plot,
                "each point a pair of settings: "
                        + AxisText.inSentence(table.acrossText().name()) + ", "
                        + AxisText.inSentence(table.familyText().name()),
                style);
        UnitAxis scale = new UnitAxis(SweepTime.lapTimeLabel(high), style, 0, Numbers::lapTimes);
        chart.addSubtitle(Legends.scale(ramp, scale, style));
        return chart;
    }
}
