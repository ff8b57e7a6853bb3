package dev.lapwright.study.ride;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Handling;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.ride.AxleEnd;
import dev.lapwright.ride.PassSolver;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RandomRoad;
import dev.lapwright.ride.RidePass;
import dev.lapwright.ride.RoadProfile;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import java.util.ArrayList;
import java.util.List;

/**
 * Study of ride: a wheel of each axle over a kerb and over a rough surface, and what other fast damper rates would make of
 * the kerb. The load on the wheel is half the axle's at rest, with the downforce of the speed; cornering, braking and drive
 * move no load here.
 */
public final class Ride implements Study<RideResult> {
    private static final double KMH = 3.6;

    private final Car car;
    private final Conditions conditions;
    private final double speed;
    private final RoadInput choices;

    private Ride(Car car, Conditions conditions, double speed, RoadInput choices) {
        this.car = car;
        this.conditions = conditions;
        this.speed = Check.positive("speed (m/s)", speed);
        this.choices = choices;
    }

    /**
     * A ride over {@link RoadInput#STANDARD}.
     *
     * @param speed m/s
     */
    public static Ride of(Car car, Conditions conditions, double speed) {
        return new Ride(car, conditions, speed, RoadInput.STANDARD);
    }

    /** The same over another kerb and surface. */
    public Ride over(RoadInput other) {
        return new Ride(car, conditions, speed, other);
    }

    /**
     * Pass of a wheel of each axle over the kerb, front first, and nothing else.
     *
     * @throws dev.lapwright.fault.InvalidValueException as {@link #run}
     */
    public List<RidePass> overKerb() {
        Wheels wheels = wheels();
        PassSolver overKerb = PassSolver.over(choices.kerb().felt(choices.contactLength()), speed);
        return List.of(overKerb.drive(wheels.of(AxleEnd.FRONT)), overKerb.drive(wheels.of(AxleEnd.REAR)));
    }

    /** Downforce on each axle, N, and the wheels that carry it. */
    private final class Wheels {
        private final Handling.AeroBalance aero;

        Wheels(Handling.AeroBalance aero) {
            this.aero = aero;
        }

        double downforce(AxleEnd end) {
            return end == AxleEnd.FRONT ? aero.front() : aero.rear();
        }

        QuarterCar of(AxleEnd end) {
            return end.of(car, downforce(end));
        }
    }

    private Wheels wheels() {
        AxleEnd.FRONT.of(car, 0);
        AxleEnd.REAR.of(car, 0);
        Vehicle vehicle = Vehicle.of(car, conditions);
        if (speed > vehicle.geared()) {
            throw new InvalidValueException(
                    "speed",
                    Check.text(KMH * speed) + " km/h is beyond the rev limit in top gear, "
                            + Check.text(Math.floor(KMH * vehicle.geared())) + " km/h",
                    "drive slower");
        }
        return new Wheels(Handling.of(vehicle).aero(speed));
    }

    /**
     * Drives both axles.
     *
     * @throws dev.lapwright.fault.InvalidValueException if the car's document lacks unsprung masses or damper rates, or if the
     *     car does not reach the speed
     */
    @Override
    public RideResult run(StudyRun how) {
        Wheels wheels = wheels();
        RoadProfile kerb = choices.kerb().felt(choices.contactLength());
        RoadProfile surface = RandomRoad.of(choices.road(), choices.seed(), choices.contactLength());
        PassSolver overKerb = PassSolver.over(kerb, speed);
        List<RideResult.Axle> axles = new ArrayList<>();
        for (AxleEnd end : AxleEnd.values()) {
            how.stopIfWanted();
            QuarterCar wheel = wheels.of(end);
            axles.add(new RideResult.Axle(
                    end,
                    wheel,
                    overKerb.drive(wheel),
                    overKerb.trace(wheel),
                    PassSolver.over(surface, speed).drive(wheel),
                    DamperMap.of(wheel, kerb, speed).run(how),
                    DamperClicks.of(car, end, wheels.downforce(end), overKerb)));
        }
        return new RideResult(car, conditions, choices, speed, axles);
    }
}
