package dev.lapwright.charts;

import org.jfree.chart.JFreeChart;

/** Pictures of charts as bytes; writing them to a file is the caller's business. */
public final class ChartImage {
    private ChartImage() {}

    /** A chart as SVG, UTF-8. */
    public static byte[] svg(JFreeChart chart, ImageSize size) {
        throw new UnsupportedOperationException();
    }

    /** A chart as PNG of {@code size} times {@code scale} pixels. */
    public static byte[] png(JFreeChart chart, ImageSize size, double scale) {
        throw new UnsupportedOperationException();
    }

    /** A chart in the format that the suffix of {@code fileName} asks for. */
    public static byte[] forFile(String fileName, JFreeChart chart, ImageSize size, double pngScale) {
        return switch (ImageFormat.ofFileName(fileName)) {
            case SVG -> svg(chart, size);
            case PNG -> png(chart, size, pngScale);
        };
    }
}
