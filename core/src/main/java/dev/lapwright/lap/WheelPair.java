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

    /** Share of cornering stiffness that is lost at the peak of the fit: see {@link #fall}. */
    private static final double FALL = 0.45;
    /** Half the curvature of that curve at its peak, 27/64 over the peak's slip squared, for {@link #SHAPE} one. */
    private static final double ROUNDNESS = 0.5 * 27.0 / 64 / (SHAPE * SHAPE);

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

    /** Forces along the car, N. */
    double innerForce;

    double outerForce;
    private boolean pulled;
    /** What brakes put on each wheel besides, N. */
    private double brakes;

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
        brakes = 0;
        double inner = 0.5 * load - transfer;
        double muInner = innerGripY * data.frictionY(inner);
        double cInner = data.stiffnessPerLoad(inner);
        innerAlong = innerGripX * data.frictionX(inner) * inner;
        if (transfer == 0 && alike) {
            atOneAngle(inner, muInner, cInner, inner, muInner, cInner);
            outerAlong = innerAlong;
        } else {
            double outer = 0.5 * load + transfer;
            double muOuter = outerGripY * data.frictionY(outer);
            atOneAngle(inner, muInner, cInner, outer, muOuter, data.stiffnessPerLoad(outer));
            outerAlong = outerGripX * data.frictionX(outer) * outer;
        }
        innerPerAlong = 1 / larger(innerAlong, TINY);
        outerPerAlong = 1 / larger(outerAlong, TINY);
    }

    /** Share of the friction of a tyre that leans by so many degrees from where it has most. */
    private static double leaning(double loss, double degrees) {
        return 1 / (1 + loss * degrees * degrees);
    }

    /**
     * What both wheels give across together. They share one slip angle but for toe, and peak at angles of their own, 1.5√3 μ/c each: the
     * greatest sum lies between, each curve being a parabola near its peak. Written with a single division.
     */
    private void atOneAngle(double inner, double muInner, double cInner, double outer, double muOuter, double cOuter) {
        innerLateral = muInner * inner;
        outerLateral = muOuter * outer;
        innerStiffness = cInner * inner;
        outerStiffness = cOuter * outer;
        stiffness = innerStiffness + outerStiffness;
        double apart = SHAPE * (muOuter * cInner - muInner * cOuter) - 2 * data.toe * cInner * cOuter;
        if (apart != 0 && stiffness > 0) {
            double bendInner = innerStiffness * cInner * muOuter;
            double bendOuter = outerStiffness * cOuter * muInner;
            double off = (bendInner + bendOuter) * cInner * cOuter;
            double lost = ROUNDNESS * bendInner * bendOuter * apart * apart / (off * off * muInner * muOuter);
            innerLateral -= lost * bendOuter;
            outerLateral -= lost * bendInner;
        }
        lateralPeak = larger(innerLateral + outerLateral, TINY);
        perLateralPeak = 1 / lateralPeak;
        double softness = 1 / larger(stiffness, TINY);
        dragFactor = lateralPeak * lateralPeak * softness;
        toeDrag = 4 * data.toe * data.toe * innerStiffness * outerStiffness * softness;
    }

    /** Drag of cornering at a share of the lateral peak, 0 to 1, N: the force across times the slip angle that it takes. */
    double corneringDrag(double share) {
        return share * share * dragFactor / (1 - fall(share));
    }

    /**
     * Share of cornering stiffness that a tyre has lost at a share of its peak: of the chord of sin(1.5 atan(√3 ρ)), within 0.05 up to a
     * share of 0.97. The last fall, to 0.385 of the stiffness at the very peak, is left out: there slip grows and force does not. Pacejka,
     * Tire and Vehicle Dynamics, chapter 4 (similarity), from memory; the fit is ours.
     */
    private static double fall(double share) {
        return share < 1 ? FALL * share * share : FALL;
    }

    /**
     * Track, times the share of cornering stiffness that is left along the tyres where they are used across: the more a tyre slips across, the less force a
     * given slip along it makes. See {@link #fall}.
     *
     * @param share of the lateral peak that is taken
     */
    double wayFelt(double share) {
        double fall = data.slipStiffnessFall * fall(share);
        return data.track * data.slipStiffness * (1 - fall);
    }

    /** Most that the axle can give through its differential without any force across, N. */
    double driveCapacity(boolean overrun) {
        double low = smaller(innerAlong, outerAlong);
        double high = larger(innerAlong, outerAlong);
        return larger(data.differential.capacity(low, high, overrun), TINY);
    }

    /** Most that the axle can brake with without any force across, N. */
    double brakeCapacity() {
        double low = smaller(innerAlong, outerAlong);
        double high = larger(innerAlong, outerAlong);
        return larger(larger(2 * low, data.lightWheel * high), TINY);
    }

    /** Splits a force that goes through the differential, N: drive, or engine drag below zero. {@code slip} is track over radius. */
    void drive(double force, double slip, boolean overrun) {
        double friction = data.differential.friction(force, overrun);
        double difference = 0;
        if (friction != 0) {
            double asOne = Differential.turningAsOne(force, innerStiffness, outerStiffness, slip);
            difference = Differential.outerLessInner(force, asOne, friction, innerAlong, outerAlong);
        }
        split(force, difference);
    }

    /**
     * What a differential does under brakes, which pull alike on both wheels: the difference that engine drag lets it hold.
     * What the brakes take is for {@link #braked}.
     *
     * @param force of both, N, negative
     * @param through part of it that is engine drag and passes the differential, N, not negative
     */
    void brake(double force, double slip, double through) {
        double friction = data.differential.friction(through, true);
        double difference = 0;
        if (friction != 0) {
            double asOne = Differential.turningAsOne(force, innerStiffness, outerStiffness, slip);
            difference = Differential.outerLessInner(0, asOne, friction, innerAlong, outerAlong);
        }
        split(0, difference);
        brakes = 0.5 * force;
    }

    private void split(double force, double difference) {
        innerForce = 0.5 * (force - difference);
        outerForce = 0.5 * (force + difference);
        pulled = innerForce != 0 || outerForce != 0;
        brakes = 0;
    }

    /** Moment of the two forces about the car's vertical axis, Nm; positive into the turn. */
    double yawMoment() {
        return pulled ? 0.5 * data.track * (outerForce - innerForce) : 0;
    }

    /** Force across the car that both wheels have left, N. */
    double lateralLeft() {
        return pulled
                ? left(innerLateral, innerForce * innerPerAlong) + left(outerLateral, outerForce * outerPerAlong)
                : lateralPeak;
    }

    private double left(double lateral, double share) {
        double spent = Math.abs(share);
        if (!(spent < 1)) {
            return 0;
        }
        return lateral
                * (ellipse ? Math.sqrt(1 - spent * spent) : Math.pow(1 - Math.pow(spent, exponent), 1 / exponent));
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
        double both = across + 1 - power(lateralLeft() * perLateralPeak);
        return larger(both, power(along));
    }

    /** The same under brakes, which take an even share of what both wheels have: {@code along} of the brakes' capacity. */
    double braked(double share, double along) {
        double spent = power(share) + power(along);
        return pulled ? spent + 1 - power(lateralLeft() * perLateralPeak) : spent;
    }

    /** The wheel that spends more of its grip along the car. */
    AxleMargins.FirstWheel firstWheel() {
        double inner = Math.abs(innerForce + brakes) * outerAlong;
        double outer = Math.abs(outerForce + brakes) * innerAlong;
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
