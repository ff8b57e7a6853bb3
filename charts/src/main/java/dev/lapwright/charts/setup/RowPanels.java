package dev.lapwright.charts.setup;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.PlacedText;
import dev.lapwright.charts.plot.UnitAxis;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.annotations.XYAnnotation;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.CombinedRangeXYPlot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.PlotState;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;

/**
 * Panels with a row for each of several things, named at the left; above the rows a heading. Panels stand side by side, on a
 * narrow picture beneath each other.
 */
final class RowPanels {
    private static final int HEIGHT_OF_ROW = 30;
    private static final int HEIGHT_AROUND = 190;
    /** Beneath each other: a row, and what is round the rows of a panel, px. */
    private static final int NARROW_ROW = 24;

    private static final int NARROW_AROUND = 80;
    /** A few rows leave a seventh of their height to the heading, which is a line of text. */
    private static final int NARROW_LEAST = 7 * 16;
    /** Between panels, px: the labels at the ends of two axes stand half in it each. */
    private static final double GAP = 32;

    /** Pages of less than this have panels beneath each other, px. */
    static final int NARROW_BELOW = 900;

    /** More rows make a picture that no viewer shows. */
    static final int MOST = 300;

    private final List<String> names;
    private final ChartStyle style;
    private final Panels panels;

    /** @param names of the rows, from the top */
    RowPanels(List<String> names, ChartStyle style) {
        this.names = List.copyOf(names);
        this.style = style;
        panels = new Panels(this.names, style);
        panels.setGap(GAP);
        panels.setInsets(RectangleInsets.ZERO_INSETS);
        panels.setOutlineVisible(false);
    }

    /** Height of the heading in heights of a row: few rows are high ones. */
    static double heading(int rows) {
        return Math.min(1, rows / 6.0);
    }

    /** A picture 1200 px wide with room for so many rows and their labels. */
    static ImageSize size(int rows) {
        return new ImageSize(1200, Math.max(400, HEIGHT_AROUND + HEIGHT_OF_ROW * Math.min(rows, MOST)));
    }

    /** Height of a narrow picture with so many panels beneath each other, px. */
    static int narrowHeight(int rows, int count) {
        return HEIGHT_AROUND + count * (NARROW_AROUND + Math.max(NARROW_LEAST, NARROW_ROW * Math.min(rows, MOST)));
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

    /** The panels, drawn as the place has room for. */
    private static final class Panels extends CombinedRangeXYPlot {
        private static final long serialVersionUID = 1L;
        /** What a page has round its panels, px. */
        private static final double PADDING = 40;
        /** Most of the width that names take; longer ones are cut. */
        private static final double NAMES = 0.36;
        /** Between panels beneath each other, px. */
        private static final double BETWEEN = 14;

        private final transient List<String> names;
        private final ChartStyle style;

        Panels(List<String> names, ChartStyle style) {
            super(axis(names, style));
            this.names = names;
            this.style = style;
        }

        private static SymbolAxis axis(List<String> names, ChartStyle style) {
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
            return axis;
        }

        @Override
        public void draw(Graphics2D g2, Rectangle2D area, Point2D anchor, PlotState parent, PlotRenderingInfo info) {
            List<String> fitting = names.stream()
                    .map(name -> new PlacedText(name, 0, 0, TextAnchor.TOP_LEFT, style.text())
                            .cut(g2, NAMES * area.getWidth())
                            .text())
                    .toList();
            if (area.getWidth() + PADDING >= NARROW_BELOW) {
                setRangeAxis(axis(fitting, style));
                super.draw(g2, area, anchor, parent, info);
                return;
            }
            double height = area.getHeight() / getSubplots().size();
            double top = area.getY();
            for (Object each : getSubplots()) {
                XYPlot panel = (XYPlot) each;
                XYPlot alone = new XYPlot(null, panel.getDomainAxis(), axis(fitting, style), null);
                ChartLayout.style(alone, style);
                alone.setRangeGridlinesVisible(false);
                for (Object bars : panel.getAnnotations()) {
                    alone.addAnnotation((XYAnnotation) bars);
                }
                alone.draw(
                        g2,
                        new Rectangle2D.Double(area.getX(), top, area.getWidth(), height - BETWEEN),
                        anchor,
                        parent,
                        null);
                top += height;
            }
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
}
