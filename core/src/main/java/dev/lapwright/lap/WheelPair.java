package dev.lapwright.lap;

import dev.lapwright.powertrain.Differential;

/**
 * Two wheels of one axle under load: what each can give, how drive and brakes are split between them, and how much of the axle is
 * used. Each wheel has a friction ellipse of its own: (F_x / F_x,peak)^p + (F_y / F_y,peak)^p is 1 at its limit. The axle is at its
 * limit where both wheels give across all that their forces along the car leave them, or where the force along is all that
 * its wheels, its differential or its brakes allow. Mutable scratch of one solver; allocates nothing.
 */
final class WheelPair {
    /** Least capacity used as a divisor, N: keeps an unloaded axle's utilisation huge but finite. */
    private static final double TINY = 1e-6;
    /** Shares of grip that are the same but for rounding. */
    private static final double ALIKE = 1e-9;
    /** Slip angle of a tyre's peak over that at which its first stiffness alone would give it: of the curve sin(1.5 atan(√3 ρ)). */
    private static final double SHAPE = 1.5 * Math.sqrt(3);

    /** See {@link #fall}. */
    private static final double FALL = 0.325;

    private static final double LAST_FALL = 0.265;
    /** Last step of the search for two wheels that turn as one, over what both can give: the error left is far smaller. */
    private static final double AS_ONE = 1e-5;

    private static final int MOST_STEPS = 60;
    /** Inverse of half the curvature of that curve at its peak, over the peak's slip squared. */
    private static final double ROUND = 128.0 / 27;

    final AxleData data;
    private final boolean ellipse;
    private final double exponent;

    /** Sum of both wheels' peaks across the car, N. */
    double lateralPeak;
    /** Drag of cornering at the peak, N. */
    double dragFactor;
    /** Drag of toe, N. */
    double toeDrag;
    /** Cornering stiffness of both wheels, N; slip stiffness over {@link AxleData#slipStiffness}. */
    double stiffness;

    // Grip of the surface times what lean and pressure leave of it, across and along; whether both wheels have the
    // same.
    private double innerGripY;
    private double outerGripY;
    private double innerGripX;
    private double outerGripX;
    private boolean alike;

    /** Inverse of {@link #lateralPeak}, and of what each wheel can give along, 1/N. */
    double perLateralPeak;

    private double innerPerAlong;
    private double outerPerAlong;

    private double innerLateral;
    private double outerLateral;
    private double innerAlong;
    private double outerAlong;
    private double innerStiffness;
    private double outerStiffness;

    // Slip angles of the wheels' peaks and of toe, each times both stiffnesses per load.
    private double innerAngle;
    private double outerAngle;
    private double bothToe;

    /** Forces along the car, N. */
    double innerForce;

    double outerForce;
    private boolean pulled;
    /** Difference of forces, outer less inner, that the differential makes, N. */
    private double byDifferential;

    /** Where the last search for two wheels that turn as one ended, N. */
    private double guess;

    /** How fast {@link #slipApart} falls with the difference of forces. */
    private double slipSlope;

    WheelPair(AxleData data, double exponent) {
        this.data = data;
        this.exponent = exponent;
        ellipse = exponent == 2;
    }

    /**
     * Moves to a place: what lean and pressures leave each wheel of the surface's grip.
     *
     * @param grip of the surface
     * @param side force across the car at its centre of gravity, N, not negative
     * @param left whether the left wheel is the inner one
     */
    void stand(double grip, double side, boolean left) {
        innerGripY = grip;
        outerGripY = grip;
        innerGripX = grip;
        outerGripX = grip;
        if (data.sided) {
            double lost = data.leanPerSide * side;
            double innerLean = -(left ? data.leftLean : data.rightLean) - lost;
            double outerLean = (left ? data.rightLean : data.leftLean) - lost;
            double inner = grip * (left ? data.leftGrip : data.rightGrip);
            double outer = grip * (left ? data.rightGrip : data.leftGrip);
            innerGripY = inner * leaning(data.lossY, innerLean - data.bestInclination);
            outerGripY = outer * leaning(data.lossY, outerLean - data.bestInclination);
            innerGripX = inner * leaning(data.lossX, innerLean);
            outerGripX = outer * leaning(data.lossX, outerLean);
        }
        alike = innerGripY == outerGripY && innerGripX == outerGripX;
    }

