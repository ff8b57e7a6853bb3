package dev.lapwright.lap;

/**
 * Limits of both axles in one {@link TurnState}: the lateral acceleration that each could hold if the other never gave up.
 *
 * @param front lateral acceleration at which the front axle has nothing left, m/s²; 0 if braking or drive takes it all
 * @param rear the same of the rear axle
 * @param rollOver lateral acceleration at which both inner wheels leave the road, m/s²
 * @param acceleration dv/dt at the lower of the two limits, m/s²
 * @param force of the wheels along the car there, N: drive, or negative brakes and engine drag
 * @param yawMoment that driven wheels add there, Nm; positive helps the turn
 * @param frontGrip lateral force that the front axle has there, N, what it spends along the car taken off
 * @param rearGrip the same of the rear axle
 * @param firstWheel of the axle that gives up first, the wheel that spends more of its grip along the car
 * @param frontDownforce N
 * @param rearDownforce N
 */
public record AxleMargins(
        double front,
        double rear,
        double rollOver,
        double acceleration,
        double force,
        double yawMoment,
        double frontGrip,
        double rearGrip,
        FirstWheel firstWheel,
        double frontDownforce,
        double rearDownforce) {

    /** The wheel of an axle that gives up first. */
    public enum FirstWheel {
        /** The one towards the inside of the turn. */
        INNER("inner"),
        /** The other one. */
        OUTER("outer"),
        /** Neither before the other: nothing pulls along the car, or on both alike. */
        BOTH("both");

        private final String label;

        FirstWheel(String label) {
            this.label = label;
        }

        /** For tables. */
        public String label() {
            return label;
        }
    }

    /** The axle that gives up first; the front one of equals. */
    public Axle first() {
        return front <= rear ? Axle.FRONT : Axle.REAR;
    }

    /** Lateral acceleration at which the first axle gives up, m/s². */
    public double limit() {
        return Math.min(front, rear);
    }

    /** Rear less front limit, m/s²: positive where the front gives up first, which is understeer at the limit. */
    public double understeer() {
        return rear - front;
    }

    /** What the other axle has left when the first gives up, m/s². */
    public double reserve() {
        return Math.abs(understeer());
    }

    /** {@link #reserve()} over {@link #limit()}; infinite where the first axle holds nothing. */
    public double reserveShare() {
        return reserve() / limit();
    }

    /** Whether the car would roll over before either axle gives up. */
    public boolean tipsFirst() {
        return rollOver < limit();
    }
}
