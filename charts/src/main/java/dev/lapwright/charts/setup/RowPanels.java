package dev.lapwright.charts.setup;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.UnitAxis;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.CombinedRangeXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/** Panels side by side with a row for each of several things, named at the left; above the rows a heading. */
final class RowPanels {
    private static final int HEIGHT_OF_ROW = 30;
    private static final int HEIGHT_AROUND = 190;

    private final ChartStyle style;
    private final CombinedRangeXYPlot panels;

    /** @param names of the rows, from the top */
    RowPanels(List<String> names, ChartStyle style) {
        this.style = style;
        List<String> ticks = new ArrayList<>();
        ticks.add("");
        ticks.addAll(names);
        SymbolAxis axis = new SymbolAxis(null, ticks.toArray(new String[0]));
        axis.setGridBandsVisible(false);
        axis.setInverted(true);
        axis.setRange(0.5 - heading(names.size()), names.size() + 0.5);
        axis.setTickUnit(new NumberTickUnit(1), false, false);
        axis.setTickLabelFont(style.text());
        axis.setTickLabelPaint(style.palette().ink());
        axis.setTickMarksVisible(false);
        axis.setAxisLineVisible(false);
        panels = new CombinedRangeXYPlot(axis);
        panels.setGap(18);
        panels.setInsets(RectangleInsets.ZERO_INSETS);
        panels.setOutlineVisible(false);
    }

    /** Height of the heading in heights of a row: few rows are high ones. */
    static double heading(int rows) {
        return Math.min(1, rows / 6.0);
    }

    /** A picture 1200 px wide with room for so many rows and their labels. */
    static ImageSize size(int rows) {
        return new ImageSize(1200, Math.max(400, HEIGHT_AROUND + HEIGHT_OF_ROW * rows));
    }

    /** Adds a panel at the right of the others. */
    void add(UnitAxis axis, RowBars bars, int weight) {
        XYPlot panel = new XYPlot(null, axis, null, null);
        ChartLayout.style(panel, style);
        panel.setRangeGridlinesVisible(false);
        panel.addAnnotation(bars);
        panels.add(panel, weight);
    }

    CombinedRangeXYPlot plot() {
        return panels;
    }
}
