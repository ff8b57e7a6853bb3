package dev.lapwright.charts;

import dev.lapwright.lap.LapFigures;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jfree.data.xy.XYDataset;

/** Lap time over two axes with many values each: coloured cells, lines of equal lap time, the fastest setting marked. */
final class SweepMap {
    private SweepMap() {}

    static JFreeChart of(SweepTable table, ChartStyle style) {
        double[] x = table.across();
        double[] y = table.families();
        double[][] z = new double[y.length][x.length];
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int j = 0; j < y.length; j++) {
            for (int i = 0; i < x.length; i++) {
                LapFigures figures = table.at(j, i);
                z[j][i] = figures == null ? Double.NaN : figures.lapTime();
                if (figures != null) {
                    low = Math.min(low, z[j][i]);
                    high = Math.max(high, z[j][i]);
                }
            }
        }
        // Light is fast, as on the track map.
        ValueRamp ramp = new ValueRamp(low, high, style.palette(), true);
        UnitAxis up = new UnitAxis(table.familyText().label(), style, 0);
        up.setRange(HeatMap.edge(y, 0, -1), HeatMap.edge(y, y.length - 1, 1));
        UnitAxis across = new UnitAxis(table.acrossText().label(), style, 0);
        across.setRange(HeatMap.edge(x, 0, -1), HeatMap.edge(x, x.length - 1, 1));
        int[] place = table.fastest();
        XYDataset best = Marks.single("fastest", x[place[1]], y[place[0]]);
        XYPlot plot = new XYPlot(best, across, up, Marks.fastest(style, Marks.RING));
        Sheet.plain(plot, style);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinesVisible(false);
        plot.getRenderer()
                .addAnnotation(
                        new HeatMap(
                                x,
                                y,
                                z,
                                ramp,
                                table.sweep().baseline().lapTime(),
                                "baseline",
                                Numbers::lapTimes,
                                style),
                        Layer.BACKGROUND);
        String facts = Sheet.facts(SweepTime.facts(table), SweepTime.bestText(table));
        JFreeChart chart = Sheet.of(SweepTime.heading(table), facts, plot, style);
        UnitAxis scale = new UnitAxis(SweepTime.lapTimeLabel(high), style, 0, Numbers::lapTimes);
        chart.addSubtitle(Legends.scale(ramp, scale, style));
        return chart;
    }
}
