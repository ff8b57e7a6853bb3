package dev.lapwright.draft;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers with no more digits than a guess has. */
final class Digits {
    private Digits() {}

    /** Rounded to so many significant digits. */
    static double rounded(double value, int digits) {
        return new BigDecimal(value).round(new MathContext(digits)).doubleValue();
    }

    /** Rounded to a multiple of a step that is a whole number, or one over a whole number. */
    static double toStep(double value, double step) {
        return step >= 1 ? step * Math.round(value / step) : Math.round(value / step) / (double) Math.round(1 / step);
    }
}
