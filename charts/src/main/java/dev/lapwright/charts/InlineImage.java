package dev.lapwright.charts;

import dev.lapwright.charts.svg.SvgGraphics;
import java.awt.Font;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.title.Title;
import org.jfree.chart.ui.RectangleInsets;

/**
 * Charts as SVG elements to stand inside an HTML page: as wide as the page lets them be, without the heading, which is the
 * page's business, and in the page's colours. Colours of the style become CSS variables, so that one drawing serves light
 * and dark: {@code --chart-paper}, {@code --chart-ink}, {@code --chart-muted}, {@code --chart-grid}, {@code --chart-band},
 * {@code --chart-0} to {@code --chart-5} for the series and {@code --chart-label-0} to {@code --chart-label-5} for text in
 * their colours where that wants more contrast than lines. The colours of a ramp stay as they are.
 */
public final class InlineImage {
    private static final RectangleInsets MARGINS = new RectangleInsets(4, 4, 4, 12);

    private InlineImage() {}

    /**
     * The drawing as text that begins with {@code <svg} and carries no reference to anything outside.
     *
     * @param size of the layout, px; text keeps its size in relation to it
     * @param style the chart was made with
     * @param name for identifiers, unlike that of any other drawing on the page: letters, digits and hyphens
     * @param title for those who cannot see the drawing
     * @throws ChartException if this machine cannot draw text
     */
    public static String svg(JFreeChart chart, ImageSize size, ChartStyle style, String name, String title) {
        byte[] svg = ChartImage.drawn(() -> {
            SvgGraphics g2 = new SvgGraphics(new ColourRoles(style.palette()).asVariables(), 1, name + "-");
            String elements = withoutHeading(chart, g2, size);
            String text = "<svg class=\"chart\" role=\"img\" aria-labelledby=\"" + name + "-title\" viewBox=\"0 0 "
                    + size.width() + " " + PagedPlot.pages(chart, size.width()) * size.height()
                    + "\" stroke-linejoin=\"round\" font-family=\""
                    + g2.families(Font.SANS_SERIF) + "\"><title id=\"" + name + "-title\">" + SvgGraphics.escaped(title)
                    + "</title>" + elements + "</svg>";
            return text.getBytes(StandardCharsets.UTF_8);
        });
        return new String(svg, StandardCharsets.UTF_8);
    }

    private static String withoutHeading(JFreeChart chart, SvgGraphics g2, ImageSize size) {
        RectangleInsets padding = chart.getPadding();
        List<Title> hidden = new ArrayList<>();
        if (chart.getTitle() != null) {
            hidden.add(chart.getTitle());
        }
        for (int i = 0; i < chart.getSubtitleCount(); i++) {
            if (chart.getSubtitle(i) instanceof TextTitle facts) {
                hidden.add(facts);
            }
        }
        try {
            hidden.forEach(title -> title.setVisible(false));
            chart.setPadding(MARGINS);
            PagedPlot.draw(chart, g2, size.width(), size.height());
            return g2.elements();
        } finally {
            hidden.forEach(title -> title.setVisible(true));
            chart.setPadding(padding);
        }
    }
}
