package dev.lapwright.charts;

import dev.lapwright.fault.Check;
import java.awt.AWTError;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.function.Supplier;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.jfree.chart.JFreeChart;
import org.jfree.svg.SVGGraphics2D;
import org.jfree.svg.SVGUtils;

/**
 * Pictures of charts as bytes; writing them to a file is the caller's business. The same chart gives the same bytes on one
 * machine; other fonts give other widths of text, and with them other bytes.
 */
public final class ChartImage {
    private static final double LEAST_SCALE = 0.5;
    private static final double MOST_SCALE = 8;
    private static final double MOST_PIXELS = 200e6;

    private ChartImage() {}

    /**
     * A chart as SVG, UTF-8, text as text.
     *
     * @throws ChartException if this machine cannot draw text
     */
    public static byte[] svg(JFreeChart chart, ImageSize size) {
        return drawn(() -> {
            SVGGraphics2D g2 = new SVGGraphics2D(size.width(), size.height());
            // Identifiers count from one in each document, where the library would take them from the clock.
            g2.setDefsKeyPrefix("d");
            g2.setFontFunction(SvgFonts.measuredBy(g2));
            g2.setGeomDoubleConverter(ChartImage::hundredths);
            chart.draw(g2, whole(size));
            return titled(g2.getSVGElement(), chart).getBytes(StandardCharsets.UTF_8);
        });
    }

    /**
     * A chart as PNG.
     *
     * @param scale pixels of the picture for one px of {@code size}, 0.5 to 8; 2 is sharp on most screens and in print
     * @throws ChartException if this machine cannot draw text
     */
    public static byte[] png(JFreeChart chart, ImageSize size, double scale) {
        Check.inRange("picture scale", scale, LEAST_SCALE, MOST_SCALE);
        double pixels = scale * size.width() * scale * size.height();
        Check.inRange("pixels in the picture", pixels, 1, MOST_PIXELS);
        return drawn(() -> {
            int width = (int) Math.round(scale * size.width());
            int height = (int) Math.round(scale * size.height());
            BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
            Graphics2D g2 = image.createGraphics();
            g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
            g2.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
            g2.scale(scale, scale);
            chart.draw(g2, whole(size));
            g2.dispose();
            return encoded(image);
        });
    }

    /** A chart in the format that the suffix of {@code fileName} asks for; {@code pngScale} as for {@link #png}. */
    public static byte[] forFile(String fileName, JFreeChart chart, ImageSize size, double pngScale) {
        return switch (ImageFormat.ofFileName(fileName)) {
            case SVG -> svg(chart, size);
            case PNG -> png(chart, size, pngScale);
        };
    }

    private static Rectangle2D whole(ImageSize size) {
        return new Rectangle2D.Double(0, 0, size.width(), size.height());
    }

    /** Adds the chart's heading as the document's title, which screen readers and browsers show. */
    private static String titled(String svg, JFreeChart chart) {
        if (chart.getTitle() == null) {
            return svg;
        }
        int end = svg.indexOf('>') + 1;
        String title = "<title>" + SVGUtils.escapeForXML(chart.getTitle().getText()) + "</title>";
        return svg.substring(0, end) + title + svg.substring(end);
    }

    private static String hundredths(double pixels) {
        double rounded = Math.rint(100 * pixels) / 100;
        return rounded == Math.rint(rounded)
                ? Long.toString((long) rounded)
                : String.format(Locale.ROOT, "%.2f", rounded);
    }

    private static byte[] encoded(BufferedImage image) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        // In memory: the library's default would put a scratch file on the disk.
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            writer.setOutput(out);
            writer.write(image);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    /** Runs a drawing and turns the failures of a Java without fonts into one clear error. */
    static byte[] drawn(Supplier<byte[]> drawing) {
        try {
            return drawing.get();
        } catch (LinkageError | InternalError | AWTError broken) {
            throw ChartException.ofFonts(broken);
        }
    }
}
