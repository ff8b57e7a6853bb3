package dev.lapwright.draft;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.Locale;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Drag area that power and top speed leave: at top speed drive force F = ½ ρ v² CdA + (f₀ + f₁ v)(m g + ½ ρ v² ClA), by the forces of the
 * lap on the flat on a standard day. Where the rev limiter stops the car, that of the cars of its class that get there.
 */
final class DraftDrag {
    /** Drive force left at a top speed that the limiter sets, over the drag. */
    private static final double LEFT_AT_LIMITER = 1.02;

    private static final double MOST_SPEED = 130;
    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    private final CarAnswers answers;
    private final DraftGearing gearing;
    private final double weight;
    private final double liftArea;
    private final double rolling;
    private final double rollingPerSpeed;
    private final double density = Conditions.STANDARD.air().density();
    final double area;
    /** Standard deviation of the area where the class gives it, m²; 0 where power and top speed do. */
    final double classDeviation;

    DraftDrag(
            CarAnswers answers,
            DraftGearing gearing,
            double massKg,
            double liftArea,
            double rolling,
            double rollingPerSpeed) {
        this.answers = answers;
        this.gearing = gearing;
        weight = massKg * StandardAtmosphere.GRAVITY;
        this.liftArea = liftArea;
        this.rolling = rolling;
        this.rollingPerSpeed = rollingPerSpeed;
        double v = answers.topSpeed().metresPerSecond();
        double reached = area(gearing.force(v), v);
        Range usual = answers.downforce().dragArea();
        if (answers.topSpeed().atLimiter()) {
            double most = area(gearing.force(v) / LEFT_AT_LIMITER, v);
            if (most < usual.low()) {
                throw contradiction(reached, v);
            }
            // Of the cars of the class, those that reach the limiter: a normal distribution cut off above (Johnson,
            // Kotz and
            // Balakrishnan, Continuous Univariate Distributions 1, 13.10; from memory).
            double at = (most - usual.middle()) / usual.deviation();
            double hazard = NORMAL.density(at) / NORMAL.cumulativeProbability(at);
            area = Digits.rounded(usual.middle() - usual.deviation() * hazard, 4);
            classDeviation = usual.deviation() * Math.sqrt(1 - at * hazard - hazard * hazard);
        } else {
            if (!usual.holds(reached)) {
                throw contradiction(reached, v);
            }
            area = reached;
            classDeviation = 0;
        }
    }

    /** Drag area at which a drive force holds a speed. */
    double area(double force, double v) {
        double q = 0.5 * density * v * v;
        return (force - (rolling + rollingPerSpeed * v) * (weight + q * liftArea)) / q;
    }

    /** Change of the drag area, relative, for a relative change of power, or of the top speed: 1 and some −3. */
    double[] slopes() {
        double v = answers.topSpeed().metresPerSecond();
        double force = gearing.force(v);
        double step = 1e-4;
        double byPower = (area(force * (1 + step), v) - area(force * (1 - step), v)) / (2 * step * area);
        // Another top speed with the same power: the force falls as the speed grows.
        double bySpeed = (area(force / (1 + step), v * (1 + step)) - area(force / (1 - step), v * (1 - step)))
                / (2 * step * area);
        return new double[] {byPower, bySpeed};
    }

    private InvalidValueException contradiction(double reached, double v) {
        Range usual = answers.downforce().dragArea();
        boolean tooSlow = reached > usual.high();
        double power = gearing.wheelPower();
        double slow = speed(power, usual.high());
        double fast = speed(power, usual.low());
        double perWheelPower = answers.power().watts() / power;
        return new InvalidValueException(
                "power and top speed",
                watts(answers.power().watts()) + " and " + DraftGearing.kmh(v) + " leave "
                        + (reached > 0 ? "a drag area of " + area(reached) + " m²" : "nothing to overcome the air")
                        + ", and cars of downforce '" + answers.downforce().word() + "' have " + area(usual.low())
                        + " to " + area(usual.high()) + " m²",
                "with this power say " + DraftGearing.kmh(slow) + " to " + DraftGearing.kmh(fast)
                        + ", with this speed "
                        + watts(perWheelPower * wheelPower(v, usual.low())) + " to "
                        + watts(perWheelPower * wheelPower(v, usual.high())) + ", or another downforce"
                        + (tooSlow && !answers.topSpeed().atLimiter()
                                ? "; or that the rev limiter stops it, if that is so"
                                : "")
                        + gearsMayBeMeant(v));
    }

    /** Power that reaches the top speed only in part points at the gears. */
    private String gearsMayBeMeant(double v) {
        double share = gearing.force(v) * v / gearing.wheelPower();
        return share > 0.9
                ? ""
                : "; in these gears only " + Check.text(Math.rint(100 * share))
                        + " % of the power is there at that speed: see to the gears too";
    }

    private double wheelPower(double v, double dragArea) {
        double q = 0.5 * density * v * v;
        return v * (q * dragArea + (rolling + rollingPerSpeed * v) * (weight + q * liftArea));
    }

    private double speed(double power, double dragArea) {
        double low = 1;
        double high = MOST_SPEED;
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (low + high);
            if (wheelPower(middle, dragArea) < power) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    private static String watts(double power) {
        return Check.text(Digits.rounded(power / 1000, 3)) + " kW";
    }

    private static String area(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
