package dev.lapwright.charts.plot;

import dev.lapwright.charts.Palette;
import java.awt.Color;
import org.jfree.chart.renderer.PaintScale;

/** The palette's ramp laid over a range of values. */
public final class ColourScale implements PaintScale {
    private final double low;
    private final double high;
    private final Palette palette;
    private final boolean reversed;

    /** @param reversed whether the light end of the ramp is for low values */
    public ColourScale(double low, double high, Palette palette, boolean reversed) {
        this.low = low;
        this.high = high > low ? high : low + 1;
        this.palette = palette;
        this.reversed = reversed;
    }

    @Override
    public double getLowerBound() {
        return low;
    }

    @Override
    public double getUpperBound() {
        return high;
    }

    @Override
    public Color getPaint(double value) {
        double share = (value - low) / (high - low);
        return palette.rampAt(reversed ? 1 - share : share);
    }
}
