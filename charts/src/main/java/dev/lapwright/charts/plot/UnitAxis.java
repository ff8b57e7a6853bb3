package dev.lapwright.charts.plot;

import dev.lapwright.charts.ChartStyle;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.text.NumberFormat;
import java.util.List;
import java.util.function.IntFunction;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.data.Range;

/**
 * An axis whose ticks stand at steps of 1, 2 or 5 with room between them, whatever the machine's language, and whose label
 * stays text when it is turned on its side (so that an SVG can be searched).
 */
public final class UnitAxis extends NumberAxis {
    private static final long serialVersionUID = 1L;
    private static final double TICK_GAP_ACROSS = 75;
    private static final double TICK_GAP_UP = 28;
    private static final double TICKS_ACROSS_AT_MOST = 14;
    private static final double TICKS_UP_AT_MOST = 10;
    private static final double LABEL_GAP = 6;
    /** How much longer than its axis a label may be, px: no more than the gap between two panels. */
    private static final double MOST_BEYOND = 8;
    /** Fewer ticks than this across may stand closer, as far as their labels let them. */
    private static final double FEW_ACROSS = 3;

    private final transient IntFunction<NumberFormat> format;
    private final double leastStep;
    private double tickGapUp = TICK_GAP_UP;
    private double tickGapAcross = TICK_GAP_ACROSS;

    /** An axis of plain numbers; {@code leastStep} 1 for whole numbers, 0 for any. */
    public UnitAxis(String label, ChartStyle style, double leastStep) {
        this(label, style, leastStep, NumberText::fixed);
    }

    /** An axis with a format of its own for each number of decimals. */
    public UnitAxis(String label, ChartStyle style, double leastStep, IntFunction<NumberFormat> format) {
        super(label);
        this.format = format;
        this.leastStep = leastStep;
        setAutoRangeIncludesZero(false);
        setLabelFont(style.axisLabel());
        setLabelPaint(style.palette().ink());
        setTickLabelFont(style.text());
        setTickLabelPaint(style.palette().ink());
        setAxisLinePaint(style.palette().muted());
        setTickMarkPaint(style.palette().muted());
        setTickMarkOutsideLength(4);
    }

    /** Lets ticks stand as close as their labels allow; for a low or narrow panel. */
    public UnitAxis withCloseTicks() {
        tickGapUp = 1.3 * getTickLabelFont().getSize();
        tickGapAcross = 4 * getTickLabelFont().getSize();
        return this;
    }

    @Override
    protected void selectAutoTickUnit(Graphics2D g2, Rectangle2D area, RectangleEdge edge) {
        boolean across = RectangleEdge.isTopOrBottom(edge);
        double pixels = across ? area.getWidth() : area.getHeight();
        double room = pixels / (across ? tickGapAcross : tickGapUp);
        if (across && room < FEW_ACROSS) {
            FontMetrics metrics = g2.getFontMetrics(getTickLabelFont());
            String longest = format.apply(0).format(Math.max(Math.abs(getLowerBound()), Math.abs(getUpperBound())));
            room = Math.max(room, Math.min(FEW_ACROSS, pixels / (metrics.stringWidth(longest) + TICK_GAP_UP)));
        }
        double most = Math.max(1, Math.min(room, across ? TICKS_ACROSS_AT_MOST : TICKS_UP_AT_MOST));
        double step = Math.max(leastStep, step(getRange().getLength() / most));
        setTickUnit(new NumberTickUnit(step, format.apply(decimals(step))), false, false);
    }

    /** The least of 1, 2, 5 times a power of ten that is not below {@code atLeast}. */
    public static double step(double atLeast) {
        double power = Math.pow(10, Math.floor(Math.log10(atLeast)));
        double lead = atLeast / power;
        return power * (lead <= 1 + 1e-9 ? 1 : lead <= 2 + 1e-9 ? 2 : lead <= 5 + 1e-9 ? 5 : 10);
    }

    /** Decimals needed to write multiples of a step. */
    public static int decimals(double step) {
        return Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9));
    }

    /** A range with a margin either side; round a single value one of a tenth of it, or one. */
    public static Range padded(double low, double high, double margin) {
        double span = high - low;
        double pad = span > 0 ? margin * span : low == 0 ? 1 : 0.1 * Math.abs(low);
        return new Range(low - pad, high + pad);
    }

    /** A range of at least this length about the same middle. */
    public static Range wide(Range range, double least) {
        double add = Math.max(0, least - range.getLength()) / 2;
        return new Range(range.getLowerBound() - add, range.getUpperBound() + add);
    }

    /** Name and unit without what stands after a comma or colon, such as a remark on signs. */
    private static String withoutRemark(String label) {
        String name = label.split("[,:]", 2)[0];
        return name.equals(label) || name.contains("(") || unit(label).isEmpty()
                ? name
                : name + " (" + unit(label) + ")";
    }

    /** The longest form of the label that fits, if need be by reaching a little beyond; none where not even the unit does. */
    private static String fitting(String label, FontMetrics metrics, double room) {
        String text = metrics.stringWidth(label) > room ? withoutRemark(label) : label;
        for (String shorter : List.of(unit(label), "")) {
            text = metrics.stringWidth(text) > room + MOST_BEYOND ? shorter : text;
        }
        return text;
    }

    /** The unit in parentheses, alone; empty where there is none. */
    private static String unit(String label) {
        int open = label.indexOf('(');
        int close = label.indexOf(')', open + 1);
        return open < 0 || close < 0 ? "" : label.substring(open + 1, close);
    }

    @Override
    protected AxisState drawLabel(
            String label,
            Graphics2D g2,
            Rectangle2D plotArea,
            Rectangle2D dataArea,
            RectangleEdge edge,
            AxisState state) {
        if (label == null || label.isEmpty()) {
            return super.drawLabel(label, g2, plotArea, dataArea, edge, state);
        }
        if (RectangleEdge.isTopOrBottom(edge)) {
            FontMetrics metrics = g2.getFontMetrics(getLabelFont());
            String across = fitting(label, metrics, plotArea.getWidth() - MOST_BEYOND);
            // In the middle of the axis, but where that would put an end of it outside.
            double half = metrics.stringWidth(across) / 2.0;
            double middle = Math.min(dataArea.getCenterX(), plotArea.getMaxX() - half);
            middle = Math.max(middle, plotArea.getMinX() + half);
            Rectangle2D centred = new Rectangle2D.Double(middle, dataArea.getY(), 0, dataArea.getHeight());
            return super.drawLabel(across, g2, plotArea, centred, edge, state);
        }
        boolean left = edge.equals(RectangleEdge.LEFT);
        FontMetrics metrics = g2.getFontMetrics(getLabelFont());
        String text = fitting(label, metrics, dataArea.getHeight());
        AffineTransform upright = g2.getTransform();
        g2.setFont(getLabelFont());
        g2.setPaint(getLabelPaint());
        double baseline = left ? -LABEL_GAP - metrics.getDescent() : LABEL_GAP + metrics.getAscent();
        g2.translate(state.getCursor() + baseline, dataArea.getCenterY());
        g2.rotate(-Math.PI / 2);
        g2.drawString(text, (float) (-metrics.stringWidth(text) / 2.0), 0f);
        g2.setTransform(upright);
        double used = LABEL_GAP + metrics.getHeight();
        state.setCursor(left ? state.getCursor() - used : state.getCursor() + used);
        return state;
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
