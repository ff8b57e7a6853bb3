package dev.lapwright.lap;

import dev.lapwright.aero.AeroMap;
import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Platform;
import dev.lapwright.aero.Wing;
import dev.lapwright.air.Atmosphere;
import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.air.Wind;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.chassis.AxleSpring;
import dev.lapwright.chassis.LateralTransfer;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.powertrain.Engine;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A car as set up, in the air of the day: constants and tables that the kernel reads. Everything that depends on speed
 * alone is tabulated here, once. Immutable and safe to share between threads.
 */
public final class Vehicle {
    private static final int PLATFORM_STAGES = 4;

    private final Car car;
    private final Conditions conditions;
    private final Platform platform;
    private final double staticFrontMm;
    private final double staticRearMm;
    /** Load that the springs of an axle gain, N per m/s² along the car; of both axles per m/s² into the road. */
    private final double frontPitch;

    private final double rearPitch;
    private final double heave;

    final double mass;
    final double wheelbase;
    final double perWheelbase;
    /** Load that an axle loses and the other gains for each m/s² along the car, N. */
    final double pitchPerAx;

    final double frontShare;
    final double cgHeight;
    final double airDensity;
    final Wind wind;
    final AxleData front;
    final AxleData rear;
    final double frontRollShare;
    final double rollingResistance;
    final double rollingResistancePerSpeed;
    final double ellipseExponent;
    final double frontDriveShare;
    final double centreLock;
    final double frontBrakeShare;
    final double brakeMaxForce;
    final AeroTable aero;
    final Propulsion propulsion;
    /** What the tables of engine and air were made from. */
    private final EngineKey engineKey;

    private final AirKey airKey;

    /** All that {@link Propulsion} is made from. */
    private record EngineKey(Engine engine, List<Double> numbers) {
        private static final List<Quantity> READ = List.of(
                Quantity.POWER_SCALE,
                Quantity.REV_LIMIT,
                Quantity.WHEEL_RADIUS,
                Quantity.EFFICIENCY,
                Quantity.WHEEL_INERTIA,
                Quantity.TYRE_SLIP,
                Quantity.OVERRUN_DRAG,
                Quantity.FINAL_DRIVE,
                Quantity.ENGINE_INERTIA,
                Quantity.LOWEST_GEAR,
                Quantity.SHIFT_TIME);

        static EngineKey of(Car car, double mass, double powerFactor) {
            List<Double> numbers = new ArrayList<>();
            READ.forEach(quantity -> numbers.add(car.value(quantity)));
            for (double ratio : car.gearRatios()) {
                numbers.add(ratio);
            }
            numbers.add(mass);
            numbers.add(powerFactor);
            return new EngineKey(car.engine(), numbers);
        }
    }

    /** All that {@link AeroTable} is made from. */
    private record AirKey(Areas base, AeroMap map, List<Double> numbers) {}