    /**
     * Puts load on the axle where it {@link #stand}s.
     *
     * @param load of both wheels, N
     * @param transfer from the inner to the outer one, N
     */
    void carry(double load, double transfer) {
        pulled = false;
        innerForce = 0;
        outerForce = 0;
        double inner = 0.5 * load - transfer;
        double muInner = innerGripY * data.frictionY(inner);
        double cInner = data.stiffnessPerLoad(inner);
        innerAlong = innerGripX * data.frictionX(inner) * inner;
        if (transfer == 0 && alike) {
            peaks(inner, muInner, cInner, inner, muInner, cInner);
            outerAlong = innerAlong;
        } else {
            double outer = 0.5 * load + transfer;
            double muOuter = outerGripY * data.frictionY(outer);
            peaks(inner, muInner, cInner, outer, muOuter, data.stiffnessPerLoad(outer));
            outerAlong = outerGripX * data.frictionX(outer) * outer;
        }
    }

    /** Most that the outer or the inner wheel gives along, N. */
    double peakAlong(boolean outer) {
        return outer ? outerAlong : innerAlong;
    }

    /** Most that it gives across, N. */
    double peakAcross(boolean outer) {
        return outer ? outerLateral : innerLateral;
    }

    /** Most that both wheels give along, N. */
    double peakAlong() {
        return innerAlong + outerAlong;
    }

    /** Most that each gives across, N, added up. */
    double peakAcross() {
        return innerLateral + outerLateral;
    }

    /** Its cornering stiffness, N/rad. */
    double stiffness(boolean outer) {
        return outer ? outerStiffness : innerStiffness;
    }

    /** Share of the friction of a tyre that leans by so many degrees from where it has most. */
    private static double leaning(double loss, double degrees) {
        return 1 / (1 + loss * degrees * degrees);
    }

    private void peaks(double inner, double muInner, double cInner, double outer, double muOuter, double cOuter) {
        innerLateral = muInner * inner;
        outerLateral = muOuter * outer;
        innerStiffness = cInner * inner;
        outerStiffness = cOuter * outer;
        stiffness = innerStiffness + outerStiffness;
        innerAngle = SHAPE * muInner * cOuter;
        outerAngle = SHAPE * muOuter * cInner;
        bothToe = 2 * data.toe * cInner * cOuter;
        lateralPeak = larger(atOneAngle(1, 1), TINY);
        // One division for two: they are what the kernel waits for.
        double stiff = larger(stiffness, TINY);
        double both = 1 / (lateralPeak * stiff);
        perLateralPeak = stiff * both;
        double softness = lateralPeak * both;
        dragFactor = lateralPeak * lateralPeak * softness;
        toeDrag = 4 * data.toe * data.toe * innerStiffness * outerStiffness * softness;
    }

    /**
     * What both wheels give across together, N, where forces along leave each a share of its own peak. They share one slip angle but for
     * toe, and peak at angles of their own: share · 1.5√3 μ/c each. The greatest sum lies between, each curve being a parabola near its
     * peak; it is never below what one of them gives alone. Angles are written times both stiffnesses per load, so that nothing is
     * divided by these.
     */
    private double atOneAngle(double innerShare, double outerShare) {
        double inner = innerLateral * innerShare;
        double outer = outerLateral * outerShare;
        double sum = inner + outer;
        double apart = outerAngle * outerShare - innerAngle * innerShare - bothToe;
        if (apart == 0) {
            return sum;
        }
        double i = innerAngle * innerShare;
        double o = outerAngle * outerShare;
        double bend = ROUND
                * innerShare
                * outerShare
                * (i * i * innerShare * outerLateral + o * o * outerShare * innerLateral);
        double pull = apart * apart * sum;
        // To second order pull / bend of what both lose where one gives up; all of that where it is large.
        double lost = apart * apart * (bend + pull) / (bend * bend + bend * pull + pull * pull + Double.MIN_NORMAL);
        return sum - lost * inner * outer;
    }

    /** Drag of cornering at a share of the lateral peak, 0 to 1, N: the force across times the slip angle that it takes. */
    double corneringDrag(double share) {
        return share * share * dragFactor / (1 - fall(share * share));
    }

    /**
     * Share of stiffness that a tyre has lost where it spends a share of its peak, given squared: of the chord of sin(1.5 atan(√3 ρ)), within
     * 0.025. Pacejka, Tire and Vehicle Dynamics, chapter 4 (similarity), from memory; the fit is ours.
     */
    private static double fall(double spent2) {
        double z = spent2 < 1 ? spent2 : 1;
        double z3 = z * z * z;
        return FALL * z + LAST_FALL * z3 * z3;
    }

    /** Most that the axle can give through its differential without any force across, N. */
    double driveCapacity(boolean overrun) {
        double low = smaller(innerAlong, outerAlong);
        double high = larger(innerAlong, outerAlong);
        return larger(data.differential.capacity(low, high, overrun), TINY);
    }

