package dev.lapwright.charts.ride;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.ReferenceLine;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.ride.RidePass;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * One pass over a kerb, time across: height of kerb, wheel and body above; suspension travel; contact load with the static
 * load below. Shaded where the tyre is off the road.
 */
public final class KerbPassChart {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.MAP;

    private static final double MILLI = 1000;

    private KerbPassChart() {}

    /**
     * The chart.
     *
     * @param subject what was driven over what
     * @param trace of the pass
     * @param pass its figures
     */
    public static JFreeChart of(String subject, RidePass.Trace trace, RidePass pass, ChartStyle style) {
        double[] time = scaled(trace.time(), t -> MILLI * t);
        UnitAxis across = new UnitAxis("Time (ms)", style, 1);
        across.setRange(time[0], time[time.length - 1]);
        CombinedDomainXYPlot panels = new CombinedDomainXYPlot(across);
        panels.setGap(14);
        panels.setInsets(RectangleInsets.ZERO_INSETS);
        panels.setOutlineVisible(false);
        DefaultXYDataset heights = new DefaultXYDataset();
        heights.addSeries("kerb as the tyre feels it", millimetres(time, trace.road()));
        heights.addSeries("wheel", millimetres(time, trace.wheel()));
        heights.addSeries("body", millimetres(time, trace.body()));
        add(panels, heights, "Height (mm)", 5, trace, time, style);
        double[] wheel = trace.wheel();
        double[] body = trace.body();
        double[] travel = new double[time.length];
        for (int i = 0; i < travel.length; i++) {
            travel[i] = MILLI * (wheel[i] - body[i]);
        }
        DefaultXYDataset travels = new DefaultXYDataset();
        travels.addSeries("travel", new double[][] {time, travel});
        add(panels, travels, "Travel (mm), + in bump", 3, trace, time, style);
        DefaultXYDataset loads = new DefaultXYDataset();
        loads.addSeries("load", new double[][] {time, scaled(trace.load(), n -> n / MILLI)});
        XYPlot load = add(panels, loads, "Contact load (kN)", 4, trace, time, style);
        load.addAnnotation(new ReferenceLine(pass.contact().staticLoad() / MILLI, "flat road", loads, style));
        String facts = ChartLayout.facts(
                "off the ground "
                        + NumberText.fixed(0).format(MILLI * pass.contact().timeOffGround()) + " ms (shaded)",
                "contact load varies by "
                        + NumberText.fixed(0).format(100 * pass.contact().loadVariation()) + " % (rms)",
                "peak body acceleration " + NumberText.fixed(1).format(pass.peakBodyAcceleration()) + " m/s²",
                "damper takes " + NumberText.fixed(0).format(pass.energy().damper()) + " J");
        JFreeChart chart = ChartLayout.chart("Pass over a kerb: " + subject, facts, panels, style);
        chart.addSubtitle(ChartLayout.legend(() -> panels.getSubplots().get(0).getLegendItems(), style));
        return chart;
    }

    private static XYPlot add(
            CombinedDomainXYPlot panels,
            DefaultXYDataset data,
            String label,
            int weight,
            RidePass.Trace trace,
            double[] time,
            ChartStyle style) {
        XYPlot plot =
                new XYPlot(data, null, new UnitAxis(label, style, 0), SeriesRenderers.of(data.getSeriesCount(), style));
        ChartLayout.style(plot, style);
        double[] load = trace.load();
        int from = -1;
        for (int i = 0; i < load.length; i++) {
            boolean off = load[i] == 0;
            if (off && from < 0) {
                from = i;
            } else if (!off && from >= 0) {
                shade(plot, time[from], time[i], style);
                from = -1;
            }
        }
        if (from >= 0) {
            shade(plot, time[from], time[time.length - 1], style);
        }
        panels.add(plot, weight);
        return plot;
    }

    private static void shade(XYPlot plot, double from, double to, ChartStyle style) {
        IntervalMarker band = new IntervalMarker(from, to, style.palette().band());
        band.setOutlinePaint(null);
        band.setAlpha(1);
        plot.addDomainMarker(band, Layer.BACKGROUND);
    }

    private static double[][] millimetres(double[] time, double[] metres) {
        return new double[][] {time, scaled(metres, m -> MILLI * m)};
    }

    private static double[] scaled(double[] values, DoubleUnaryOperator scale) {
        return Arrays.stream(values).map(scale).toArray();
    }
}
