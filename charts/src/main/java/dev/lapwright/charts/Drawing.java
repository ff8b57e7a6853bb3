package dev.lapwright.charts;

import java.util.function.IntFunction;
import org.jfree.chart.JFreeChart;

/**
 * Chart with the size it is laid out for, ready to be saved.
 *
 * @param chart to be drawn
 * @param size in pixels of the layout
 * @param narrow the same subject on a narrow page, at its width; null where the chart serves there too
 * @param narrowBelow pages of less than this have the narrow one, px
 */
public record Drawing(JFreeChart chart, ImageSize size, IntFunction<Drawing> narrow, int narrowBelow) {
    /** Pixels of a .png for each pixel of the layout: sharp on paper and on dense screens. */
    private static final int PNG_SCALE = 2;

    /** Least height of a narrow picture over its width: panels above each other want it. */
    private static final double UPRIGHT = 1.4;

    /** A chart that serves on narrow pages, too. */
    public Drawing(JFreeChart chart, ImageSize size) {
        this(chart, size, null, 0);
    }

    /** The same with a height of its own on pages less than {@code narrowBelow} wide, px. */
    public Drawing withNarrowHeight(int height, int below) {
        return new Drawing(chart, size, width -> new Drawing(chart, new ImageSize(width, height)), below);
    }

    /**
     * The same laid out for a page of another width, so that it need not be made smaller there: letters keep their size. A narrow
     * picture is upright.
     *
     * @param width px, 320 to 10000
     */
    public Drawing forWidth(int width) {
        if (width < narrowBelow) {
            return narrow.apply(width);
        }
        double alike = (double) size.height() * width / size.width();
        double height = Math.max(alike, Math.min(size.height(), UPRIGHT * width));
        return new Drawing(chart, new ImageSize(width, (int) Math.rint(height)), narrow, narrowBelow);
    }

    /** The picture in the format that the suffix of {@code fileName} asks for. */
    public byte[] forFile(String fileName) {
        return ChartImage.forFile(fileName, chart, size, PNG_SCALE);
    }
}
