package dev.lapwright.charts;

import java.awt.Color;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.title.Title;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.svg.SVGGraphics2D;
import org.jfree.svg.SVGUtils;

/**
 * Charts as SVG elements to stand inside an HTML page: as wide as the page lets them be, without the heading, which is the
 * page's business, and in the page's colours. Colours of the style become CSS variables, so that one drawing serves light
 * and dark: {@code --chart-paper}, {@code --chart-ink}, {@code --chart-muted}, {@code --chart-grid}, {@code --chart-band},
 * {@code --chart-0} to {@code --chart-5} for the series and {@code --chart-label-0} to {@code --chart-label-5} for text in
 * their colours, which wants more contrast than lines. The colours of a ramp stay as they are.
 */
public final class InlineImage {
    private static final RectangleInsets MARGINS = new RectangleInsets(4, 4, 4, 12);
    private static final Pattern ROOT = Pattern.compile("^<svg [^>]*>");
    private static final Pattern COLOUR = Pattern.compile("rgb\\((\\d+),(\\d+),(\\d+)\\)");
    private static final Pattern LABEL = Pattern.compile("(<text [^>]*fill: var\\(--chart)(-\\d)");
    private static final Pattern PATH = Pattern.compile(" d='([^']*)'");
    private static final Pattern FAMILY = Pattern.compile("font-family: ([^;]*); ");

    /** What every element says again and a viewer takes for granted. */
    private static final List<String> IMPLIED = List.of(
            "stroke-opacity:1.0;",
            "fill-opacity: 1.0; ",
            "shape-rendering:geometricPrecision;",
            "stroke-miterlimit:10;");

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
        String[] drawn = new String[1];
        ChartImage.drawn(() -> {
            drawn[0] = withoutHeading(chart, () -> drawn(chart, size, name));
            return new byte[0];
        });
        String families = families(drawn[0]);
        String root = "<svg class=\"chart\" role=\"img\" aria-labelledby=\"" + name + "-title\" viewBox=\"0 0 "
                + size.width() + " " + size.height() + "\" style='font-family:" + families + "'><title id=\"" + name
                + "-title\">" + SVGUtils.escapeForXML(title) + "</title>";
        String text = ROOT.matcher(drawn[0]).replaceFirst(Matcher.quoteReplacement(root));
        text = FAMILY.matcher(text).replaceAll("");
        for (String implied : IMPLIED) {
            text = text.replace(implied, "");
        }
        text = PATH.matcher(text)
                .replaceAll(path -> Matcher.quoteReplacement(" d='" + ThinnedPath.of(path.group(1)) + "'"));
        return inVariables(text, style.palette());
    }

    private static String drawn(JFreeChart chart, ImageSize size, String name) {
        SVGGraphics2D g2 = new SVGGraphics2D(size.width(), size.height());
        g2.setDefsKeyPrefix(name + "-");
        g2.setFontFunction(SvgFonts.measuredBy(g2));
        g2.setGeomDoubleConverter(InlineImage::tenths);
        chart.draw(g2, new Rectangle2D.Double(0, 0, size.width(), size.height()));
        return g2.getSVGElement();
    }

    /** A tenth of a px is below what a screen shows. */
    static String tenths(double pixels) {
        double rounded = Math.rint(10 * pixels) / 10;
        return rounded == Math.rint(rounded)
                ? Long.toString((long) rounded)
                : String.format(Locale.ROOT, "%.1f", rounded);
    }

    private static String withoutHeading(JFreeChart chart, Supplier<String> drawing) {
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
            return drawing.get();
        } finally {
            hidden.forEach(title -> title.setVisible(true));
            chart.setPadding(padding);
        }
    }

    /** The families that the drawing asks for; they are told once, for all of it. */
    private static String families(String svg) {
        Matcher first = FAMILY.matcher(svg);
        return first.find() ? first.group(1) : "sans-serif";
    }

    private static String inVariables(String svg, Palette palette) {
        Map<String, String> names = new HashMap<>();
        for (int i = palette.series().size() - 1; i >= 0; i--) {
            names.put(rgb(palette.series().get(i)), "--chart-" + i);
        }
        names.put(rgb(palette.band()), "--chart-band");
        names.put(rgb(palette.grid()), "--chart-grid");
        names.put(rgb(palette.muted()), "--chart-muted");
        names.put(rgb(palette.ink()), "--chart-ink");
        names.put(rgb(palette.background()), "--chart-paper");
        String text = COLOUR.matcher(svg).replaceAll(colour -> {
            String name = names.get(colour.group());
            return name == null ? colour.group() : "var(" + name + ")";
        });
        return LABEL.matcher(text).replaceAll("$1-label$2");
    }

    private static String rgb(Color colour) {
        return "rgb(" + colour.getRed() + "," + colour.getGreen() + "," + colour.getBlue() + ")";
    }
}