    /** @param like a car that this one may share tables with, or null */
    private Vehicle(Car car, Conditions conditions, Vehicle like) {
        this.car = car;
        this.conditions = conditions;
        mass = car.value(Quantity.MASS) + car.value(Quantity.FUEL_MASS);
        wheelbase = car.value(Quantity.WHEELBASE);
        frontShare = car.value(Quantity.FRONT_WEIGHT) / 100;
        Atmosphere air = conditions.air();
        airDensity = air.density();
        wind = conditions.wind();
        AxleSpring frontSpring = axleSpring(
                Quantity.SPRING_FRONT,
                Quantity.MOTION_RATIO_FRONT,
                Quantity.BAR_FRONT,
                Quantity.VERTICAL_RATE_FRONT,
                Quantity.TRACK_FRONT);
        AxleSpring rearSpring = axleSpring(
                Quantity.SPRING_REAR,
                Quantity.MOTION_RATIO_REAR,
                Quantity.BAR_REAR,
                Quantity.VERTICAL_RATE_REAR,
                Quantity.TRACK_REAR);
        staticFrontMm = car.value(Quantity.RIDE_HEIGHT_FRONT)
                - sunk(mass * frontShare, car.value(Quantity.HEIGHT_LOAD_FRONT), frontSpring);
        staticRearMm = car.value(Quantity.RIDE_HEIGHT_REAR)
                - sunk(mass * (1 - frontShare), car.value(Quantity.HEIGHT_LOAD_REAR), rearSpring);
        cgHeight = car.value(Quantity.CG_HEIGHT)
                + frontShare * raised(staticFrontMm, car.value(Quantity.CG_AT_FRONT_HEIGHT))
                + (1 - frontShare) * raised(staticRearMm, car.value(Quantity.CG_AT_REAR_HEIGHT));
        if (!(cgHeight >= 0)) {
            throw new InvalidValueException(
                    "chassis.cgHeightM",
                    "with these ride heights the centre of gravity lies " + Check.text(-cgHeight) + " m below the road",
                    "check chassis.cgFrontRideHeightMm and chassis.cgRearRideHeightMm against the ride heights");
        }
        frontRollShare = frontSpring.rollStiffness() / (frontSpring.rollStiffness() + rearSpring.rollStiffness());
        LateralTransfer transfer = LateralTransfer.of(
                frontShare,
                cgHeight,
                car.value(Quantity.ROLL_CENTRE_FRONT),
                car.value(Quantity.ROLL_CENTRE_REAR),
                frontSpring.track(),
                rearSpring.track(),
                frontRollShare);
        double arm = cgHeight
                - frontShare * car.value(Quantity.ROLL_CENTRE_FRONT)
                - (1 - frontShare) * car.value(Quantity.ROLL_CENTRE_REAR);
        double roll = arm / (frontSpring.rollStiffness() + rearSpring.rollStiffness());
        double weight = mass * StandardAtmosphere.GRAVITY;
        front = new AxleData(
                car,
                Axle.FRONT,
                weight,
                conditions.grip(),
                transfer.front(),
                roll * frontSpring.sprungShareOfRoll(),
                transfer.front() * frontSpring.track() / frontSpring.tyreRollStiffness());
        rear = new AxleData(
                car,
                Axle.REAR,
                weight,
                conditions.grip(),
                transfer.rear(),
                roll * rearSpring.sprungShareOfRoll(),
                transfer.rear() * rearSpring.track() / rearSpring.tyreRollStiffness());
        rollingResistance = car.value(Quantity.ROLLING_RESISTANCE);
        rollingResistancePerSpeed = car.value(Quantity.ROLLING_RESISTANCE_PER_SPEED);
        ellipseExponent = car.value(Quantity.FRICTION_EXPONENT);
        frontDriveShare = car.value(Quantity.FRONT_DRIVE_SHARE) / 100;
        centreLock = frontDriveShare > 0 && frontDriveShare < 1 ? car.value(Quantity.CENTRE_LOCK) / 100 : 0;
        frontBrakeShare = car.value(Quantity.BRAKE_FRONT_SHARE) / 100;
        brakeMaxForce = car.value(Quantity.BRAKE_MAX_FORCE);
        double powerFactor = car.powerCorrection().powerFactor(air);
        engineKey = EngineKey.of(car, mass, powerFactor);
        propulsion = like != null && like.engineKey.equals(engineKey)
                ? like.propulsion
                : new Propulsion(car, mass, powerFactor);
        Areas base = base();
        AeroMap map = car.aeroMap();
        platform = new Platform(base, map, staticFrontMm, staticRearMm, frontSpring.rideRate(), rearSpring.rideRate());
        double topAirSpeed = propulsion.topSpeed + wind.speed() + 1;
        perWheelbase = 1 / wheelbase;
        pitchPerAx = mass * cgHeight / wheelbase;
        frontPitch = -pitchPerAx * car.value(Quantity.PITCH_FRONT) / 100;
        rearPitch = pitchPerAx * car.value(Quantity.PITCH_REAR) / 100;
        heave = mass * car.value(Quantity.HEAVE) / 100;
        double mostPressure = 0.5 * airDensity * topAirSpeed * topAirSpeed;
        double frontHeave = heave * frontShare;
        double rearHeave = heave * (1 - frontShare);
        airKey = new AirKey(
                base,
                map,
                List.of(
                        staticFrontMm,
                        staticRearMm,
                        frontSpring.rideRate(),
                        rearSpring.rideRate(),
                        mostPressure,
                        frontPitch,
                        rearPitch,
                        frontHeave,
                        rearHeave));
        aero = like != null && like.airKey.equals(airKey)
                ? like.aero
                : new AeroTable(platform, mostPressure, frontPitch, rearPitch, frontHeave, rearHeave);
    }

