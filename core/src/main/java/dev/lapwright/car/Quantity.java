package dev.lapwright.car;

import dev.lapwright.fault.Check;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The numbers that describe a car, each with its path in a car document, unit, range and, where it may be left out, default.
 * Values are held in the unit given here. Wing angles and gear ratios, of which a car has as many as it likes, are named
 * beside these: see {@link Car#quantityNames()}.
 */
public enum Quantity {
    // chassis
    MASS("chassis.massKg", Unit.KILOGRAM, 50, 40_000, "mass with driver, without fuel"),
    FUEL_MASS("chassis.fuelKg", Unit.KILOGRAM, 0, 500, 0, "fuel on board, taken at the centre of gravity"),
    WHEELBASE("chassis.wheelbaseM", Unit.METRE, 0.5, 8, "distance between the axles"),
    FRONT_WEIGHT("chassis.frontWeightPercent", Unit.PERCENT, 10, 90, "share of the weight on the front axle at rest"),
    CG_HEIGHT("chassis.cgHeightM", Unit.METRE, 0, 2, "height of the centre of gravity"),
    CG_AT_FRONT_HEIGHT(
            "chassis.cgFrontRideHeightMm",
            Unit.MILLIMETRE,
            0,
            500,
            0,
            "front ride height for which the height of the centre of gravity is given, to follow it; 0: given for any"),
    CG_AT_REAR_HEIGHT(
            "chassis.cgRearRideHeightMm",
            Unit.MILLIMETRE,
            0,
            500,
            0,
            "rear ride height for which the height of the centre of gravity is given, to follow it; 0: given for any"),
    TRACK_FRONT("chassis.trackFrontM", Unit.METRE, 0.4, 3, "distance between the front wheels"),
    TRACK_REAR("chassis.trackRearM", Unit.METRE, 0.4, 3, "distance between the rear wheels"),
    ROLL_CENTRE_FRONT("chassis.rollCentreFrontM", Unit.METRE, -0.5, 1, 0, "height of the front roll centre"),
    ROLL_CENTRE_REAR("chassis.rollCentreRearM", Unit.METRE, -0.5, 1, 0, "height of the rear roll centre"),
    YAW_INERTIA(
            "chassis.yawInertiaKgM2",
            Unit.KILOGRAM_SQUARE_METRE,
            0,
            1e6,
            0,
            "moment of inertia about the vertical axis; 0 takes mass times the centre of gravity's distances to both axles"),
    WIDTH("chassis.widthM", Unit.METRE, 0.4, 4, "greatest width of the car"),
    // suspension
    SPRING_FRONT("suspension.front.springNPerMm", Unit.NEWTON_PER_MM, 1, 5000, "rate of one front spring"),
    SPRING_REAR("suspension.rear.springNPerMm", Unit.NEWTON_PER_MM, 1, 5000, "rate of one rear spring"),
    MOTION_RATIO_FRONT("suspension.front.motionRatio", Unit.NONE, 0.1, 3, 1, "front spring travel over wheel travel"),
    MOTION_RATIO_REAR("suspension.rear.motionRatio", Unit.NONE, 0.1, 3, 1, "rear spring travel over wheel travel"),
    BAR_FRONT(
            "suspension.front.antiRollBarNmPerDeg",
            Unit.NM_PER_DEGREE,
            0,
            50_000,
            0,
            "roll stiffness the front bar adds to its axle"),
    BAR_REAR(
            "suspension.rear.antiRollBarNmPerDeg",
            Unit.NM_PER_DEGREE,
            0,
            50_000,
            0,
            "roll stiffness the rear bar adds to its axle"),
    RIDE_HEIGHT_FRONT("suspension.front.rideHeightMm", Unit.MILLIMETRE, 0, 500, "front ride height at rest"),
    RIDE_HEIGHT_REAR("suspension.rear.rideHeightMm", Unit.MILLIMETRE, 0, 500, "rear ride height at rest"),
    HEIGHT_LOAD_FRONT(
            "suspension.front.rideHeightLoadKg",
            Unit.KILOGRAM,
            0,
            30_000,
            0,
            "mass on the front axle when the ride height was measured; 0: what is on it"),
    HEIGHT_LOAD_REAR(
            "suspension.rear.rideHeightLoadKg",
            Unit.KILOGRAM,
            0,
            30_000,
            0,
            "mass on the rear axle when the ride height was measured; 0: what is on it"),
    PITCH_FRONT(
            "suspension.front.pitchPercent",
            Unit.PERCENT,
            0,
            200,
            0,
            "share of the load moved by brakes and drive that the front springs carry, 100 without anti-dive; 0: heights do not follow"),
    PITCH_REAR(
            "suspension.rear.pitchPercent",
            Unit.PERCENT,
            0,
            200,
            0,
            "share of the load moved by brakes and drive that the rear springs carry, 100 without anti-squat; 0: heights do not follow"),
    HEAVE(
            "suspension.heavePercent",
            Unit.PERCENT,
            0,
            100,
            0,
            "share of the load from crests, dips and banks that moves the ride heights; 0: they do not follow"),
    TOE_FRONT("suspension.front.toeDeg", Unit.DEGREE, -3, 3, 0, "toe of each front wheel; in is positive"),
    TOE_REAR("suspension.rear.toeDeg", Unit.DEGREE, -3, 3, 0, "toe of each rear wheel; in is positive"),
    CAMBER_FRONT(
            "suspension.front.camberDeg",
            Unit.DEGREE,
            -15,
            15,
            0,
            "camber of the front wheels at rest, negative where the top leans in"),
    CAMBER_REAR(
            "suspension.rear.camberDeg",
            Unit.DEGREE,
            -15,
            15,
            0,
            "camber of the rear wheels at rest, negative where the top leans in"),
    CAMBER_SPLIT_FRONT(
            "suspension.front.camberLeftLessRightDeg",
            Unit.DEGREE,
            -20,
            20,
            0,
            "camber of the left front wheel less that of the right one"),
    CAMBER_SPLIT_REAR(
            "suspension.rear.camberLeftLessRightDeg",
            Unit.DEGREE,
            -20,
            20,
            0,
            "camber of the left rear wheel less that of the right one"),
    CAMBER_GAIN_FRONT(
            "suspension.front.camberGain",
            Unit.NONE,
            -2,
            2,
            0,
            "share of the body's roll on its springs that the front suspension keeps from the wheels; 1 keeps them upright"),
    CAMBER_GAIN_REAR(
            "suspension.rear.camberGain",
            Unit.NONE,
            -2,
            2,
            0,
            "share of the body's roll on its springs that the rear suspension keeps from the wheels; 1 keeps them upright"),
    UNSPRUNG_MASS_FRONT(
            "suspension.front.unsprungMassKg",
            Unit.KILOGRAM,
            0,
            1000,
            0,
            "mass that moves with one wheel; 0: not known"),
    SLOW_BUMP_FRONT(
            "suspension.front.slowBumpNsPerM", Unit.NEWTON_SECOND_PER_METRE, 0, 1e6, 0, "slow bump, at the damper"),
    FAST_BUMP_FRONT(
            "suspension.front.fastBumpNsPerM",
            Unit.NEWTON_SECOND_PER_METRE,
            0,
            1e6,
            0,
            "bump past its knee; 0: as slow"),
    SLOW_REBOUND_FRONT(
            "suspension.front.slowReboundNsPerM",
            Unit.NEWTON_SECOND_PER_METRE,
            0,
            1e6,
            0,
            "slow rebound, at the damper"),
    FAST_REBOUND_FRONT(
            "suspension.front.fastReboundNsPerM",
            Unit.NEWTON_SECOND_PER_METRE,
            0,
            1e6,
            0,
            "rebound past its knee; 0: as slow"),
    BUMP_KNEE_FRONT(
            "suspension.front.bumpKneeMmPerS", Unit.MILLIMETRE_PER_SECOND, 1, 5000, 100, "where slow bump ends"),
    REBOUND_KNEE_FRONT(
            "suspension.front.reboundKneeMmPerS", Unit.MILLIMETRE_PER_SECOND, 1, 5000, 100, "where slow rebound ends"),
    UNSPRUNG_MASS_REAR(
            "suspension.rear.unsprungMassKg",
            Unit.KILOGRAM,
            0,
            1000,
            0,
            "mass that moves with one wheel; 0: not known"),
    SLOW_BUMP_REAR(
            "suspension.rear.slowBumpNsPerM", Unit.NEWTON_SECOND_PER_METRE, 0, 1e6, 0, "slow bump, at the damper"),
    FAST_BUMP_REAR(
            "suspension.rear.fastBumpNsPerM",
            Unit.NEWTON_SECOND_PER_METRE,
            0,
            1e6,
            0,
            "bump past its knee; 0: as slow"),
    SLOW_REBOUND_REAR(
            "suspension.rear.slowReboundNsPerM",
            Unit.NEWTON_SECOND_PER_METRE,
            0,
            1e6,
            0,
            "slow rebound, at the damper"),
    FAST_REBOUND_REAR(
            "suspension.rear.fastReboundNsPerM",
            Unit.NEWTON_SECOND_PER_METRE,
            0,
            1e6,
            0,
            "rebound past its knee; 0: as slow"),
    BUMP_KNEE_REAR("suspension.rear.bumpKneeMmPerS", Unit.MILLIMETRE_PER_SECOND, 1, 5000, 100, "where slow bump ends"),
    REBOUND_KNEE_REAR(
            "suspension.rear.reboundKneeMmPerS", Unit.MILLIMETRE_PER_SECOND, 1, 5000, 100, "where slow rebound ends"),
    // aero
    DRAG_AREA("aero.cdAM2", Unit.SQUARE_METRE, 0, 10, "drag area at the reference ride heights, wings not counted"),
    LIFT_AREA_FRONT(
            "aero.clAFrontM2", Unit.SQUARE_METRE, -3, 10, 0, "front downforce area without wings, as axle load"),
    LIFT_AREA_REAR("aero.clARearM2", Unit.SQUARE_METRE, -3, 10, 0, "rear downforce area without wings, as axle load"),
    REFERENCE_HEIGHT_FRONT(
            "aero.rideHeightMap.referenceFrontMm", Unit.MILLIMETRE, 0, 500, 0, "front height of the base areas"),
    REFERENCE_HEIGHT_REAR(
            "aero.rideHeightMap.referenceRearMm", Unit.MILLIMETRE, 0, 500, 0, "rear height of the base areas"),
    DRAG_PER_FRONT_HEIGHT(
            "aero.rideHeightMap.cdA.perFrontM2PerMm", Unit.SQUARE_METRE_PER_MM, -1, 1, 0, "drag over front height"),
    DRAG_PER_REAR_HEIGHT(
            "aero.rideHeightMap.cdA.perRearM2PerMm", Unit.SQUARE_METRE_PER_MM, -1, 1, 0, "drag over rear height"),
    DRAG_PER_FRONT_HEIGHT_SQUARED(
            "aero.rideHeightMap.cdA.perFrontSquaredM2PerMm2", Unit.SQUARE_METRE_PER_MM2, -1, 1, 0, "second order"),
    DRAG_PER_REAR_HEIGHT_SQUARED(
            "aero.rideHeightMap.cdA.perRearSquaredM2PerMm2", Unit.SQUARE_METRE_PER_MM2, -1, 1, 0, "second order"),
    DRAG_PER_BOTH_HEIGHTS(
            "aero.rideHeightMap.cdA.perProductM2PerMm2", Unit.SQUARE_METRE_PER_MM2, -1, 1, 0, "front times rear"),
    LIFT_FRONT_PER_FRONT_HEIGHT(
            "aero.rideHeightMap.clAFront.perFrontM2PerMm",
            Unit.SQUARE_METRE_PER_MM,
            -1,
            1,
            0,
            "front downforce over front height"),
    LIFT_FRONT_PER_REAR_HEIGHT(
            "aero.rideHeightMap.clAFront.perRearM2PerMm",
            Unit.SQUARE_METRE_PER_MM,
            -1,
            1,
            0,
            "front downforce over rear height"),
    LIFT_FRONT_PER_FRONT_HEIGHT_SQUARED(
            "aero.rideHeightMap.clAFront.perFrontSquaredM2PerMm2", Unit.SQUARE_METRE_PER_MM2, -1, 1, 0, "second order"),
    LIFT_FRONT_PER_REAR_HEIGHT_SQUARED(
            "aero.rideHeightMap.clAFront.perRearSquaredM2PerMm2", Unit.SQUARE_METRE_PER_MM2, -1, 1, 0, "second order"),
    LIFT_FRONT_PER_BOTH_HEIGHTS(
            "aero.rideHeightMap.clAFront.perProductM2PerMm2", Unit.SQUARE_METRE_PER_MM2, -1, 1, 0, "front times rear"),
    LIFT_REAR_PER_FRONT_HEIGHT(
            "aero.rideHeightMap.clARear.perFrontM2PerMm",
            Unit.SQUARE_METRE_PER_MM,
            -1,
            1,
            0,
            "rear downforce over front height"),
    LIFT_REAR_PER_REAR_HEIGHT(
            "aero.rideHeightMap.clARear.perRearM2PerMm",
            Unit.SQUARE_METRE_PER_MM,
            -1,
            1,
            0,
            "rear downforce over rear height"),
    LIFT_REAR_PER_FRONT_HEIGHT_SQUARED(
            "aero.rideHeightMap.clARear.perFrontSquaredM2PerMm2", Unit.SQUARE_METRE_PER_MM2, -1, 1, 0, "second order"),
    LIFT_REAR_PER_REAR_HEIGHT_SQUARED(
            "aero.rideHeightMap.clARear.perRearSquaredM2PerMm2", Unit.SQUARE_METRE_PER_MM2, -1, 1, 0, "second order"),
    LIFT_REAR_PER_BOTH_HEIGHTS(
            "aero.rideHeightMap.clARear.perProductM2PerMm2", Unit.SQUARE_METRE_PER_MM2, -1, 1, 0, "front times rear"),
    // tyres
    FRICTION_X_FRONT("tyres.front.frictionX", Unit.NONE, 0.02, 4, "peak longitudinal friction at the reference load"),
    FRICTION_Y_FRONT("tyres.front.frictionY", Unit.NONE, 0.02, 4, "peak lateral friction at the reference load"),
    SENSITIVITY_X_FRONT(
            "tyres.front.loadSensitivityX", Unit.NONE, 0, 0.6, 0, "share of friction lost when the load doubles"),
    SENSITIVITY_Y_FRONT(
            "tyres.front.loadSensitivityY", Unit.NONE, 0, 0.6, 0, "share of friction lost when the load doubles"),
    REFERENCE_LOAD_FRONT(
            "tyres.front.referenceLoadN", Unit.NEWTON, 100, 100_000, "load at which the friction is given"),
    FRICTION_X_REAR("tyres.rear.frictionX", Unit.NONE, 0.02, 4, "peak longitudinal friction at the reference load"),
    FRICTION_Y_REAR("tyres.rear.frictionY", Unit.NONE, 0.02, 4, "peak lateral friction at the reference load"),
    SENSITIVITY_X_REAR(
            "tyres.rear.loadSensitivityX", Unit.NONE, 0, 0.6, 0, "share of friction lost when the load doubles"),
    SENSITIVITY_Y_REAR(
            "tyres.rear.loadSensitivityY", Unit.NONE, 0, 0.6, 0, "share of friction lost when the load doubles"),
    REFERENCE_LOAD_REAR("tyres.rear.referenceLoadN", Unit.NEWTON, 100, 100_000, "load at which the friction is given"),
    BEST_INCLINATION_FRONT(
            "tyres.front.bestInclinationDeg",
            Unit.DEGREE,
            -10,
            10,
            0,
            "lean into the bend at which a front tyre has its lateral friction"),
    BEST_INCLINATION_REAR(
            "tyres.rear.bestInclinationDeg",
            Unit.DEGREE,
            -10,
            10,
            0,
            "lean into the bend at which a rear tyre has its lateral friction"),
    INCLINATION_LOSS_Y_FRONT(
            "tyres.front.inclinationLossYPerDeg2",
            Unit.PER_DEGREE_SQUARED,
            0,
            0.05,
            0,
            "share of lateral friction lost per degree squared away from the best lean; 0: not known"),
    INCLINATION_LOSS_Y_REAR(
            "tyres.rear.inclinationLossYPerDeg2",
            Unit.PER_DEGREE_SQUARED,
            0,
            0.05,
            0,
            "share of lateral friction lost per degree squared away from the best lean; 0: not known"),
    INCLINATION_LOSS_X_FRONT(
            "tyres.front.inclinationLossXPerDeg2",
            Unit.PER_DEGREE_SQUARED,
            0,
            0.05,
            0,
            "share of longitudinal friction lost per degree squared of lean; 0: not known"),
    INCLINATION_LOSS_X_REAR(
            "tyres.rear.inclinationLossXPerDeg2",
            Unit.PER_DEGREE_SQUARED,
            0,
            0.05,
            0,
            "share of longitudinal friction lost per degree squared of lean; 0: not known"),
    FRICTION_EXPONENT(
            "tyres.frictionExponent", Unit.NONE, 1, 8, 2, "exponent of the friction ellipse; 2 is an ellipse"),
    SLIP_STIFFNESS(
            "tyres.slipStiffnessPercent",
            Unit.PERCENT,
            10,
            400,
            100,
            "stiffness against slip along the tyre, of that across it; differentials feel it"),
    SLIP_STIFFNESS_FALL(
            "tyres.slipStiffnessFallPercent",
            Unit.PERCENT,
            0,
            100,
            100,
            "how far slip stiffness falls as a tyre is used across, of what a usual tyre curve says"),
    COMPOUND_GRIP("tyres.compoundGrip", Unit.NONE, 0.2, 2, 1, "grip of the compound relative to the data above"),
    CORNERING_STIFFNESS_FRONT(
            "tyres.front.corneringStiffnessPerRad",
            Unit.PER_RADIAN,
            1,
            500,
            20,
            "cornering stiffness over load at the reference load"),
    CORNERING_STIFFNESS_REAR(
            "tyres.rear.corneringStiffnessPerRad",
            Unit.PER_RADIAN,
            1,
            500,
            20,
            "cornering stiffness over load at the reference load"),
    STIFFNESS_SENSITIVITY_FRONT(
            "tyres.front.stiffnessSensitivity",
            Unit.NONE,
            0,
            0.6,
            0,
            "share of cornering stiffness over load that is lost when the load doubles"),
    STIFFNESS_SENSITIVITY_REAR(
            "tyres.rear.stiffnessSensitivity",
            Unit.NONE,
            0,
            0.6,
            0,
            "share of cornering stiffness over load that is lost when the load doubles"),
    VERTICAL_RATE_FRONT(
            "tyres.front.verticalRateNPerMm", Unit.NEWTON_PER_MM, 20, 2000, "vertical rate of one front tyre"),
    VERTICAL_RATE_REAR("tyres.rear.verticalRateNPerMm", Unit.NEWTON_PER_MM, 20, 2000, "vertical rate of one rear tyre"),
    TYRE_DAMPING_FRONT(
            "tyres.front.verticalDampingNsPerM",
            Unit.NEWTON_SECOND_PER_METRE,
            0,
            1e5,
            0,
            "vertical damping of one front tyre"),
    TYRE_DAMPING_REAR(
            "tyres.rear.verticalDampingNsPerM",
            Unit.NEWTON_SECOND_PER_METRE,
            0,
            1e5,
            0,
            "vertical damping of one rear tyre"),
    HOT_PRESSURE_FRONT("tyres.front.hotPressureKpa", Unit.KILOPASCAL, 20, 1000, 170, "gauge pressure when hot"),
    HOT_PRESSURE_REAR("tyres.rear.hotPressureKpa", Unit.KILOPASCAL, 20, 1000, 170, "gauge pressure when hot"),
    PRESSURE_SPLIT_FRONT(
            "tyres.front.hotPressureLeftLessRightKpa",
            Unit.KILOPASCAL,
            -200,
            200,
            0,
            "hot pressure of the left front tyre less that of the right one"),
    PRESSURE_SPLIT_REAR(
            "tyres.rear.hotPressureLeftLessRightKpa",
            Unit.KILOPASCAL,
            -200,
            200,
            0,
            "hot pressure of the left rear tyre less that of the right one"),
    IDEAL_PRESSURE_FRONT(
            "tyres.front.idealPressureKpa", Unit.KILOPASCAL, 20, 1000, 170, "hot gauge pressure with the most grip"),
    IDEAL_PRESSURE_REAR(
            "tyres.rear.idealPressureKpa", Unit.KILOPASCAL, 20, 1000, 170, "hot gauge pressure with the most grip"),
    PRESSURE_LOSS(
            "tyres.pressureLossPerKpa2",
            Unit.PER_KPA_SQUARED,
            0,
            0.01,
            0,
            "share of grip lost per kPa squared away from the ideal"),
    TYRE_TEMPERATURE("tyres.temperatureC", Unit.CELSIUS, -20, 200, 80, "carcass temperature"),
    IDEAL_TEMPERATURE("tyres.idealTemperatureC", Unit.CELSIUS, -20, 200, 80, "carcass temperature with the most grip"),
    TEMPERATURE_LOSS(
            "tyres.temperatureLossPerK2",
            Unit.PER_KELVIN_SQUARED,
            0,
            0.01,
            0,
            "share of grip lost per kelvin squared away from the ideal"),
    ROLLING_RESISTANCE("tyres.rollingResistance", Unit.NONE, 0, 0.2, 0.013, "rolling resistance over load"),
    ROLLING_RESISTANCE_PER_SPEED(
            "tyres.rollingResistancePerMps",
            Unit.PER_METRE_PER_SECOND,
            0,
            0.01,
            0,
            "growth of rolling resistance over load with speed"),
    // powertrain
    REV_LIMIT("engine.revLimitRpm", Unit.RPM, 500, 60_000, "engine speed above which there is no drive"),
    POWER_SCALE("engine.powerScale", Unit.NONE, 0.01, 3, 1, "factor on the torque curve, as for a restrictor"),
    ENGINE_INERTIA("engine.inertiaKgM2", Unit.KILOGRAM_SQUARE_METRE, 0, 10, 0, "inertia turning with the engine"),
    OVERRUN_DRAG(
            "engine.overrunDragPercent",
            Unit.PERCENT,
            0,
            100,
            20,
            "engine drag off the throttle at the rev limit, in percent of the greatest torque; falls to half towards rest"),
    FINAL_DRIVE("gearbox.finalDrive", Unit.NONE, 0.5, 20, "ratio of the final drive"),
    EFFICIENCY("gearbox.efficiency", Unit.NONE, 0.3, 1, 0.95, "share of engine torque that reaches the wheels"),
    SHIFT_TIME("gearbox.shiftTimeS", Unit.SECOND, 0, 2, 0, "time without drive in an upshift"),
    LOWEST_GEAR(
            "gearbox.lowestGearOnRoad",
            Unit.NONE,
            1,
            20,
            1,
            "lowest gear used on a lap; gears below it serve for pulling away only"),
    WHEEL_RADIUS("drive.wheelRadiusM", Unit.METRE, 0.1, 1, "rolling radius of the driven wheels"),
    WHEEL_INERTIA(
            "drive.wheelInertiaKgM2", Unit.KILOGRAM_SQUARE_METRE, 0, 50, 0, "inertia of all four wheels together"),
    TYRE_SLIP(
            "drive.tyreSlipPercent",
            Unit.PERCENT,
            0,
            30,
            0,
            "slip of the driven wheels: by how much they turn faster than the road passes"),
    FRONT_DRIVE_SHARE(
            "drive.frontSharePercent", Unit.PERCENT, 0, 100, "share of drive at the front: 0 rear, 100 front drive"),
    POWER_LOCK_FRONT(
            "drive.front.powerLockPercent", Unit.PERCENT, 0, 100, 0, "locking of the front differential, drive"),
    POWER_LOCK_REAR("drive.rear.powerLockPercent", Unit.PERCENT, 0, 100, 0, "locking of the rear differential, drive"),
    COAST_LOCK_FRONT(
            "drive.front.coastLockPercent", Unit.PERCENT, 0, 100, 0, "locking of the front differential, overrun"),
    COAST_LOCK_REAR(
            "drive.rear.coastLockPercent", Unit.PERCENT, 0, 100, 0, "locking of the rear differential, overrun"),
    PRELOAD_FRONT(
            "drive.front.preloadNm",
            Unit.NEWTON_METRE,
            0,
            1000,
            0,
            "preload of the front differential: torque that turns one wheel with the other held and the gearbox free"),
    PRELOAD_REAR(
            "drive.rear.preloadNm",
            Unit.NEWTON_METRE,
            0,
            1000,
            0,
            "preload of the rear differential: torque that turns one wheel with the other held and the gearbox free"),
    CENTRE_LOCK(
            "drive.centreLockPercent",
            Unit.PERCENT,
            0,
            100,
            0,
            "locking of the differential between the axles of a four-wheel drive; 100: none, both turn as one"),
    // brakes
    BRAKE_FRONT_SHARE("brakes.frontSharePercent", Unit.PERCENT, 0, 100, "share of brake force at the front axle"),
    BRAKE_MAX_FORCE("brakes.maxForceN", Unit.NEWTON, 100, 1e6, 1e6, "greatest total brake force the system makes"),
    LIGHT_WHEEL(
            "brakes.lightWheelPercent",
            Unit.PERCENT,
            0,
            100,
            50,
            "brake force of an axle whose inner wheel is off the road, in percent of the outer wheel's grip; 0: no wheel locks");

    private static final Map<String, Quantity> BY_PATH =
            Stream.of(values()).collect(Collectors.toUnmodifiableMap(Quantity::path, quantity -> quantity));

    private final String path;
    private final Unit unit;
    private final double min;
    private final double max;
    private final double standard;
    private final String meaning;

    Quantity(String path, Unit unit, double min, double max, String meaning) {
        this(path, unit, min, max, Double.NaN, meaning);
    }

    Quantity(String path, Unit unit, double min, double max, double standard, String meaning) {
        this.path = path;
        this.unit = unit;
        this.min = min;
        this.max = max;
        this.standard = standard;
        this.meaning = meaning;
    }

    /** The quantity of this path, or null. */
    static Quantity ofPath(String path) {
        return BY_PATH.get(path);
    }

    /** Path in a car document and name in a sweep, its unit in the suffix. */
    public String path() {
        return path;
    }

    /** Unit of the value. */
    public Unit unit() {
        return unit;
    }

    /** Least value allowed. */
    public double min() {
        return min;
    }

    /** Greatest value allowed. */
    public double max() {
        return max;
    }

    /** Whether a car document must give it. */
    public boolean isRequired() {
        return Double.isNaN(standard);
    }

    /** Value if the document leaves it out; NaN if it must not. */
    public double standard() {
        return standard;
    }

    /** What it is, in a few words. */
    public String meaning() {
        return meaning;
    }

    /** Returns {@code value} if it lies in the range. */
    public double checked(double value) {
        return Check.inRange(path, value, min, max);
    }
}
