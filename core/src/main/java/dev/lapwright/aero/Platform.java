package dev.lapwright.aero;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.Locale;

/**
 * The sprung platform: ride heights at which downforce, any load besides, and springs balance,
 * h = h_static - (q ClA(h) + load) / (2 · ride rate) on each axle.
 *
 * <p>Source: Milliken and Milliken, Race Car Vehicle Dynamics (1995), sections 3.4 and 16.1 (wheel rate in series with the
 * tyre). Neglects bump stops; a floor that touches the road counts as at 0 mm.
 */
public final class Platform {
    private static final int MAX_ITERATIONS = 60;
    private static final double TOLERANCE_MM = 1e-10;

    private final Areas base;
    private final AeroMap map;
    private final double staticFrontMm;
    private final double staticRearMm;
    private final double frontRate;
    private final double rearRate;

    /** Where the platform stands and what it gives there. */
    public record State(double frontMm, double rearMm, Areas areas) {}

    /**
     * @param base areas at the reference heights, wings included
     * @param staticFrontMm front ride height at rest, mm
     * @param frontRate ride rate of one front wheel: wheel rate in series with the tyre's, N/m
     */
    public Platform(
            Areas base, AeroMap map, double staticFrontMm, double staticRearMm, double frontRate, double rearRate) {
        Check.finite("front ride height (mm)", staticFrontMm);
        Check.finite("rear ride height (mm)", staticRearMm);
        Check.positive("front ride rate (N/m)", frontRate);
        Check.positive("rear ride rate (N/m)", rearRate);
        this.base = base;
        this.map = map;
        this.staticFrontMm = staticFrontMm;
        this.staticRearMm = staticRearMm;
        this.frontRate = frontRate;
        this.rearRate = rearRate;
    }

    /**
     * Balance at a dynamic pressure (Pa), found by Newton's method from a neighbouring state.
     *
     * @param near a state at a nearby dynamic pressure, or null to start at rest
     * @throws InvalidValueException if the platform has no balance: springs too soft for what the map asks
     */
    public State at(double dynamicPressure, State near) {
        return at(dynamicPressure, 0, 0, near);
    }

    /**
     * Balance with more load on the springs than at rest, as under braking, drive, and on crests and in dips.
     *
     * @param dynamicPressure Pa
     * @param frontLoad N more on the springs of the front axle than at rest, downforce aside
     * @param rearLoad N, of the rear axle
     * @param near a state nearby, or null to start at rest
     * @throws InvalidValueException if the platform has no balance: springs too soft for what the map asks
     */
    public State at(double dynamicPressure, double frontLoad, double rearLoad, State near) {
        double frontRest = staticFrontMm - 1000 * frontLoad / (2 * frontRate);
        double rearRest = staticRearMm - 1000 * rearLoad / (2 * rearRate);
        double f = near == null ? staticFrontMm : near.frontMm();
        double r = near == null ? staticRearMm : near.rearMm();
        final double step = 1e-3;
        for (int i = 0; i < MAX_ITERATIONS; i++) {
            Areas here = map.at(f, r);
            Areas frontMoved = map.at(f + step, r);
            Areas rearMoved = map.at(f, r + step);
            double gf = frontMiss(dynamicPressure, f, here, frontRest);
            double gr = rearMiss(dynamicPressure, r, here, rearRest);
            double gff = (frontMiss(dynamicPressure, f + step, frontMoved, frontRest) - gf) / step;
            double gfr = (frontMiss(dynamicPressure, f, rearMoved, frontRest) - gf) / step;
            double grf = (rearMiss(dynamicPressure, r, frontMoved, rearRest) - gr) / step;
            double grr = (rearMiss(dynamicPressure, r + step, rearMoved, rearRest) - gr) / step;
            double det = gff * grr - gfr * grf;
            if (!(det > 0.02)) {
                break;
            }
            double df = (gf * grr - gr * gfr) / det;
            double dr = (gr * gff - gf * grf) / det;
            f -= df;
            r -= dr;
            if (Math.abs(df) + Math.abs(dr) < TOLERANCE_MM) {
                return new State(f, r, base.plus(map.at(f, r)));
            }
        }
        throw new InvalidValueException(
                "aero platform",
                String.format(
                        Locale.ROOT,
                        "finds no steady ride height at a dynamic pressure of %.0f Pa: downforce grows faster than the"
                                + " springs push back",
                        dynamicPressure),
                "fit stiffer springs or check the ride-height map's coefficients");
    }

    private double frontMiss(double q, double f, Areas byHeight, double rest) {
        double lift = base.liftFront() + byHeight.liftFront();
        return f - rest + 1000 * q * lift / (2 * frontRate);
    }

    private double rearMiss(double q, double r, Areas byHeight, double rest) {
        double lift = base.liftRear() + byHeight.liftRear();
        return r - rest + 1000 * q * lift / (2 * rearRate);
    }
}
