package dev.lapwright.slip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Limit;
import dev.lapwright.lap.Place;
import dev.lapwright.lap.SlipCars;
import dev.lapwright.lap.Vehicle;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The fuller model at one place, against closed forms and statics. */
class SlipModelTest {
    private static final double G = 9.80665;
    /** An engine that never limits, N. */
    private static final double STRONG = 1e7;

    private static SlipModel model(Car car) {
        return SlipModel.of(Vehicle.of(car, Conditions.STANDARD));
    }

    private static SlipState at(Car car, double radius, double speed) {
        return model(car).at(Place.level(1 / radius), speed, 0).orElseThrow();
    }

    private static SlipState fastest(Car car, double radius) {
        return model(car).fastest(Place.level(1 / radius), 200).orElseThrow();
    }

    /** No air, no rolling resistance, no toe or camber, friction that does not fall with load. */
    private static Car bare(Map<Quantity, Double> changes) {
        Car car = SlipCars.test(Map.of(
                Quantity.DRAG_AREA, 0.0,
                Quantity.ROLLING_RESISTANCE, 0.0,
                Quantity.ROLLING_RESISTANCE_PER_SPEED, 0.0,
                Quantity.TOE_FRONT, 0.0,
                Quantity.TOE_REAR, 0.0,
                Quantity.SENSITIVITY_X_FRONT, 0.0,
                Quantity.SENSITIVITY_X_REAR, 0.0));
        // The wing has an area of -0.1 m² at the front and of 0.8 m² at the rear.
        car = car.with(Quantity.LIFT_AREA_FRONT, 0.1).with(Quantity.LIFT_AREA_REAR, -0.8);
        for (Quantity height : List.of(
                Quantity.LIFT_FRONT_PER_FRONT_HEIGHT,
                Quantity.LIFT_FRONT_PER_REAR_HEIGHT,
                Quantity.LIFT_REAR_PER_FRONT_HEIGHT,
                Quantity.LIFT_REAR_PER_REAR_HEIGHT)) {
            car = car.with(height, 0);
        }
        for (Map.Entry<Quantity, Double> change : changes.entrySet()) {
            car = car.with(change.getKey(), change.getValue());
        }
        return car;
    }

    /**
     * δ = L/R + K ay, K = (m/L)(lr/Cf - lf/Cr), and β = lr/R - lf m v²/(L Cr R): the two-wheel model, Gillespie, chapter 6, from memory, with
     * the inputs of an exercise (m 1008 kg, 1.2 and 1.0 m, 117 and 145 kN/rad; K worked out: 1.24234e-4). A tenth of the grip is used,
     * where the curve has lost half a percent of its stiffness.
     */
    @Test
    void farBelowTheLimitItIsTheTwoWheelModel() {
        double weight = 1008 * G / 2.2;
        Car car = PlainCar.ofMass(1008)
                .axles(1.2, 1.0, 0)
                .frontDrive(0)
                .with(Quantity.CORNERING_STIFFNESS_FRONT, 117_000 / (weight * 1.0))
                .with(Quantity.CORNERING_STIFFNESS_REAR, 145_000 / (weight * 1.2))
                .car();
        SlipState state = at(car, 1000, 30);
        assertThat(state.steer() - 2.2 / 1000).isCloseTo(1.24234e-4 * 0.9, within(0.01 * 1.24234e-4));
        double rearAngle = 1008 * 0.9 * 1.2 / 2.2 / 145_000;
        assertThat(state.sideslip()).isCloseTo(1.0 / 1000 - rearAngle, within(0.01 * rearAngle));
        // Neutral point by the stiffnesses: (lr Cr - lf Cf)/(L (Cf + Cr)) behind the centre of gravity; as of the
        // curve, within 1 %.
        double margin = (1.0 * 145_000 - 1.2 * 117_000) / (2.2 * 262_000);
        assertThat(state.staticMargin()).isCloseTo(margin, within(0.01));
    }

