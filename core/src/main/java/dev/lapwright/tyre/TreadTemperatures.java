package dev.lapwright.tyre;

import dev.lapwright.fault.Check;

/**
 * Temperatures across a tread, probed at once after the car has come in, and what they say of camber and pressure.
 *
 * <p>Common practice, no source: the inner edge of a cambered tyre runs some degrees hotter than the outer one, more says
 * that it carries too much, less that the outer edge does; a middle hotter than the mean of the edges says that the tyre
 * stands on its crown, a colder one that it stands on its shoulders. Which degrees are right is for the tyre's maker.
 *
 * @param innerC inner edge, towards the middle of the car, degC
 * @param middleC degC
 * @param outerC outer edge, degC
 */
public record TreadTemperatures(double innerC, double middleC, double outerC) {
    /** Least that the inner edge should be hotter than the outer one, K. */
    public static final double LEAST_CAMBER_SPREAD = 3;
    /** Most that it should be, K. */
    public static final double MOST_CAMBER_SPREAD = 12;
    /** Most by which the middle should differ from the mean of the edges, K. */
    public static final double MOST_CROWN = 3;

    /** Which way a thing should go. */
    public enum Way {
        /** As it is. */
        KEEP,
        /** Less of it. */
        LESS,
        /** More of it. */
        MORE
    }

    public TreadTemperatures {
        Check.inRange("inner temperature (degC)", innerC, -20, 250);
        Check.inRange("middle temperature (degC)", middleC, -20, 250);
        Check.inRange("outer temperature (degC)", outerC, -20, 250);
    }

    /** Inner less outer, K. */
    public double camberSpread() {
        return innerC - outerC;
    }

    /** Middle less the mean of the edges, K. */
    public double crown() {
        return middleC - (innerC + outerC) / 2;
    }

    /** Which way negative camber should go. */
    public Way negativeCamber() {
        if (camberSpread() > MOST_CAMBER_SPREAD) {
            return Way.LESS;
        }
        return camberSpread() < LEAST_CAMBER_SPREAD ? Way.MORE : Way.KEEP;
    }

    /** Which way pressure should go. */
    public Way pressure() {
        if (crown() > MOST_CROWN) {
            return Way.LESS;
        }
        return crown() < -MOST_CROWN ? Way.MORE : Way.KEEP;
    }
}
