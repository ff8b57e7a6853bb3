package dev.lapwright.ride;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * Quarter-car model of a wheel with its share of the body: two masses, a spring and a damper between them, a tyre beneath.
 *
 * <p>Neglects pitch and roll, friction, bump stops, and any change of the motion ratio with travel. The anti-roll bar is
 * left out too: both wheels of the axle are taken to do the same.
 *
 * <p>Source: the quarter car of Barton and Fieldhouse, Automotive Chassis Engineering (2018), chapter 4, and of Gillespie,
 * Fundamentals of Vehicle Dynamics (1992), chapter 5.
 *
 * @param sprungMass share of the body on the wheel, kg
 * @param unsprungMass what moves with the wheel, kg
 * @param wheelRate rate of the spring at the wheel, N/m
 * @param tyreRate vertical rate of the tyre, N/m
 * @param tyreDamping vertical damping of the tyre, N s/m
 * @param damper as measured at the damper
 * @param motionRatio damper travel over wheel travel
 * @param downforce on the body over this wheel, N; negative is lift
 */
public record QuarterCar(
        double sprungMass,
        double unsprungMass,
        double wheelRate,
        double tyreRate,
        double tyreDamping,
        Damper damper,
        double motionRatio,
        double downforce) {
    public QuarterCar {
        Check.positive("sprung mass (kg)", sprungMass);
        Check.positive("unsprung mass (kg)", unsprungMass);
        Check.positive("wheel rate (N/m)", wheelRate);
        Check.positive("tyre rate (N/m)", tyreRate);
        Check.inRange("tyre damping (N s/m)", tyreDamping, 0, 1e7);
        Check.positive("motion ratio", motionRatio);
        Check.finite("downforce (N)", downforce);
        double load = (sprungMass + unsprungMass) * StandardAtmosphere.GRAVITY + downforce;
        if (!(load > 0)) {
            throw new InvalidValueException(
                    "downforce (N)",
                    "lift of " + Check.text(-downforce) + " N takes the wheel off the road",
                    "drive slower, or with less lift");
        }
    }

    /** The same with other fast damper rates, N s/m at the damper. */
    public QuarterCar withFast(double bump, double rebound) {
        return new QuarterCar(
                sprungMass,
                unsprungMass,
                wheelRate,
                tyreRate,
                tyreDamping,
                damper.withFast(bump, rebound),
                motionRatio,
                downforce);
    }

    /** Load on a flat road, N. */
    public double staticLoad() {
        return (sprungMass + unsprungMass) * StandardAtmosphere.GRAVITY + downforce;
    }

    /** Wheel rate in series with the tyre, N/m. */
    public double rideRate() {
        return wheelRate * tyreRate / (wheelRate + tyreRate);
    }

    /** Frequency (Hz) of the body on spring and tyre in series, the wheel's mass left out: what the trade calls ride frequency. */
    public double rideFrequency() {
        return Math.sqrt(rideRate() / sprungMass) / (2 * Math.PI);
    }

    /** Frequency (Hz) of the wheel between spring and tyre, the body held still: wheel hop. */
    public double hopFrequency() {
        return Math.sqrt((wheelRate + tyreRate) / unsprungMass) / (2 * Math.PI);
    }

    /** Both masses together, without damping. */
    public Modes modes() {
        return Modes.of(this);
    }

    /** Force of the damper at the wheel (N) at a speed of the wheel towards the body, m/s. */
    public double damperForce(double wheelSpeed) {
        return motionRatio * damper.force(motionRatio * wheelSpeed);
    }

    /**
     * Damping ratio of the body on its spring, wheel held still: c/(2 √(k m)) with damper and spring at the wheel. Source:
     * Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 5.
     *
     * @param rate of the damper, N s/m at the damper
     */
    public double bodyDampingRatio(double rate) {
        return atWheel(rate) / (2 * Math.sqrt(wheelRate * sprungMass));
    }

    /**
     * Damping ratio of the wheel between spring and tyre, body held still, the tyre's damping included.
     *
     * @param rate of the damper, N s/m at the damper
     */
    public double hopDampingRatio(double rate) {
        return (atWheel(rate) + tyreDamping) / (2 * Math.sqrt((wheelRate + tyreRate) * unsprungMass));
    }

    private double atWheel(double rate) {
        return Check.inRange("damper rate (N s/m)", rate, 0, 1e9) * motionRatio * motionRatio;
    }

    /**
     * Natural frequencies and mode shapes of a quarter car without damping.
     *
     * <p>The squares of the angular frequencies solve ms mu w² - (ms (ks + kt) + mu ks) w + ks kt = 0 (Barton and Fieldhouse,
     * Automotive Chassis Engineering, 2018, chapter 4).
     *
     * @param bodyFrequency of the slow mode, in which mostly the body moves, Hz
     * @param wheelFrequency of the quick mode, in which mostly the wheel moves, Hz
     * @param bodyShape travel of the wheel over that of the body in the slow mode
     * @param wheelShape travel of the body over that of the wheel in the quick mode; negative: against each other
     */
    public record Modes(double bodyFrequency, double wheelFrequency, double bodyShape, double wheelShape) {
        static Modes of(QuarterCar car) {
            double ms = car.sprungMass();
            double mu = car.unsprungMass();
            double ks = car.wheelRate();
            double kt = car.tyreRate();
            double a = ms * mu;
            double b = ms * (ks + kt) + mu * ks;
            double root = Math.sqrt(b * b - 4 * a * ks * kt);
            double quick = (b + root) / (2 * a);
            // The product of the roots is ks kt/a: no difference of near equals.
            double slow = ks * kt / (a * quick);
            return new Modes(
                    Math.sqrt(slow) / (2 * Math.PI),
                    Math.sqrt(quick) / (2 * Math.PI),
                    (ks - ms * slow) / ks,
                    ks / (ks - ms * quick));
        }
    }
}