    /** Two rear wheels under one share of friction pull a = μ g (a/L)/(1 - μ h/L) on a straight: Gillespie, chapter 2, from memory. */
    @Test
    void onAStraightTheRearWheelsPullWhatTheyCarry() {
        Car car = bare(Map.of());
        double mu = car.value(Quantity.FRICTION_X_REAR);
        double lever = car.value(Quantity.CG_HEIGHT) / car.value(Quantity.WHEELBASE);
        double expected = mu * G * (1 - car.value(Quantity.FRONT_WEIGHT) / 100) / (1 - mu * lever);
        SlipState state = model(car).drive(Place.level(0), 2, STRONG).orElseThrow();
        // The wing's drag at 2 m/s is half a newton.
        assertThat(state.acceleration()).isCloseTo(expected, within(1e-4 * expected));
        assertThat(state.limit()).isEqualTo(Limit.REAR_GRIP);
    }

    /** The front axle locks first at b = μ g w/(s - μ h/L) with the share s of the brakes: Gillespie, chapter 3, from memory. */
    @Test
    void onAStraightBrakesEndWhereTheFirstAxleLocks() {
        Car car = bare(Map.of(Quantity.BRAKE_FRONT_SHARE, 80.0));
        double mu = car.value(Quantity.FRICTION_X_FRONT);
        double lever = car.value(Quantity.CG_HEIGHT) / car.value(Quantity.WHEELBASE);
        double expected = mu * G * car.value(Quantity.FRONT_WEIGHT) / 100 / (0.8 - mu * lever);
        SlipState state = model(car).brake(Place.level(0), 2).orElseThrow();
        assertThat(state.acceleration()).isCloseTo(-expected, within(1e-3 * expected));
    }

    /** An engine of little force: a = F/m on a straight without resistance. */
    @Test
    void onAStraightAWeakEngineIsTheLimit() {
        Car car = bare(Map.of());
        double mass = car.value(Quantity.MASS) + car.value(Quantity.FUEL_MASS);
        SlipState state = model(car).drive(Place.level(0), 2, 2 * mass).orElseThrow();
        assertThat(state.acceleration()).isCloseTo(2, within(2e-3));
        assertThat(state.limit()).isEqualTo(Limit.POWER);
    }

    /**
     * A car without height, all of whose wheels have one friction: no force is beyond μ m g, and on a wide ring the forces of all wheels point the
     * same way but for their slip angles, so that ay comes up to it. Those angles take cos α of it: within a percent with stiff tyres.
     */
    @Test
    void aCarWithoutHeightFillsTheFrictionCircle() {
        Car car = PlainCar.ofMass(1000).stiffness(100).car();
        SlipState ring = fastest(car, 200);
        double across = ring.speed() * ring.speed() / 200;
        assertThat(across).isLessThanOrEqualTo(G).isCloseTo(G, within(0.01 * G));
        for (double share : new double[] {0.3, 0.6, 0.8, 0.95}) {
            double speed = Math.sqrt(share * G * 200);
            double rest = G * Math.sqrt(1 - share * share);
            SlipState drive =
                    model(car).drive(Place.level(1.0 / 200), speed, STRONG).orElseThrow();
            SlipState brake = model(car).brake(Place.level(1.0 / 200), speed).orElseThrow();
            assertThat(Math.hypot(drive.acceleration(), share * G))
                    .as("drive at %s", share)
                    .isLessThanOrEqualTo(G);
            assertThat(Math.hypot(brake.acceleration(), share * G))
                    .as("brakes at %s", share)
                    .isLessThanOrEqualTo(G);
            assertThat(drive.acceleration()).isCloseTo(rest, within(0.03 * G));
            assertThat(brake.acceleration()).isCloseTo(-rest, within(0.03 * G));
        }
    }

    /** An open differential gives both wheels the same force, so no moment: by its law. */
    @Test
    void anOpenDifferentialTurnsNothing() {
        Car car = SlipCars.test(Map.of());
        SlipState state = model(car).at(Place.level(1.0 / 50), 20, 2).orElseThrow();
        assertThat(state.inner().get(1).along()).isCloseTo(state.outer().get(1).along(), within(1e-3));
        assertThat(state.yawMoment()).isCloseTo(0, within(1e-3));
    }

