package dev.lapwright.ride;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.chassis.AxleSpring;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.List;

/** End of the car, front or rear, with the quarter-car model of a wheel there. */
public enum AxleEnd {
    /** Front axle. */
    FRONT(
            "front",
            new Wheel(
                    Quantity.SPRING_FRONT,
                    Quantity.MOTION_RATIO_FRONT,
                    Quantity.VERTICAL_RATE_FRONT,
                    Quantity.TYRE_DAMPING_FRONT,
                    Quantity.UNSPRUNG_MASS_FRONT,
                    Quantity.TRACK_FRONT),
            new Rates(
                    Quantity.SLOW_BUMP_FRONT,
                    Quantity.FAST_BUMP_FRONT,
                    Quantity.SLOW_REBOUND_FRONT,
                    Quantity.FAST_REBOUND_FRONT,
                    Quantity.BUMP_KNEE_FRONT,
                    Quantity.REBOUND_KNEE_FRONT)),
    /** Rear axle. */
    REAR(
            "rear",
            new Wheel(
                    Quantity.SPRING_REAR,
                    Quantity.MOTION_RATIO_REAR,
                    Quantity.VERTICAL_RATE_REAR,
                    Quantity.TYRE_DAMPING_REAR,
                    Quantity.UNSPRUNG_MASS_REAR,
                    Quantity.TRACK_REAR),
            new Rates(
                    Quantity.SLOW_BUMP_REAR,
                    Quantity.FAST_BUMP_REAR,
                    Quantity.SLOW_REBOUND_REAR,
                    Quantity.FAST_REBOUND_REAR,
                    Quantity.BUMP_KNEE_REAR,
                    Quantity.REBOUND_KNEE_REAR));

    private static final double MM_PER_M = 1000;

    /** Quantities of a wheel: its spring, its tyre and what it weighs. */
    private record Wheel(
            Quantity spring,
            Quantity motionRatio,
            Quantity tyreRate,
            Quantity tyreDamping,
            Quantity unsprungMass,
            Quantity track) {}

    /** Quantities of its damper. */
    private record Rates(
            Quantity slowBump,
            Quantity fastBump,
            Quantity slowRebound,
            Quantity fastRebound,
            Quantity bumpKnee,
            Quantity reboundKnee) {}

    private final String label;
    private final Wheel wheel;
    private final Rates rates;

    AxleEnd(String label, Wheel wheel, Rates rates) {
        this.label = label;
        this.wheel = wheel;
        this.rates = rates;
    }

    /** In words. */
    public String label() {
        return label;
    }

    /** Rates and knees of its dampers, which serve the ride alone. */
    public List<Quantity> dampers() {
        return List.of(
                rates.slowBump(),
                rates.fastBump(),
                rates.slowRebound(),
                rates.fastRebound(),
                rates.bumpKnee(),
                rates.reboundKnee());
    }

    /**
     * A wheel of this axle, half the axle's load on it. The damper is taken to move as the spring does.
     *
     * @param axleDownforce on the whole axle, N
     * @throws InvalidValueException naming what the car's document would have to give
     */
    public QuarterCar of(Car car, double axleDownforce) {
        double mounted = car.value(wheel.unsprungMass());
        if (!(mounted > 0)) {
            throw new InvalidValueException(
                    wheel.unsprungMass().path(),
                    "the car's document does not give it",
                    "give the mass that moves with one " + label + " wheel, kg");
        }
        double share = car.value(Quantity.FRONT_WEIGHT) / 100;
        double mass =
                (car.value(Quantity.MASS) + car.value(Quantity.FUEL_MASS)) * (this == FRONT ? share : 1 - share) / 2;
        if (!(mounted < mass)) {
            throw new InvalidValueException(
                    wheel.unsprungMass().path(),
                    Check.text(mounted) + " kg is no less than the " + Check.text(mass) + " kg that the wheel carries",
                    "give the mass that moves with one wheel");
        }
        AxleSpring springing = new AxleSpring(
                car.value(wheel.spring()) * MM_PER_M,
                car.value(wheel.motionRatio()),
                0,
                car.value(wheel.tyreRate()) * MM_PER_M,
                car.value(wheel.track()));
        return new QuarterCar(
                mass - mounted,
                mounted,
                springing.wheelRate(),
                springing.tyreRate(),
                car.value(wheel.tyreDamping()),
                damper(car),
                car.value(wheel.motionRatio()),
                Check.finite("axle downforce (N)", axleDownforce) / 2);
    }

    private Damper damper(Car car) {
        double bump = car.value(rates.slowBump());
        double rebound = car.value(rates.slowRebound());
        Quantity missing = bump > 0 ? rates.slowRebound() : rates.slowBump();
        if (!(bump > 0 && rebound > 0)) {
            throw new InvalidValueException(
                    missing.path(),
                    "the car's document does not give it",
                    "give the damper's rates as its maker or a dynamometer has them");
        }
        double fast = car.value(rates.fastBump());
        double fastBack = car.value(rates.fastRebound());
        return new Damper(
                bump,
                fast > 0 ? fast : bump,
                rebound,
                fastBack > 0 ? fastBack : rebound,
                car.value(rates.bumpKnee()) / MM_PER_M,
                car.value(rates.reboundKnee()) / MM_PER_M);
    }
}
