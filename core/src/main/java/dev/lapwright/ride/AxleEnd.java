package dev.lapwright.ride;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.chassis.AxleSpring;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.List;

/** An end of the car, and the quarter car of a wheel there. */
public enum AxleEnd {
    /** Front axle. */
    FRONT(
            "front",
            Quantity.SPRING_FRONT,
            Quantity.MOTION_RATIO_FRONT,
            Quantity.VERTICAL_RATE_FRONT,
            Quantity.TYRE_DAMPING_FRONT,
            Quantity.UNSPRUNG_MASS_FRONT,
            Quantity.SLOW_BUMP_FRONT,
            Quantity.FAST_BUMP_FRONT,
            Quantity.SLOW_REBOUND_FRONT,
            Quantity.FAST_REBOUND_FRONT,
            Quantity.BUMP_KNEE_FRONT,
            Quantity.REBOUND_KNEE_FRONT,
            Quantity.TRACK_FRONT),
    /** Rear axle. */
    REAR(
            "rear",
            Quantity.SPRING_REAR,
            Quantity.MOTION_RATIO_REAR,
            Quantity.VERTICAL_RATE_REAR,
            Quantity.TYRE_DAMPING_REAR,
            Quantity.UNSPRUNG_MASS_REAR,
            Quantity.SLOW_BUMP_REAR,
            Quantity.FAST_BUMP_REAR,
            Quantity.SLOW_REBOUND_REAR,
            Quantity.FAST_REBOUND_REAR,
            Quantity.BUMP_KNEE_REAR,
            Quantity.REBOUND_KNEE_REAR,
            Quantity.TRACK_REAR);

    private static final double MM_PER_M = 1000;

    private final String label;
    private final Quantity spring;
    private final Quantity motionRatio;
    private final Quantity tyreRate;
    private final Quantity tyreDamping;
    private final Quantity unsprungMass;
    private final Quantity slowBump;
    private final Quantity fastBump;
    private final Quantity slowRebound;
    private final Quantity fastRebound;
    private final Quantity bumpKnee;
    private final Quantity reboundKnee;
    private final Quantity track;

    AxleEnd(
            String label,
            Quantity spring,
            Quantity motionRatio,
            Quantity tyreRate,
            Quantity tyreDamping,
            Quantity unsprungMass,
            Quantity slowBump,
            Quantity fastBump,
            Quantity slowRebound,
            Quantity fastRebound,
            Quantity bumpKnee,
            Quantity reboundKnee,
            Quantity track) {
        this.label = label;
        this.spring = spring;
        this.motionRatio = motionRatio;
        this.tyreRate = tyreRate;
        this.tyreDamping = tyreDamping;
        this.unsprungMass = unsprungMass;
        this.slowBump = slowBump;
        this.fastBump = fastBump;
        this.slowRebound = slowRebound;
        this.fastRebound = fastRebound;
        this.bumpKnee = bumpKnee;
        this.reboundKnee = reboundKnee;
        this.track = track;
    }

    /** In words. */
    public String label() {
        return label;
    }

    /** Rates and knees of its dampers, which serve the ride alone. */
    public List<Quantity> dampers() {
        return List.of(slowBump, fastBump, slowRebound, fastRebound, bumpKnee, reboundKnee);
    }

    /**
     * A wheel of this axle, half the axle's load on it. The damper is taken to move as the spring does.
     *
     * @param axleDownforce on the whole axle, N
     * @throws InvalidValueException naming what the car's document would have to give
     */
    public QuarterCar of(Car car, double axleDownforce) {
        double wheel = car.value(unsprungMass);
        if (!(wheel > 0)) {
            throw new InvalidValueException(
                    unsprungMass.path(),
                    "the car's document does not give it",
                    "give the mass that moves with one " + label + " wheel, kg");
        }
        double share = car.value(Quantity.FRONT_WEIGHT) / 100;
        double mass =
                (car.value(Quantity.MASS) + car.value(Quantity.FUEL_MASS)) * (this == FRONT ? share : 1 - share) / 2;
        if (!(wheel < mass)) {
            throw new InvalidValueException(
                    unsprungMass.path(),
                    Check.text(wheel) + " kg is no less than the " + Check.text(mass) + " kg that the wheel carries",
                    "give the mass that moves with one wheel");
        }
        AxleSpring springing = new AxleSpring(
                car.value(spring) * MM_PER_M,
                car.value(motionRatio),
                0,
                car.value(tyreRate) * MM_PER_M,
                car.value(track));
        return new QuarterCar(
                mass - wheel,
                wheel,
                springing.wheelRate(),
                springing.tyreRate(),
                car.value(tyreDamping),
                damper(car),
                car.value(motionRatio),
                Check.finite("axle downforce (N)", axleDownforce) / 2);
    }

    private Damper damper(Car car) {
        double bump = car.value(slowBump);
        double rebound = car.value(slowRebound);
        Quantity missing = bump > 0 ? slowRebound : slowBump;
        if (!(bump > 0 && rebound > 0)) {
            throw new InvalidValueException(
                    missing.path(),
                    "the car's document does not give it",
                    "give the damper's rates as its maker or a dynamometer has them");
        }
        double fast = car.value(fastBump);
        double fastBack = car.value(fastRebound);
        return new Damper(
                bump,
                fast > 0 ? fast : bump,
                rebound,
                fastBack > 0 ? fastBack : rebound,
                car.value(bumpKnee) / MM_PER_M,
                car.value(reboundKnee) / MM_PER_M);
    }
}