    /** Slow wheels that turn as one on a wide ring scrub with M = -C κ t²/2, C the stiffness of each: slips of ± κ t/2. */
    @Test
    void slowWheelsThatTurnAsOneScrub() {
        Car car = bare(Map.of(Quantity.POWER_LOCK_REAR, 100.0, Quantity.COAST_LOCK_REAR, 100.0));
        double track = car.value(Quantity.TRACK_REAR);
        double load = (car.value(Quantity.MASS) + car.value(Quantity.FUEL_MASS))
                * G
                * (1 - car.value(Quantity.FRONT_WEIGHT) / 100)
                / 2;
        double fall = car.value(Quantity.STIFFNESS_SENSITIVITY_REAR);
        double perLoad = car.value(Quantity.CORNERING_STIFFNESS_REAR)
                * (1 - fall * (load / car.value(Quantity.REFERENCE_LOAD_REAR) - 1));
        double scrub = perLoad * load * track * track / 400 / 2;
        // The curve is a hundredth below its first stiffness at these slips.
        assertThat(at(car, 400, 2).yawMoment()).isCloseTo(-scrub, within(0.02 * scrub));
    }

    @Test
    void turnsAreAlikeInTheMirror() {
        for (Car car : SlipCars.demo()) {
            Place place = Place.on(1.0 / 60, 0.03, 0.05, 0.0005, 0.98);
            SlipState left = model(car).fastest(place, 120).orElseThrow();
            SlipState right = model(car).fastest(place.mirrored(), 120).orElseThrow();
            assertThat(right.speed()).isEqualTo(left.speed());
            assertThat(right.steer()).isEqualTo(left.steer());
            assertThat(right.left()).isNotEqualTo(left.left());
            double slower = 0.8 * left.speed();
            assertThat(model(car).brake(place.mirrored(), slower).orElseThrow().acceleration())
                    .isEqualTo(model(car).brake(place, slower).orElseThrow().acceleration());
        }
    }

    /**
     * Newton and Euler for the whole car, from the wheels' forces that the state tells: along and across the path, and about the centre of
     * gravity. By hand, with angles of its own.
     */
    @Test
    void forcesAndMomentsOfTheWheelsBalance() {
        Car car = bare(Map.of(Quantity.POWER_LOCK_REAR, 40.0));
        double mass = car.value(Quantity.MASS) + car.value(Quantity.FUEL_MASS);
        double base = car.value(Quantity.WHEELBASE);
        double toRear = base * car.value(Quantity.FRONT_WEIGHT) / 100;
        SlipState state = model(car).at(Place.level(1.0 / 40), 5, 1.5).orElseThrow();
        double forward = 0;
        double sideways = 0;
        double moment = 0;
        for (int axle = 0; axle < 2; axle++) {
            double x = axle == 0 ? base - toRear : -toRear;
            double half = 0.5 * car.value(axle == 0 ? Quantity.TRACK_FRONT : Quantity.TRACK_REAR);
            double steer = axle == 0 ? state.steer() : 0;
            for (int side = -1; side <= 1; side += 2) {
                SlipState.SlipWheel wheel = (side > 0 ? state.inner() : state.outer()).get(axle);
                double fx = wheel.along() * Math.cos(steer) - wheel.across() * Math.sin(steer);
                double fy = wheel.along() * Math.sin(steer) + wheel.across() * Math.cos(steer);
                forward += fx;
                sideways += fy;
                moment += x * fy - side * half * fx;
            }
        }
        double b = state.sideslip();
        double across = 25.0 / 40;
        // Drag of the wing at 5 m/s is left over: 3 N.
        assertThat(forward).isCloseTo(mass * (1.5 * Math.cos(b) - across * Math.sin(b)), within(4.0));
        assertThat(sideways).isCloseTo(mass * (1.5 * Math.sin(b) + across * Math.cos(b)), within(1.0));
        assertThat(moment).isCloseTo(0, within(1.0));
    }

