package dev.lapwright.charts;

import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;

/** Dots that are the larger the shorter the lap time, on lines in the style's colours and strokes. */
final class SizedPoints extends XYLineAndShapeRenderer {
    private static final long serialVersionUID = 1L;
    private static final double SMALLEST = 3;
    static final double LARGEST = 8;

    private final double[][] lapTimes;
    private final double shortest;
    private final double longest;

    /** @param lapTimes s, [series][item] as in the dataset that is drawn */
    SizedPoints(double[][] lapTimes, ChartStyle style) {
        super(true, true);
        this.lapTimes = lapTimes;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double[] series : lapTimes) {
            for (double time : series) {
                low = Math.min(low, time);
                high = Math.max(high, time);
            }
        }
        shortest = low;
        longest = high;
        setDrawSeriesLineAsPath(true);
        setDefaultLegendShape(new Ellipse2D.Double(-SMALLEST, -SMALLEST, 2 * SMALLEST, 2 * SMALLEST));
        setLegendLine(Lines.legendLine());
        for (int i = 0; i < lapTimes.length; i++) {
            setSeriesPaint(i, style.colour(i));
            setSeriesStroke(i, ChartStyle.line(i));
        }
    }

    @Override
    public Shape getItemShape(int series, int item) {
        double slow = longest > shortest ? (lapTimes[series][item] - shortest) / (longest - shortest) : 0;
        double r = LARGEST - slow * (LARGEST - SMALLEST);
        return new Ellipse2D.Double(-r, -r, 2 * r, 2 * r);
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
