package dev.lapwright.lap;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.powertrain.Differential;

/**
 * Loads and grip of a car's four wheels at a place and a speed: what every model of its forces shares. Aero areas, axle loads, load transfer,
 * peaks over load and lean, stiffness, the laws of differential and brakes are those of the lap (sections 3 to 7 of docs/theory.md). Wheels
 * are numbered 0 inner front, 1 outer front, 2 inner rear, 3 outer rear; inner is the side that the tyres push to. Mutable scratch of one
 * thread; allocates nothing after it was made.
 */
public final class FourWheels {
    /** Number of wheels. */
    public static final int WHEELS = 4;

    private final Vehicle car;
    private final WheelForces wheels;

    private double lateralCurvature;
    private double lateralGravity;
    private double normalGravity;
    private double normalCurvature;
    private double climb;
    private double grip;
    private double headWind;
    private boolean left;

    /** Of a car as set up on its day. */
    public FourWheels(Vehicle vehicle) {
        car = vehicle;
        wheels = new WheelForces(vehicle);
        at(Place.level(0));
    }

    /** Moves to a place. */
    public void at(Place place) {
        lateralCurvature = place.lateralCurvature();
        lateralGravity = place.lateralGravity();
        normalGravity = place.normalGravity();
        normalCurvature = place.normalCurvature();
        climb = place.climb();
        grip = place.grip();
        headWind = place.headWind();
    }

    /** Moves to a row of a road. */
    void at(double[] rows, int k) {
        lateralCurvature = rows[k + Road.LATERAL_CURVATURE];
        lateralGravity = rows[k + Road.LATERAL_GRAVITY];
        normalGravity = rows[k + Road.NORMAL_GRAVITY];
        normalCurvature = rows[k + Road.NORMAL_CURVATURE];
        climb = rows[k + Road.CLIMB];
        grip = rows[k + Road.GRIP];
        headWind = rows[k + Road.HEAD_WIND];
    }

    /** Takes up a speed, m/s, at the place: demands, air and sides. */
    public void drive(double speed) {
        wheels.at(speed, lateralCurvature, lateralGravity, normalGravity, normalCurvature, climb, grip, headWind);
        left = wheels.lateral >= 0;
    }

    /**
     * Puts load on the wheels.
     *
     * @param along acceleration along the car's own axis as an accelerometer in it reads it, m/s²
     * @param across the same to the inside, m/s²
     * @return whether the car is on the ground
     */
    public boolean load(double along, double across) {
        return wheels.stand(along, across, grip, left);
    }

    /** Whether the left wheels are the inner ones. */
    public boolean left() {
        return left;
    }

    /** What the tyres must supply across the path, towards the inside, m/s²; not negative. */
    public double lateral() {
        return Math.abs(wheels.lateral);
    }

    /** Curvature of the path in the road's plane, 1/m, positive where it bends to the inside: not so on a steep bank. */
    public double curvature() {
        return left ? lateralCurvature : -lateralCurvature;
    }

    /** Gravity against the direction of travel, m/s². */
    public double climb() {
        return climb;
    }

    /** Drag and rolling resistance under the last load, N. */
    public double resistance() {
        return wheels.drag + wheels.rolling;
    }

    /** Load of a wheel, N. */
    public double wheelLoad(int wheel) {
        double half = 0.5 * (wheel < 2 ? wheels.frontLoad : wheels.rearLoad);
        double transfer = wheel < 2 ? wheels.frontTransfer : wheels.rearTransfer;
        return wheel % 2 == 0 ? half - transfer : half + transfer;
    }

    /** Most that a wheel gives along, N. */
    public double peakAlong(int wheel) {
        return pair(wheel).peakAlong(wheel % 2 != 0);
    }

    /** Most that a wheel gives across, N. */
    public double peakAcross(int wheel) {
        return pair(wheel).peakAcross(wheel % 2 != 0);
    }

    /** Force across of a wheel per slip angle at none, N/rad; along, times {@link #slipStiffness}. */
    public double stiffness(int wheel) {
        return pair(wheel).stiffness(wheel % 2 != 0);
    }

    /** Stiffness along the tyre over that across it. */
    public double slipStiffness() {
        return car.front.slipStiffness;
    }

    private WheelPair pair(int wheel) {
        return wheel < 2 ? wheels.front : wheels.rear;
    }

    /** Share that has been taken of what tips the car over, sideways or over an axle. */
    public double tipping() {
        return Math.max(wheels.rollUtilisation, wheels.pitchUtilisation);
    }

    /** Whether it is rather sideways that the car tips. */
    public boolean rolls() {
        return wheels.rollUtilisation >= wheels.pitchUtilisation;
    }

    /**
     * How much more the outer wheel of an axle brakes than the inner one, of what both do, -1 to 1: as at the most that the policy for a light
     * wheel lets the axle brake with, the weaker wheel at its peak then.
     */
    public double brakeSplit(Axle axle) {
        return (axle == Axle.FRONT ? wheels.front : wheels.rear).brakeSplit();
    }

    /** Mass with fuel, kg. */
    public double mass() {
        return car.mass;
    }

    /** Wheelbase, m. */
    public double wheelbase() {
        return car.wheelbase;
    }

    /** Share of the weight at the front axle, 0 to 1. */
    public double frontShare() {
        return car.frontShare;
    }

    /** Track of an axle, m. */
    public double track(Axle axle) {
        return data(axle).track;
    }

    /** Toe-in of each wheel of an axle, rad. */
    public double toe(Axle axle) {
        return data(axle).toe;
    }

    /** Differential of an axle; open where nothing drives it. */
    public Differential differential(Axle axle) {
        return data(axle).differential;
    }

    private AxleData data(Axle axle) {
        return axle == Axle.FRONT ? car.front : car.rear;
    }

    /** Share of the drive that goes to the front axle, 0 to 1. */
    public double frontDriveShare() {
        return car.frontDriveShare;
    }

    /** Locking value of the differential between the axles, 0 to 1. */
    public double centreLock() {
        return car.centreLock;
    }

    /** Share of the brake force at the front axle, 0 to 1. */
    public double frontBrakeShare() {
        return car.frontBrakeShare;
    }

    /** Greatest total brake force of the system, N. */
    public double brakeMaxForce() {
        return car.brakeMaxForce;
    }

    /** Inertia of the two wheels of an axle over the radius squared, kg. */
    public double axleInertia() {
        return car.propulsion.axleInertia;
    }

    /** Exponent of the friction ellipse. */
    public double ellipseExponent() {
        return car.ellipseExponent;
    }

    /** Share of the fall of slip stiffness that counts, 0 to 1. */
    public double slipStiffnessFall() {
        return car.front.slipStiffnessFall;
    }

    /** Greatest cornering stiffness of a wheel over its load at the car's weight on four wheels, 1/rad. */
    public double stiffnessPerLoad() {
        double load = 0.25 * car.mass * StandardAtmosphere.GRAVITY;
        return Math.max(car.front.stiffnessPerLoad(load), car.rear.stiffnessPerLoad(load));
    }
}