    /**
     * Loads are those of a stiff car whose inertia acts at its centre of gravity, seen in the car's own axes: with the tail out, part of what
     * turns the car pushes it back. Moments about the rear axle and about the middle by hand.
     */
    @Test
    void loadsAreTakenInTheCarsOwnAxes() {
        Car car = bare(Map.of(Quantity.CG_HEIGHT, 0.5));
        double mass = car.value(Quantity.MASS) + car.value(Quantity.FUEL_MASS);
        double base = car.value(Quantity.WHEELBASE);
        SlipState state = fastest(car, 15);
        assertThat(Math.toDegrees(state.sideslip())).isLessThan(-1);
        double own = -state.lateral() * Math.sin(state.sideslip());
        double front = state.inner().get(0).load() + state.outer().get(0).load();
        double rear = state.inner().get(1).load() + state.outer().get(1).load();
        double given = mass * own * 0.5 / base;
        // 70 N of 13 000.
        assertThat(given).isGreaterThan(50);
        assertThat(front).isCloseTo(mass * G * car.value(Quantity.FRONT_WEIGHT) / 100 - given, within(0.01));
        assertThat(front + rear).isCloseTo(mass * G, within(0.01));
        double transfer = 0;
        for (int axle = 0; axle < 2; axle++) {
            double track = car.value(axle == 0 ? Quantity.TRACK_FRONT : Quantity.TRACK_REAR);
            transfer +=
                    (state.outer().get(axle).load() - state.inner().get(axle).load()) * track / 2;
        }
        double across = state.lateral() * Math.cos(state.sideslip());
        assertThat(transfer).isCloseTo(mass * across * 0.5, within(0.01));
    }

    /** Nothing that is past its peak at the rear counts, and what counts goes on from slower speeds without a gap. */
    @Test
    void theBranchFromAStraightCounts() {
        for (Car car : SlipCars.demo()) {
            for (double radius : List.of(20.0, 50.0, 200.0)) {
                SlipModel model = model(car);
                Place place = Place.level(1 / radius);
                SlipState end = model.fastest(place, 120).orElseThrow();
                assertThat(end.rearStiffness()).isGreaterThan(-1e-6);
                double before = 0;
                for (int i = 5; i <= 19; i++) {
                    SlipState state = model.at(place, 0.05 * i * end.speed(), 0).orElseThrow();
                    // Steps of 5 % of speed: no more than two degrees each, where another branch lies 5 and more away.
                    assertThat(Math.toDegrees(Math.abs(state.sideslip() - (i == 5 ? state.sideslip() : before))))
                            .as("%s at %s m, step %s", car.name(), radius, i)
                            .isLessThan(2);
                    before = state.sideslip();
                }
                assertThat(model.at(place, 1.02 * end.speed(), 0))
                        .as("%s at %s m", car.name(), radius)
                        .isEmpty();
            }
        }
    }

    /**
     * The handling diagram of a car without height, so without load transfer: δ - L/R = α₁ - α₂, where each axle's slip angle is that at which its
     * own tyre gives ay/g of its load (Pacejka, Tire and Vehicle Dynamics, chapter 1, from memory). The tyre's curve sin(1.5 atan(√3 ρ)) is turned
     * round by hand. Drive against the tyres' losses takes up to a percent of the rear's grip, angles are up to 0.1 rad: within 4 %.
     */
    @Test
    void theHandlingDiagramIsThatOfItsTwoTyres() {
        double frontPeak = 1.2;
        double rearPeak = 1.5;
        Car car = PlainCar.ofMass(1000)
                .axles(1.25, 1.25, 0)
                .longitudinalFriction(1.5)
                .stiffness(20)
                .with(Quantity.FRICTION_Y_FRONT, frontPeak)
                .with(Quantity.FRICTION_Y_REAR, rearPeak)
                .car();
        double radius = 300;
        for (double lateral : new double[] {0.2, 0.4, 0.6, 0.8, 0.95}) {
            double ay = lateral * frontPeak * G;
            SlipState state = at(car, radius, Math.sqrt(ay * radius));
            double expected = angle(ay / G, frontPeak, 20) - angle(ay / G, rearPeak, 20);
            assertThat(state.steer() - 2.5 / radius)
                    .as("%s of the front's grip", lateral)
                    .isCloseTo(expected, within(0.04 * angle(ay / G, frontPeak, 20)));
        }
    }