    /**
     * Most that the axle can brake with without any force across, N: brakes pull alike on both wheels, and the differential moves a
     * part from the weaker to the stronger.
     *
     * @param through engine drag that passes the differential, N, not negative
     */
    double brakeCapacity(double through) {
        double low = smaller(innerAlong, outerAlong);
        double high = larger(innerAlong, outerAlong);
        return larger(smaller(2 * low + slide() + data.differential.friction(through, true), low + high), TINY);
    }

    /** What the stronger wheel may brake with while the weaker one slides at its peak, over that, by the policy for a light wheel, N. */
    private double slide() {
        double apart = outerAlong - innerAlong;
        return data.lightWheel * apart * apart / larger(innerAlong + outerAlong, TINY);
    }

    /** See {@link FourWheels#brakeSplit}. */
    double brakeSplit() {
        double slide = slide();
        double split = slide / larger(2 * smaller(innerAlong, outerAlong) + slide, TINY);
        return outerAlong < innerAlong ? -split : split;
    }

    /**
     * Splits a force that goes through the differential.
     *
     * @param force of both wheels, N: drive, or engine drag below zero
     * @param curvature of the path, 1/m, positive towards the inside
     * @param lateralShare of the lateral peak that is taken
     */
    void drive(double force, double curvature, double lateralShare, boolean overrun) {
        double friction = data.differential.friction(force, overrun);
        if (force == 0 && friction == 0) {
            // An axle without half shafts.
            split(0, 0);
            return;
        }
        weigh();
        split(force, held(force, friction, curvature, lateralShare));
    }

    /**
     * Splits the force of brakes, which pull alike on both wheels, and of engine drag, which passes the differential. A wheel at its peak
     * slides and gives no more, while the other goes on.
     *
     * @param force of both wheels, N, negative
     * @param through part of it that is engine drag and passes the differential, N, not negative
     */
    void brake(double force, double curvature, double lateralShare, double through) {
        weigh();
        double difference = held(force, data.differential.friction(through, true), curvature, lateralShare);
        split(force, Differential.withinPeaks(force, difference, innerAlong, outerAlong));
        byDifferential = difference;
    }

    /**
     * Difference of forces, outer less inner, of two wheels that turn as one as far as each can give its part and friction holds them, N.
     * More force takes more slip, and the more so the nearer a tyre is to its peak: so there is one difference at which the
     * inner wheel slips more by just what its way is shorter. Newton's method, within the bounds.
     */
    private double held(double force, double friction, double curvature, double lateralShare) {
        double way = curvature * data.track * data.slipStiffness;
        if (friction == 0 || (way == 0 && alike && innerStiffness == outerStiffness)) {
            return 0;
        }
        double across = lateralShare * lateralShare;
        double low = larger(-friction, larger(force - 2 * innerAlong, -2 * outerAlong - force));
        double high = smaller(friction, smaller(force + 2 * innerAlong, 2 * outerAlong - force));
        if (low < high) {
            guess = asOne(force, guess, low, high, way, across);
        }
        return Differential.outerLessInner(force, guess, friction, innerAlong, outerAlong);
    }

    /** The root of {@link #slipApart}, or the far side of a bound beyond which it lies: a guess for the next search too. */
    private double asOne(double force, double guess, double least, double most, double way, double across) {
        double tolerance = AS_ONE * (innerAlong + outerAlong);
        double low = least;
        double high = most;
        double next = guess;
        for (int i = 0; i < MOST_STEPS; i++) {
            // A bound is looked at before anything is halved.
            double difference = next;
            if (!(next > low)) {
                difference = low == least ? least : 0.5 * (low + high);
            } else if (!(next < high)) {
                difference = high == most ? most : 0.5 * (low + high);
            }
            double over = slipApart(force, difference, across) - way;
            next = difference + over / slipSlope;
            if (Math.abs(next - difference) < tolerance) {
                return next;
            }
            if (over > 0) {
                if (difference == most) {
                    return Double.POSITIVE_INFINITY;
                }
                low = difference;
            } else {
                if (difference == least) {
                    return Double.NEGATIVE_INFINITY;
                }
                high = difference;
            }
        }
        return next;
    }

