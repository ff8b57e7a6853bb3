package dev.lapwright.models;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.aero.AeroMap;
import dev.lapwright.aero.Areas;
import dev.lapwright.powertrain.Engine;
import dev.lapwright.tyre.TyreModel;
import java.util.function.DoubleUnaryOperator;

/**
 * Conformance kit of the seams at which a user brings a model: what {@link Engine}, {@link AeroMap} and {@link TyreModel} promise, asked of any
 * implementation. Throws an {@link AssertionError} that says what is broken and where.
 *
 * <p>A jump is told from a steep slope by halving the step: what a smooth or kinked function changes over a step halves with it, or
 * nearly, while a jump stays.
 */
public final class ModelContracts {
    private static final int STEPS = 4000;
    private static final int HALVINGS = 12;
    /** Over twelve halvings a slope leaves 1/4096 of a change; a square root 1/64; a jump all of it. */
    private static final double LEFT_OF_A_JUMP = 0.1;

    private ModelContracts() {}

    /**
     * An engine's promises.
     *
     * @param revLimit rad/s
     */
    public static void engine(Engine engine, double revLimit) {
        double greatest = 0;
        for (int i = 0; i <= STEPS; i++) {
            double speed = revLimit * i / STEPS;
            double torque = engine.torque(speed);
            assertThat(torque).as("torque at %s rad/s", speed).isFinite().isNotNegative();
            assertThat(engine.torque(speed))
                    .as("torque at %s rad/s, asked again", speed)
                    .isEqualTo(torque);
            greatest = Math.max(greatest, torque);
        }
        assertThat(greatest).as("greatest torque").isPositive();
        continuous("torque", engine::torque, 0, revLimit, 1e-3 * greatest);
    }

    /** A map's promises, over ride heights from a floor that touches to one raised by springs of no car. */
    public static void aeroMap(AeroMap map) {
        for (double front = -100; front <= 500; front += 25) {
            for (double rear = -100; rear <= 500; rear += 25) {
                Areas areas = map.at(front, rear);
                for (double area : new double[] {areas.drag(), areas.liftFront(), areas.liftRear()}) {
                    assertThat(area).as("area at %s and %s mm", front, rear).isFinite();
                }
                assertThat(map.at(front, rear))
                        .as("areas at %s and %s mm, asked again", front, rear)
                        .isEqualTo(areas);
            }
        }
        for (double other : new double[] {20, 60, 120}) {
            continuous("CdA over front height", h -> map.at(h, other).drag(), 0, 200, 1e-4);
            continuous("ClA front over front height", h -> map.at(h, other).liftFront(), 0, 200, 1e-4);
            continuous("ClA rear over front height", h -> map.at(h, other).liftRear(), 0, 200, 1e-4);
            continuous("CdA over rear height", h -> map.at(other, h).drag(), 0, 200, 1e-4);
            continuous("ClA front over rear height", h -> map.at(other, h).liftFront(), 0, 200, 1e-4);
            continuous("ClA rear over rear height", h -> map.at(other, h).liftRear(), 0, 200, 1e-4);
        }
        Areas touching = map.at(0, 0);
        assertThat(map.at(-20, -5)).as("areas below a floor that touches").isEqualTo(touching);
    }

    /**
     * A tyre's promises.
     *
     * @param most load to look up to, N
     */
    public static void tyre(TyreModel tyre, double most) {
        tyre("friction along", tyre::frictionX, most);
        tyre("friction across", tyre::frictionY, most);
        tyre("cornering stiffness", tyre::stiffness, most);
    }

    private static void tyre(String what, DoubleUnaryOperator value, double most) {
        double before = 0;
        for (int i = 0; i <= STEPS; i++) {
            double load = most * i / STEPS;
            double here = value.applyAsDouble(load);
            assertThat(here).as("%s at %s N", what, load).isFinite().isPositive();
            assertThat(value.applyAsDouble(load))
                    .as("%s at %s N, asked again", what, load)
                    .isEqualTo(here);
            assertThat(here * load).as("force by the %s at %s N", what, load).isGreaterThanOrEqualTo(before);
            before = here * load;
        }
        continuous(what, value, 0, most, 1e-4 * value.applyAsDouble(0.5 * most));
    }

    /** Where a value changes most over one of many steps, the change must shrink as the step is halved towards the steeper half. */
    private static void continuous(String what, DoubleUnaryOperator value, double from, double to, double small) {
        double worst = 0;
        double low = from;
        double high = to;
        for (int i = 0; i < STEPS; i++) {
            double a = from + (to - from) * i / STEPS;
            double b = from + (to - from) * (i + 1) / STEPS;
            double change = Math.abs(value.applyAsDouble(b) - value.applyAsDouble(a));
            if (change > worst) {
                worst = change;
                low = a;
                high = b;
            }
        }
        double left = worst;
        for (int k = 0; k < HALVINGS; k++) {
            double middle = 0.5 * (low + high);
            double lower = Math.abs(value.applyAsDouble(middle) - value.applyAsDouble(low));
            double upper = Math.abs(value.applyAsDouble(high) - value.applyAsDouble(middle));
            left = Math.max(lower, upper);
            if (lower > upper) {
                high = middle;
            } else {
                low = middle;
            }
        }
        assertThat(left)
                .as("jump of the %s near %s", what, low)
                .isLessThanOrEqualTo(Math.max(small, LEFT_OF_A_JUMP * worst));
    }
}
