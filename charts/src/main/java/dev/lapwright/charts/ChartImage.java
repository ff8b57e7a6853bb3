package dev.lapwright.charts;

import dev.lapwright.charts.svg.SvgGraphics;
import dev.lapwright.fault.Check;
import java.awt.AWTError;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.function.Supplier;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.jfree.chart.JFreeChart;

/**
 * Pictures of charts as bytes; writing them to a file is the caller's business. The same chart gives the same bytes on one
 * machine; other fonts give other widths of text, and with them other bytes.
 */
public final class ChartImage {
    private static final double LEAST_SCALE = 0.5;
    private static final double MOST_SCALE = 8;
    private static final double MOST_PIXELS = 200e6;

    private static final String THEMES = "<style>@media screen and (prefers-color-scheme:dark){"
            + ColourRoles.rules(Palette.DARK) + "}@media print{" + ColourRoles.rules(Palette.PRINT) + "}</style>";

    private ChartImage() {}

    /**
     * A chart as SVG, UTF-8, text as text. It has its natural size and a view box; in a viewer that honours style sheets a chart
     * in the colours of {@link Palette#STANDARD} takes those of {@link Palette#DARK} where the reader prefers dark, and those of
     * {@link Palette#PRINT} on paper.
     *
     * @throws ChartException if this machine cannot draw text
     */
    public static byte[] svg(JFreeChart chart, ImageSize size) {
        return drawn(() -> {
            SvgGraphics g2 = new SvgGraphics(new ColourRoles(Palette.STANDARD).asClasses(), 2, "d");
            PagedPlot.draw(chart, g2, size.width(), size.height());
            int height = PagedPlot.pages(chart, size.width()) * size.height();
            String title = chart.getTitle() == null ? "" : chart.getTitle().getText();
            String document = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + size.width() + "\" height=\""
                    + height + "\" viewBox=\"0 0 " + size.width() + " " + height
                    + "\" role=\"img\" stroke-linejoin=\"round\" font-family=\"" + g2.families(Font.SANS_SERIF) + "\">"
                    + (title.isEmpty() ? "" : "<title>" + SvgGraphics.escaped(title) + "</title>")
                    + (isStandard(chart) ? THEMES : "") + g2.elements() + "</svg>";
            return document.getBytes(StandardCharsets.UTF_8);
        });
    }

    /** A chart in other colours keeps them: some of those may be the standard ones. */
    private static boolean isStandard(JFreeChart chart) {
        return Palette.STANDARD.background().equals(chart.getBackgroundPaint())
                && (chart.getTitle() == null
                        || Palette.STANDARD.ink().equals(chart.getTitle().getPaint()));
    }

    /**
     * A chart as PNG.
     *
     * @param scale pixels of the picture for one px of {@code size}, 0.5 to 8; 2 is sharp on most screens and in print
     * @throws ChartException if this machine cannot draw text
     */
    public static byte[] png(JFreeChart chart, ImageSize size, double scale) {
        Check.inRange("picture scale", scale, LEAST_SCALE, MOST_SCALE);
        int pages = PagedPlot.pages(chart, size.width());
        double pixels = scale * size.width() * scale * size.height() * pages;
        Check.inRange("pixels in the picture", pixels, 1, MOST_PIXELS);
        return drawn(() -> {
            int width = (int) Math.round(scale * size.width());
            int height = (int) Math.round(scale * size.height() * pages);
            BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
            Graphics2D g2 = image.createGraphics();
            g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
            g2.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
            g2.scale(scale, scale);
            PagedPlot.draw(chart, g2, size.width(), size.height());
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
