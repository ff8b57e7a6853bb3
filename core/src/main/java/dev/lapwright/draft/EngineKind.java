package dev.lapwright.draft;

import dev.lapwright.air.PowerCorrection;
import dev.lapwright.powertrain.TorqueCurve;
import java.util.ArrayList;
import java.util.List;

/**
 * Kind of engine, by the shape of its torque over speed, both relative to where its power peaks. About the peak power falls by a parabola, so
 * that it does peak there; far below it the shape is a table. Common practice, no source.
 */
public enum EngineKind {
    /** Breathes by itself. */
    ASPIRATED(
            "aspirated",
            new Range(1.03, 1.2),
            1.06,
            PowerCorrection.SAE_J1349,
            3.5,
            0.75,
            new double[] {0.25, 0.4, 0.55, 0.65},
            new double[] {0.70, 0.83, 0.94, 1.0}),
    /** Is fed by a turbocharger that holds its boost. */
    TURBO(
            "turbo",
            new Range(1.04, 1.2),
            1.1,
            PowerCorrection.NONE,
            4,
            0.9,
            new double[] {0.24, 0.32, 0.4, 0.48, 0.56, 0.72, 0.8},
            new double[] {0.5, 0.75, 0.95, 1.07, 1.1, 1.1, 1.09}),
    /** Is a motor: one torque up to a speed, one power above it. */
    ELECTRIC(
            "electric",
            new Range(1.2, 3.5),
            2.5,
            PowerCorrection.NONE,
            0,
            1,
            new double[] {0.1, 0.5, 0.9},
            new double[] {1, 1, 1});

    private static final double[] ABOUT_THE_PEAK = {
        0.75, 0.83, 0.9, 0.95, 1, 1.02, 1.05, 1.1, 1.15, 1.2, 1.3, 1.4, 1.6, 1.8, 2, 2.25, 2.5, 2.75, 3, 3.25, 3.5
    };
    private static final double RADIANS_PER_RPM = Math.PI / 30;

    private final String word;
    private final Range revLimit;
    private final double usualRevLimit;
    private final PowerCorrection correction;
    private final double fall;
    private final double parabolaFrom;
    private final double[] below;
    private final double[] torqueBelow;

    EngineKind(
            String word,
            Range revLimit,
            double usualRevLimit,
            PowerCorrection correction,
            double fall,
            double parabolaFrom,
            double[] below,
            double[] torqueBelow) {
        this.word = word;
        this.revLimit = revLimit;
        this.usualRevLimit = usualRevLimit;
        this.correction = correction;
        this.fall = fall;
        this.parabolaFrom = parabolaFrom;
        this.below = below;
        this.torqueBelow = torqueBelow;
    }

    /** As it is answered. */
    public String word() {
        return word;
    }

    /** Rev limit over the speed of peak power: what there is. */
    public Range revLimit() {
        return revLimit;
    }

    /** Rev limit over the speed of peak power where nothing says more. */
    public double usualRevLimit() {
        return usualRevLimit;
    }

    /** By which its power follows the air. Sheets of both usual standards name power at 25 °C and 99 kPa of dry air. */
    public PowerCorrection correction() {
        return correction;
    }

    /**
     * The curve up to a rev limit.
     *
     * @param power peak power, W
     * @param rpm where that is
     * @param limit the last point, 1/min
     */
    TorqueCurve curve(double power, double rpm, double limit) {
        double torque = power / (rpm * RADIANS_PER_RPM);
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i < below.length; i++) {
            points.add(new double[] {Digits.rounded(below[i] * rpm, 3), torque * torqueBelow[i]});
        }
        for (double x : ABOUT_THE_PEAK) {
            if (x >= parabolaFrom && x * rpm < limit - 1) {
                points.add(new double[] {x * rpm, torque * aboutPeak(x)});
            }
        }
        points.add(new double[] {limit, torque * aboutPeak(limit / rpm)});
        return new TorqueCurve(
                points.stream().mapToDouble(p -> Digits.rounded(p[0], 6)).toArray(),
                points.stream().mapToDouble(p -> Digits.rounded(p[1], 5)).toArray());
    }

    /** Torque over that at peak power, at a speed over that of peak power. */
    private double aboutPeak(double x) {
        return (1 - fall * (x - 1) * (x - 1)) / x;
    }
}