    /** How far an axle sinks below the height measured with another mass on it, mm. */
    private static double sunk(double onAxle, double whenMeasured, AxleSpring spring) {
        return whenMeasured > 0
                ? 1000 * (onAxle - whenMeasured) * StandardAtmosphere.GRAVITY / (2 * spring.rideRate())
                : 0;
    }

    private static double raised(double heightMm, double givenForMm) {
        return givenForMm > 0 ? (heightMm - givenForMm) / 1000 : 0;
    }

    /** The car as it stands, on this day. */
    public static Vehicle of(Car car, Conditions conditions) {
        return new Vehicle(car, conditions, null);
    }

    /** Another car on another day that differs from this one in little: what both have in common is not made again. */
    Vehicle beside(Car other, Conditions day) {
        return new Vehicle(other, day, this);
    }

    /** Whether nothing that a lap reads differs; false too where tyre models of one's own cannot be compared. */
    boolean drivesAs(Vehicle other) {
        return propulsion == other.propulsion
                && aero == other.aero
                && wind.equals(other.wind)
                && Arrays.equals(numbers(), other.numbers())
                && front.gripsAs(other.front)
                && rear.gripsAs(other.rear);
    }

    private double[] numbers() {
        return new double[] {
            mass,
            wheelbase,
            frontShare,
            cgHeight,
            airDensity,
            frontRollShare,
            rollingResistance,
            rollingResistancePerSpeed,
            ellipseExponent,
            frontDriveShare,
            centreLock,
            frontBrakeShare,
            brakeMaxForce
        };
    }

    private AxleSpring axleSpring(
            Quantity spring, Quantity motionRatio, Quantity bar, Quantity tyreRate, Quantity track) {
        return new AxleSpring(
                1000 * car.value(spring),
                car.value(motionRatio),
                Math.toDegrees(car.value(bar)),
                1000 * car.value(tyreRate),
                car.value(track));
    }

    /** Areas at the reference ride heights, wings as they stand. */
    private Areas base() {
        Areas base = new Areas(
                car.value(Quantity.DRAG_AREA), car.value(Quantity.LIFT_AREA_FRONT), car.value(Quantity.LIFT_AREA_REAR));
        for (Wing wing : car.wings()) {
            base = base.plus(wing.at(car.value("aero.wings." + wing.name() + ".angleDeg")));
        }
        return base;
    }

    /** The car this was made from. */
    public Car car() {
        return car;
    }

    /** The day. */
    public Conditions conditions() {
        return conditions;
    }

    /** Speed at the rev limit in top gear, m/s: nothing drives the car faster. */
    public double geared() {
        return propulsion.topSpeed;
    }

    /** Mass with fuel, kg. */
    public double mass() {
        return mass;
    }

    /** Share of the roll stiffness at the front axle, 0 to 1. */
    public double frontRollShare() {
        return frontRollShare;
    }

    /** Air density, kg/m³. */
    public double airDensity() {
        return airDensity;
    }

    /** Ride heights and aerodynamic areas at an air speed (m/s), platform settled at steady speed on a level road. */
    public Platform.State platformAt(double airSpeed) {
        return platformAt(airSpeed, 0, StandardAtmosphere.GRAVITY);
    }

    /**
     * Ride heights and aerodynamic areas, platform settled.
     *
     * @param airSpeed m/s
     * @param along acceleration along the car as an accelerometer in it reads it, m/s²
     * @param normal acceleration into the road, 9.80665 on a level one, m/s²
     */
    public Platform.State platformAt(double airSpeed, double along, double normal) {
        double heaved = normal - StandardAtmosphere.GRAVITY;
        double frontLoad = frontPitch * along + heave * frontShare * heaved;
        double rearLoad = rearPitch * along + heave * (1 - frontShare) * heaved;
        double dynamicPressure = 0.5 * airDensity * airSpeed * airSpeed;
        // From rest by stages, as the table was made: the state that a car reaches as it speeds up.
        Platform.State state = null;
        for (int stage = 1; stage <= PLATFORM_STAGES; stage++) {
            state = platform.at(dynamicPressure * stage / PLATFORM_STAGES, frontLoad, rearLoad, state);
        }
        return state;
    }
}
