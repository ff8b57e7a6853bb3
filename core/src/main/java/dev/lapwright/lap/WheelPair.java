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
     * Puts load on the axle.
     *
     * @param load of both wheels, N
     * @param transfer from the inner to the outer one, N
     * @param grip of the surface
     * @param side force across the car at its centre of gravity, N, not negative
     * @param left whether the left wheel is the inner one
     */
    void carry(double load, double transfer, double grip, double side, boolean left) {
        pulled = false;
        innerForce = 0;
        outerForce = 0;
        brakes = 0;
        if (transfer == 0 && !data.sided) {
            evenly(0.5 * load, grip);
            return;
        }
        double inner = 0.5 * load - transfer;
        double outer = 0.5 * load + transfer;
        double muInner = grip * data.frictionY(inner);
        double muOuter = grip * data.frictionY(outer);
        double alongInner = grip * data.frictionX(inner);
        double alongOuter = grip * data.frictionX(outer);
        if (data.sided) {
            double lost = data.leanPerSide * side;
            double innerLean = -(left ? data.leftLean : data.rightLean) - lost;
            double outerLean = (left ? data.rightLean : data.leftLean) - lost;
            double innerGrip = left ? data.leftGrip : data.rightGrip;
            double outerGrip = left ? data.rightGrip : data.leftGrip;
            muInner *= innerGrip * leaning(data.lossY, innerLean - data.bestInclination);
            muOuter *= outerGrip * leaning(data.lossY, outerLean - data.bestInclination);
            alongInner *= innerGrip * leaning(data.lossX, innerLean);
            alongOuter *= outerGrip * leaning(data.lossX, outerLean);
        }
        double cInner = data.stiffnessPerLoad(inner);
        double cOuter = data.stiffnessPerLoad(outer);
        innerLateral = muInner * inner;
        outerLateral = muOuter * outer;
        lateralPeak = larger(innerLateral + outerLateral, TINY);
        dragFactor = muInner * innerLateral / cInner + muOuter * outerLateral / cOuter;
        innerStiffness = cInner * inner;
        outerStiffness = cOuter * outer;
        stiffness = innerStiffness + outerStiffness;
        toeDrag = data.toeSquared * stiffness;
        innerAlong = alongInner * inner;
        outerAlong = alongOuter * outer;
    }

    /** Share of the friction of a tyre that leans by so many degrees from where it has most. */
    private static double leaning(double loss, double degrees) {
        return 1 / (1 + loss * degrees * degrees);
    }

    /** The same where both wheels carry alike: on a straight. */
    private void evenly(double load, double grip) {
        double mu = grip * data.frictionY(load);
        double c = data.stiffnessPerLoad(load);
        innerLateral = mu * load;
        outerLateral = innerLateral;
        lateralPeak = larger(2 * innerLateral, TINY);
        dragFactor = 2 * mu * innerLateral / c;
        innerStiffness = c * load;
        outerStiffness = innerStiffness;
        stiffness = 2 * innerStiffness;
        toeDrag = data.toeSquared * stiffness;
        innerAlong = grip * data.frictionX(load) * load;
        outerAlong = innerAlong;
    }

    /**
     * Track, times the share of cornering stiffness that is left along the tyres where they are used across: the more a tyre slips
     * across, the less force a given slip along it makes. A fit to the chord of the curve sin(1.5 atan(√3 ρ)), within 0.035: Pacejka, Tire and Vehicle
     * Dynamics, chapter 4 (similarity), from memory.
     *
     * @param share of the lateral peak that is taken
     */
    double wayFelt(double share) {
        double u2 = share < 1 ? share * share : 1;
        double u4 = u2 * u2;
        double u8 = u4 * u4;
        double fall = data.slipStiffnessFall * (0.33 * u2 + 0.285 * u8 * u8);
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
                ? left(innerLateral, innerForce, innerAlong) + left(outerLateral, outerForce, outerAlong)
                : lateralPeak;
    }

    private double left(double lateral, double force, double most) {
        double spent = Math.abs(force) / larger(most, TINY);
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
        double both = across + 1 - power(lateralLeft() / lateralPeak);
        return larger(both, power(along));
    }

    /** The same under brakes, which take an even share of what both wheels have: {@code along} of the brakes' capacity. */
    double braked(double share, double along) {
        double spent = power(share) + power(along);
        return pulled ? spent + 1 - power(lateralLeft() / lateralPeak) : spent;
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
