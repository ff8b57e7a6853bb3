package dev.lapwright.charts.map;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.PlacedText;
import dev.lapwright.charts.plot.UnitAxis;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.ui.TextAnchor;

/** North arrow and scale bar at the foot of a map. */
public final class MapScaleBar {
    private static final double BAR_AT_MOST = 180;
    private static final double ARROW_HEIGHT = 24;
    private static final double ARROW_WIDTH = 12;
    private static final double TICK = 4;

    private final ChartStyle style;
    private final MapScale scale;

    public MapScaleBar(ChartStyle style, MapScale scale) {
        this.style = style;
        this.scale = scale;
    }

    /** Length of the bar, m: 1, 2 or 5 times a power of ten. */
    public static double barLength(double pixelsPerMetre) {
        double most = BAR_AT_MOST / pixelsPerMetre;
        double power = Math.pow(10, Math.floor(Math.log10(most)));
        return power * (most >= 5 * power ? 5 : most >= 2 * power ? 2 : 1);
    }

    public void draw(Graphics2D g2, Rectangle2D area) {
        double bottom = area.getMaxY() - 6;
        double x = area.getMinX() + 10;
        drawNorth(g2, x, bottom);
        drawBar(g2, x + 50, bottom, BAR_AT_MOST);
    }

    /** The scale bar alone, from a place to the right, no longer than {@code most} px. */
    public void drawBar(Graphics2D g2, double from, double bottom, double most) {
        double metres = barLength(scale.pixelsPerMetre() * BAR_AT_MOST / most);
        double to = from + metres * scale.pixelsPerMetre();
        g2.setPaint(style.palette().ink());
        g2.setStroke(ChartStyle.solid(1.5));
        g2.draw(new Line2D.Double(from, bottom, to, bottom));
        g2.draw(new Line2D.Double(from, bottom - TICK, from, bottom + TICK));
        g2.draw(new Line2D.Double(to, bottom - TICK, to, bottom + TICK));
        String text = UnitAxis.decimals(metres) > 0
                ? metres + " m"
                : NumberText.fixed(0).format(metres) + " m";
        new PlacedText(text, (from + to) / 2, bottom - TICK, TextAnchor.BOTTOM_CENTER, style.text())
                .drawOn(g2, style.palette().ink(), style.palette().background());
    }

    private void drawNorth(Graphics2D g2, double x, double bottom) {
        double middle = x + ARROW_WIDTH / 2;
        Path2D arrow = new Path2D.Double();
        arrow.moveTo(middle, bottom - ARROW_HEIGHT);
        arrow.lineTo(middle + ARROW_WIDTH / 2, bottom);
        arrow.lineTo(middle, bottom - ARROW_WIDTH / 2);
        arrow.lineTo(middle - ARROW_WIDTH / 2, bottom);
        arrow.closePath();
        g2.setPaint(style.palette().ink());
        g2.fill(arrow);
        new PlacedText("N", x + ARROW_WIDTH + 4, bottom - ARROW_HEIGHT / 2, TextAnchor.CENTER_LEFT, style.strong())
                .draw(g2, style.palette().ink());
    }
}
