package dev.lapwright.charts.plot;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.PagedPlot;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.title.Title;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.Range;

/**
 * Panels over one axis that are drawn in pages beneath each other where one page would be too narrow for what it shows: each
 * page shows an equal part of the axis.
 */
public final class PagedPanels extends CombinedDomainXYPlot implements PagedPlot {
    private static final long serialVersionUID = 1L;
    /** Least width for one part, a corner and the way to the next, px: a trace of 2 px falls and rises in it. */
    private static final double LEAST_PART = 8;
    /** What the axes beside the panels take of the width, px. */
    private static final double BESIDE = 80;

    /** Panels that want more pages than this are illegible on one. */
    private static final int MOST_PAGES_IN_ONE = 2;

    /** Height of a note, px. */
    private static final double NOTE = 20;

    private final int parts;

    /**
     * @param axis what all panels are over
     * @param parts how many things a reader wants to tell apart along the axis
     */
    public PagedPanels(ValueAxis axis, int parts) {
        super(axis);
        this.parts = parts;
    }

    @Override
    public int pages(double width) {
        return (int) Math.max(1, Math.ceil(parts * LEAST_PART / Math.max(LEAST_PART, width - BESIDE)));
    }

    /** What the panels take of a height beneath a map, where they are in pages nowhere: where they are illegible, a line that says so. */
    public double heightBeneath(double width, double height) {
        return pages(width) > MOST_PAGES_IN_ONE ? NOTE : height;
    }

    /**
     * Draws the panels on one page, or where they would be illegible a note in their place.
     *
     * @param what they show
     */
    public void drawBeneath(Graphics2D g2, Rectangle2D area, Point2D anchor, String what, ChartStyle style) {
        if (pages(area.getWidth()) > MOST_PAGES_IN_ONE) {
            String note = parts + " corners: " + what + " left out at this width";
            new PlacedText(note, area.getMinX(), area.getMaxY(), TextAnchor.BOTTOM_LEFT, style.small())
                    .draw(g2, style.palette().muted());
        } else {
            draw(g2, area, anchor, null, null);
        }
    }

    /** Headings say which page it is; facts and legend stand on the first. */
    @Override
    public void drawPages(JFreeChart chart, Graphics2D g2, double width, double height) {
        int pages = pages(width);
        ValueAxis axis = getDomainAxis();
        Range whole = axis.getRange();
        Heading heading = (Heading) chart.getTitle();
        List<Title> onFirst = new ArrayList<>();
        for (Object title : chart.getSubtitles()) {
            if ((title instanceof TextTitle || title instanceof LegendTitle) && ((Title) title).isVisible()) {
                onFirst.add((Title) title);
            }
        }
        try {
            for (int page = 0; page < pages; page++) {
                boolean first = page == 0;
                onFirst.forEach(title -> title.setVisible(first));
                heading.remark(", page " + (page + 1) + " of " + pages);
                double length = whole.getLength() / pages;
                axis.setRange(
                        whole.getLowerBound() + page * length,
                        page == pages - 1 ? whole.getUpperBound() : whole.getLowerBound() + (page + 1) * length);
                chart.draw(g2, new Rectangle2D.Double(0, page * height, width, height));
            }
        } finally {
            axis.setRange(whole);
            onFirst.forEach(title -> title.setVisible(true));
            heading.remark("");
        }
    }
}