    /** By how much the inner wheel slips more than the outer one, times {@link AxleData#slipStiffness}; leaves {@link #slipSlope}. */
    private double slipApart(double force, double difference, double across) {
        double inner = 0.5 * (force - difference);
        double outer = 0.5 * (force + difference);
        double innerSpent = inner * innerPerAlong;
        double outerSpent = outer * outerPerAlong;
        double innerSquare = innerSpent * innerSpent;
        double outerSquare = outerSpent * outerSpent;
        double innerStiff = larger(innerStiffness * chord(across + innerSquare), TINY);
        double outerStiff = larger(outerStiffness * chord(across + outerSquare), TINY);
        double both = 1 / (innerStiff * outerStiff);
        double innerSoft = outerStiff * both;
        double outerSoft = innerStiff * both;
        double innerRise = 2 * innerSquare * fallRate(across + innerSquare) * innerStiffness * innerSoft;
        double outerRise = 2 * outerSquare * fallRate(across + outerSquare) * outerStiffness * outerSoft;
        slipSlope = 0.5 * (innerSoft * (1 + innerRise) + outerSoft * (1 + outerRise));
        return inner * innerSoft - outer * outerSoft;
    }

    /** Share of the slip stiffness at rest that is left where a tyre spends so much, squared. */
    private double chord(double spent2) {
        return 1 - data.slipStiffnessFall * fall(spent2);
    }

    /** How fast {@link #chord} falls with that square. */
    private double fallRate(double spent2) {
        double z2 = spent2 * spent2;
        return spent2 < 1 ? data.slipStiffnessFall * (FALL + 6 * LAST_FALL * z2 * z2 * spent2) : 0;
    }

    private void split(double force, double difference) {
        innerForce = 0.5 * (force - difference);
        outerForce = 0.5 * (force + difference);
        pulled = innerForce != 0 || outerForce != 0;
        byDifferential = difference;
    }

    /** Finds {@link #innerPerAlong} and {@link #outerPerAlong}, which an axle without force along does without. */
    private void weigh() {
        double inner = larger(innerAlong, TINY);
        double outer = larger(outerAlong, TINY);
        double both = 1 / (inner * outer);
        innerPerAlong = outer * both;
        outerPerAlong = inner * both;
    }

    /**
     * Moment of the two forces about the car's vertical axis, Nm; positive into the turn. That of brakes where one wheel slides and the
     * other does not is left out: it would make harder braking easier on the axle, and what a car can do would have gaps.
     */
    double yawMoment() {
        return pulled ? 0.5 * data.track * byDifferential : 0;
    }

    /** Force across the car that both wheels have left, N. */
    double lateralLeft() {
        return pulled ? atOneAngle(left(innerForce * innerPerAlong), left(outerForce * outerPerAlong)) : lateralPeak;
    }

    /** Share of its peak across that a share of its peak along leaves a wheel. */
    private double left(double share) {
        double spent = Math.abs(share);
        if (!(spent < 1)) {
            return 0;
        }
        return ellipse ? Math.sqrt(1 - spent * spent) : Math.pow(1 - Math.pow(spent, exponent), 1 / exponent);
    }

    /**
     * Utilisation to the power p: 1 where the axle has nothing left.
     *
     * @param share of the lateral peak that is taken, not negative
     * @param along share of the capacity along the car that is taken, not negative
     */
    double utilisation(double share, double along) {
        double across = power(share);
        if (!pulled) {
            return across;
        }
        if (share == 0) {
            return power(along);
        }
        double both = across + 1 - power(lateralLeft() * perLateralPeak);
        return larger(both, power(along));
    }

    /**
     * Whether less than its limit is taken of an axle at the worst split of a drive force: the weaker wheel takes the more, and the other
     * gives nothing across. For friction ellipses.
     *
     * @param force of both wheels, N, not negative
     * @param held greatest difference of forces between them, N
     * @param side force across, N, not negative
     */
    boolean plainlyLeft(double force, double held, double side) {
        double weaker = smaller(innerAlong, outerAlong);
        double most = 0.5 * (force + held);
        // One of two wheels gives at least half of what both give.
        double across = 2 * side * perLateralPeak;
        return most * most < weaker * weaker * (1 - across * across);
    }

    /** The wheel that spends more of its grip along the car. */
    AxleMargins.FirstWheel firstWheel() {
        double inner = Math.abs(innerForce) * outerAlong;
        double outer = Math.abs(outerForce) * innerAlong;
        if (Math.abs(inner - outer) <= ALIKE * (inner + outer)) {
            return AxleMargins.FirstWheel.BOTH;
        }
        return inner > outer ? AxleMargins.FirstWheel.INNER : AxleMargins.FirstWheel.OUTER;
    }

    private double power(double x) {
        return ellipse ? x * x : Math.pow(x, exponent);
    }

    private static double larger(double a, double b) {
        return a > b ? a : b;
    }

    private static double smaller(double a, double b) {
        return a < b ? a : b;
    }
}
