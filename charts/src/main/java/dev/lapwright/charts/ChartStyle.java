package dev.lapwright.charts;

/** How charts look; immutable, handed to every chart. */
public final class ChartStyle {
    /** The house style. */
    public static final ChartStyle STANDARD = new ChartStyle();

    private ChartStyle() {}
}
