package dev.lapwright.charts;

import org.jfree.chart.JFreeChart;

/**
 * Chart with the size it is laid out for, ready to be saved.
 *
 * @param chart to be drawn
 * @param size in pixels of the layout
 */
public record Drawing(JFreeChart chart, ImageSize size) {
    /** Pixels of a .png for each pixel of the layout: sharp on paper and on dense screens. */
    private static final int PNG_SCALE = 2;

    /** The picture in the format that the suffix of {@code fileName} asks for. */
    public byte[] forFile(String fileName) {
        return ChartImage.forFile(fileName, chart, size, PNG_SCALE);
    }
}
