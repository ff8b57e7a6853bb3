package dev.lapwright.charts;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.JFreeChart;

/** Plot that is drawn in pages beneath each other where one page would be too narrow for what it shows. */
public interface PagedPlot {
    /** How many pages are needed where it is drawn so wide, px. */
    int pages(double width);

    /** Draws the chart that it belongs to in its pages, each {@code width} by {@code height}, px. */
    void drawPages(JFreeChart chart, Graphics2D g2, double width, double height);

    /** How many pages a chart needs where it is drawn so wide, px; 1 for charts that know no pages. */
    static int pages(JFreeChart chart, double width) {
        return chart.getPlot() instanceof PagedPlot paged ? paged.pages(width) : 1;
    }

    /** Draws a chart in its pages, each {@code width} by {@code height}, px. */
    static void draw(JFreeChart chart, Graphics2D g2, double width, double height) {
        if (pages(chart, width) > 1) {
            ((PagedPlot) chart.getPlot()).drawPages(chart, g2, width, height);
        } else {
            chart.draw(g2, new Rectangle2D.Double(0, 0, width, height));
        }
    }
}
