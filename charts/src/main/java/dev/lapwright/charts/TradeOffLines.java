package dev.lapwright.charts;

import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.DefaultXYDataset;

/** The trade-off with a line for each value of the second axis, or one line where there is none. */
final class TradeOffLines {
    private TradeOffLines() {}

    static JFreeChart of(SweepTable table, ChartStyle style) {
        DefaultXYDataset data = new DefaultXYDataset();
        List<double[]> lapTimes = new ArrayList<>();
        List<PointLabels.Label> labels = new ArrayList<>(TradeOff.landmarks(table));
        double[] families = table.families();
        for (int f = 0; f < families.length; f++) {
            List<SweepTable.Entry> entries = table.entries(f);
            if (entries.isEmpty()) {
                continue;
            }
            String name = table.hasFamilies() ? table.familyText().named(families[f]) : "settings";
            data.addSeries(name, TradeOff.series(entries));
            lapTimes.add(
                    entries.stream().mapToDouble(e -> e.figures().lapTime()).toArray());
            label(table, f, entries, labels);
        }
        XYPlot plot = TradeOff.plot(table, data, style);
        plot.setRenderer(0, new SizedPoints(lapTimes.toArray(new double[0][]), style));
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        plot.addAnnotation(new PointLabels(labels, data, true, new double[0], style));
        String points = AxisText.inSentence(table.acrossText().label());
        JFreeChart chart =
                TradeOff.sheet(table, plot, "points labelled by " + points + ", larger for a shorter lap time", style);
        if (table.hasFamilies()) {
            chart.addLegend(Legends.above(() -> plot.getRenderer(0).getLegendItems(), style));
        }
        return chart;
    }

    /**
     * Ends first: where room is short, the label of an end says more than one between. With several lines only that of the
     * fastest lap is labelled throughout.
     */
    private static void label(
            SweepTable table, int family, List<SweepTable.Entry> entries, List<PointLabels.Label> labels) {
        int[] fastest = table.fastest();
        int last = entries.size() - 1;
        int count = family == fastest[0] ? entries.size() : Math.min(2, entries.size());
        for (int i = 0; i < count; i++) {
            int from = i == 0 ? 0 : i == 1 ? last : i - 1;
            SweepTable.Entry entry = entries.get(from);
            double[] point = TradeOff.point(entry.figures());
            boolean named = entry.figures().equals(table.at(fastest[0], fastest[1]));
            if (!named) {
                labels.add(new PointLabels.Label(
                        point[0], point[1], table.acrossText().value(entry.setting()), false, SizedPoints.LARGEST));
            }
        }
    }
}
