package dev.lapwright.charts.setup;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.EndLabelAxis;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.study.pressures.PressureResult;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.Range;
import org.jfree.data.xy.DefaultXYDataset;

/** Chart of what hot pressures off the ideal cost on a lap: a line each for the front tyres, the rear tyres and all four. */
public final class PressureCosts {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    /** Least height of the axis, s: a smaller effect is drawn small. */
    private static final double LEAST_SPAN = 0.05;

    private PressureCosts() {}

    /**
     * The chart.
     *
     * @param kpaPerUnit how many kPa the unit has that pressures are drawn in
     * @param unit its symbol
     */
    public static JFreeChart of(PressureResult result, double kpaPerUnit, String unit, ChartStyle style) {
        DefaultXYDataset data = new DefaultXYDataset();
        List<EndLabelAxis.EndLabel> ends = new ArrayList<>();
        add(data, ends, result, kpaPerUnit, "all four", PressureResult.Cost::both, style);
        add(data, ends, result, kpaPerUnit, "rear", PressureResult.Cost::rear, style);
        add(data, ends, result, kpaPerUnit, "front", PressureResult.Cost::front, style);
        double most = result.costs().stream()
                .mapToDouble(cost -> Math.max(cost.both(), Math.max(cost.front(), cost.rear())))
                .max()
                .orElseThrow();
        PressureResult.Cost farthest = result.costs().get(result.costs().size() - 1);
        UnitAxis away = new UnitAxis("Hot pressure off the ideal, too high or too low (" + unit + ")", style, 0);
        away.setRange(0, 1.02 * farthest.awayKpa() / kpaPerUnit);
        UnitAxis time = new UnitAxis("Cost on a lap (s)", style, 0);
        Range range = new Range(0, 1.06 * Math.max(LEAST_SPAN, most));
        time.setRange(range);
        XYPlot plot = new XYPlot(data, away, time, SeriesRenderers.withPoints(data, style, true));
        ChartLayout.style(plot, style);
        plot.setRangeAxis(1, new EndLabelAxis(ends, range, style));
        plot.setRangeAxisLocation(1, AxisLocation.TOP_OR_RIGHT);
        return ChartLayout.chart(
                "What tyre pressures cost: " + result.lap().track().name(),
                ChartLayout.facts(
                        result.lap().vehicle().car().name(),
                        "against " + NumberText.lapTime(result.lap().time()) + " with all hot pressures ideal",
                        "the tyre maker's limits rule"),
                plot,
                style);
    }

    private static void add(
            DefaultXYDataset data,
            List<EndLabelAxis.EndLabel> ends,
            PressureResult result,
            double kpaPerUnit,
            String name,
            ToDoubleFunction<PressureResult.Cost> cost,
            ChartStyle style) {
        double[][] series = new double[2][result.costs().size() + 1];
        for (int i = 1; i < series[0].length; i++) {
            series[0][i] = result.costs().get(i - 1).awayKpa() / kpaPerUnit;
            series[1][i] = cost.applyAsDouble(result.costs().get(i - 1));
        }
        ends.add(new EndLabelAxis.EndLabel(series[1][series[1].length - 1], name, style.colour(data.getSeriesCount())));
        data.addSeries(name, series);
    }
}