    /** Slip angle at which a tyre of a peak and a stiffness, both over its load, gives a force over its load. */
    private static double angle(double force, double peak, double stiffness) {
        double rho = Math.tan(Math.asin(force / peak) / 1.5) / Math.sqrt(3);
        return Math.atan(rho * 1.5 * Math.sqrt(3) * peak / stiffness);
    }

    /**
     * What the wheels' forces do at the road in a second is what the car's kinetic energy gains and its drag takes: each force times the speed of its
     * wheel over the ground, with kinematics of a stiff body by hand.
     */
    @Test
    void theForcesWorkIsWhatTheCarGains() {
        Car car = bare(Map.of(Quantity.POWER_LOCK_REAR, 40.0));
        double mass = car.value(Quantity.MASS) + car.value(Quantity.FUEL_MASS);
        double base = car.value(Quantity.WHEELBASE);
        double toRear = base * car.value(Quantity.FRONT_WEIGHT) / 100;
        double radius = 40;
        double speed = 12;
        for (double acceleration : new double[] {-2, 0, 1.5}) {
            SlipState state =
                    model(car).at(Place.level(1 / radius), speed, acceleration).orElseThrow();
            double power = 0;
            for (int axle = 0; axle < 2; axle++) {
                double x = axle == 0 ? base - toRear : -toRear;
                double half = 0.5 * car.value(axle == 0 ? Quantity.TRACK_FRONT : Quantity.TRACK_REAR);
                double steer = axle == 0 ? state.steer() : 0;
                for (int side = -1; side <= 1; side += 2) {
                    SlipState.SlipWheel wheel = (side > 0 ? state.inner() : state.outer()).get(axle);
                    double forward = speed * (Math.cos(state.sideslip()) - side * half / radius);
                    double inward = speed * (Math.sin(state.sideslip()) + x / radius);
                    power += wheel.along() * (forward * Math.cos(steer) + inward * Math.sin(steer))
                            + wheel.across() * (inward * Math.cos(steer) - forward * Math.sin(steer));
                }
            }
            // The wing's drag at 12 m/s is 15 N; of some kilowatts of slip each force has its part.
            assertThat(power).isCloseTo(speed * (mass * acceleration + 15), within(speed * 8));
        }
    }

    /** The steer of a car whose front gives up first grows faster and faster towards its limit: the handling diagram of an understeering car. */
    @Test
    void anUndersteeringCarAsksForMoreAndMoreSteer() {
        Car car = bare(Map.of(Quantity.FRONT_WEIGHT, 56.0));
        double limit = fastest(car, 100).speed();
        double last = 0;
        double before = Double.NaN;
        for (int i = 2; i <= 9; i++) {
            double steer = at(car, 100, limit * Math.sqrt(0.1 * i)).steer();
            if (i > 3) {
                assertThat(steer - before).isGreaterThan(last);
            }
            last = i > 2 ? steer - before : 0;
            before = steer;
        }
    }

    @Test
    void anotherExponentIsRefused() {
        Car car = PlainCar.ofMass(1000)
                .stiffness(100)
                .with(Quantity.FRICTION_EXPONENT, 3)
                .car();
        assertThatThrownBy(() -> model(car))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("frictionExponent");
    }

    @Test
    void stiffnessThatDoesNotFallOrIsBeyondAnyTyreIsRefused() {
        Car even = PlainCar.ofMass(1000)
                .stiffness(20)
                .with(Quantity.SLIP_STIFFNESS_FALL, 0)
                .car();
        assertThatThrownBy(() -> model(even)).hasMessageContaining("slipStiffnessFallPercent");
        Car stiff = PlainCar.ofMass(1000).stiffness(101).car();
        assertThatThrownBy(() -> model(stiff)).hasMessageContaining("corneringStiffnessPerRad");
    }
}
