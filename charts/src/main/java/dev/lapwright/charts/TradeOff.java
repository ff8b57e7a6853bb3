package dev.lapwright.charts;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.study.sweep.SweepResult;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.Range;
import org.jfree.data.general.DatasetUtils;
import org.jfree.data.xy.XYDataset;

/**
 * Drag against grip: top speed (km/h) over mean speed in the corners (km/h), one point for each setting, joined in order, the
 * larger the shorter its lap time.
 */
public final class TradeOff {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    /** Least length of an axis, km/h: smaller effects are drawn small. */
    private static final double LEAST_SPAN = 0.5;

    private TradeOff() {}

    /**
     * The chart of a sweep of one or two axes.
     *
     * @throws InvalidValueException if it has more axes, if no setting gave a lap, or if the track has no corners
     */
    public static JFreeChart of(SweepResult sweep, ChartStyle style) {
        if (Double.isNaN(sweep.baseline().meanCornerSpeed())) {
            throw new InvalidValueException(
                    sweep.track().name(), "it has no corners to trade top speed against", "take a track with corners");
        }
        SweepTable table = SweepTable.of(sweep);
        return table.fitsLines() ? TradeOffLines.of(table, style) : TradeOffCloud.of(table, style);
    }

    static double[] point(LapFigures figures) {
        return new double[] {Numbers.kmh(figures.meanCornerSpeed()), Numbers.kmh(figures.topSpeed())};
    }

    static double[][] series(List<SweepTable.Entry> entries) {
        double[][] series = new double[2][entries.size()];
        for (int i = 0; i < entries.size(); i++) {
            double[] point = point(entries.get(i).figures());
            series[0][i] = point[0];
            series[1][i] = point[1];
        }
        return series;
    }

    /** Labels that must be there: the fastest setting and the baseline. */
    static List<PointLabels.Label> landmarks(SweepTable table) {
        List<PointLabels.Label> labels = new ArrayList<>();
        int[] place = table.fastest();
        double[] best = point(table.at(place[0], place[1]));
        labels.add(new PointLabels.Label(best[0], best[1], SweepTime.bestText(table), true, Marks.WIDE_RING));
        double[] base = point(table.sweep().baseline());
        String text = "baseline, " + Numbers.lapTime(table.sweep().baseline().lapTime());
        labels.add(new PointLabels.Label(base[0], base[1], text, true, Marks.DIAMOND));
        return labels;
    }

    /** The plot with baseline and fastest setting marked; the points of the dataset have no renderer yet. */
    static XYPlot plot(SweepTable table, XYDataset data, ChartStyle style) {
        double[] base = point(table.sweep().baseline());
        XYDataset baseline = Marks.single("baseline", base[0], base[1]);
        int[] place = table.fastest();
        double[] best = point(table.at(place[0], place[1]));
        UnitAxis corners = new UnitAxis("Mean corner speed (km/h)", style, 0);
        UnitAxis top = new UnitAxis("Top speed (km/h)", style, 0);
        corners.setRange(range(DatasetUtils.findDomainBounds(data), DatasetUtils.findDomainBounds(baseline)));
        top.setRange(range(DatasetUtils.findRangeBounds(data), DatasetUtils.findRangeBounds(baseline)));
        XYPlot plot = new XYPlot(data, corners, top, null);
        plot.setDataset(1, baseline);
        plot.setRenderer(1, Marks.baseline(style));
        plot.setDataset(2, Marks.single("fastest", best[0], best[1]));
        plot.setRenderer(2, Marks.fastest(style, Marks.WIDE_RING));
        Sheet.plain(plot, style);
        return plot;
    }

    private static Range range(Range data, Range baseline) {
        Range both = Range.combine(data, baseline);
        Range wide = SweepTime.wide(both, LEAST_SPAN);
        return SweepTime.padded(wide.getLowerBound(), wide.getUpperBound(), 0.1);
    }

    static JFreeChart sheet(SweepTable table, XYPlot plot, String reading, ChartStyle style) {
        return Sheet.of(
                "Top speed against cornering speed: " + table.sweep().track().name(),
                Sheet.facts(SweepTime.facts(table), reading),
                plot,
                style);
    }
}
