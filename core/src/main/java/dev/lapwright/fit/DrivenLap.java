package dev.lapwright.fit;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * Log of one driven lap: one value a sample in each channel. A channel that was not logged is an empty array. Arrays are
 * copied in and out.
 *
 * @param name for people, as in "lap 3 of monday.csv"
 * @param distance from the line, m, never falling
 * @param speed m/s
 * @param time s, rising, or empty
 * @param throttle 0 to 1, or empty
 * @param brake 0 to 1, 0 is off the brake, or empty
 * @param gear 1 and up, 0 is neutral, or empty
 * @param longitudinalAcceleration as an accelerometer reads it, m/s², positive speeding up, or empty
 * @param lateralAcceleration m/s², positive in a left turn, or empty
 * @param steering angle and yaw rate, as far as they were logged
 */
public record DrivenLap(
        String name,
        double[] distance,
        double[] speed,
        double[] time,
        double[] throttle,
        double[] brake,
        double[] gear,
        double[] longitudinalAcceleration,
        double[] lateralAcceleration,
        Steering steering) {
    private static final double[] NOT_LOGGED = {};

    /**
     * Channels of steering; one that was not logged is an empty array. Arrays are copied in and out.
     *
     * @param angle at the steering wheel or the front wheels, rad, positive to the left
     * @param yawRate rad/s, positive in a left turn
     */
    public record Steering(double[] angle, double[] yawRate) {
        /** Nothing logged. */
        public static final Steering NONE = new Steering(NOT_LOGGED, NOT_LOGGED);

        public Steering {
            angle = angle.clone();
            yawRate = yawRate.clone();
        }

        @Override
        public double[] angle() {
            return angle.clone();
        }

        @Override
        public double[] yawRate() {
            return yawRate.clone();
        }
    }

    private static final int LEAST_SAMPLES = 50;
    /** A pedal may read a little beyond its ends. */
    private static final double PEDAL_SLACK = 0.1;

    public DrivenLap {
        distance = checked(name, "distance (m)", distance, distance.length);
        speed = checked(name, "speed (m/s)", speed, distance.length);
        time = optional(name, "time (s)", time, distance.length);
        throttle = optional(name, "throttle", throttle, distance.length);
        brake = optional(name, "brake", brake, distance.length);
        gear = optional(name, "gear", gear, distance.length);
        longitudinalAcceleration =
                optional(name, "longitudinal acceleration (m/s²)", longitudinalAcceleration, distance.length);
        lateralAcceleration = optional(name, "lateral acceleration (m/s²)", lateralAcceleration, distance.length);
        steering = new Steering(
                optional(name, "steering angle (rad)", steering.angle(), distance.length),
                optional(name, "yaw rate (rad/s)", steering.yawRate(), distance.length));
        check(name, distance, speed, time, throttle, brake);
    }

    /** A lap whose steering was not logged. */
    public DrivenLap(
            String name,
            double[] distance,
            double[] speed,
            double[] time,
            double[] throttle,
            double[] brake,
            double[] gear,
            double[] longitudinalAcceleration,
            double[] lateralAcceleration) {
        this(
                name,
                distance,
                speed,
                time,
                throttle,
                brake,
                gear,
                longitudinalAcceleration,
                lateralAcceleration,
                Steering.NONE);
    }

    /** The same with its steering. */
    public DrivenLap with(Steering logged) {
        return new DrivenLap(
                name,
                distance,
                speed,
                time,
                throttle,
                brake,
                gear,
                longitudinalAcceleration,
                lateralAcceleration,
                logged);
    }

    private static double[] optional(String lap, String channel, double[] values, int count) {
        return values.length == 0 ? NOT_LOGGED : checked(lap, channel, values, count);
    }

    private static double[] checked(String lap, String channel, double[] values, int count) {
        if (values.length != count) {
            throw new InvalidValueException(
                    lap,
                    "its " + channel + " has " + values.length + " samples, its distance " + count,
                    "give each channel one value a sample, or leave it out");
        }
        for (int i = 0; i < values.length; i++) {
            Check.finite(lap + ": " + channel + " of sample " + (i + 1), values[i]);
        }
        return values.clone();
    }

    private static void check(
            String name, double[] distance, double[] speed, double[] time, double[] throttle, double[] brake) {
        if (distance.length < LEAST_SAMPLES) {
            throw new InvalidValueException(
                    name,
                    "it has " + distance.length + " samples",
                    "a fit needs " + LEAST_SAMPLES + " at least, and 5 a second or more to see a corner");
        }
        for (int i = 1; i < distance.length; i++) {
            if (!(distance[i] >= distance[i - 1])) {
                throw new InvalidValueException(
                        name,
                        "its distance falls from " + Check.text(distance[i - 1]) + " m to " + Check.text(distance[i])
                                + " m at sample " + (i + 1),
                        "perhaps two laps are glued together: give each lap by itself, distance from the line");
            }
            if (time.length > 0 && !(time[i] >= time[i - 1])) {
                throw new InvalidValueException(
                        name,
                        "its time falls from " + Check.text(time[i - 1]) + " s to " + Check.text(time[i])
                                + " s at sample " + (i + 1),
                        "perhaps two laps are glued together: give each lap by itself");
            }
        }
        for (int i = 0; i < speed.length; i++) {
            if (!(speed[i] >= 0)) {
                throw new InvalidValueException(
                        name,
                        "its speed at sample " + (i + 1) + " is " + Check.text(speed[i]) + " m/s",
                        "speeds are 0 or above");
            }
        }
        pedal(name, "throttle", throttle);
        pedal(name, "brake", brake);
    }

    private static void pedal(String name, String pedal, double[] values) {
        for (int i = 0; i < values.length; i++) {
            if (!(values[i] >= -PEDAL_SLACK && values[i] <= 1 + PEDAL_SLACK)) {
                throw new InvalidValueException(
                        name,
                        "its " + pedal + " at sample " + (i + 1) + " is " + Check.text(values[i]),
                        "give it as a share from 0 to 1: perhaps it is in percent, or a pressure");
            }
        }
    }

    /** A lap of distance and speed alone. */
    public static DrivenLap of(String name, double[] distance, double[] speed) {
        return new DrivenLap(
                name, distance, speed, NOT_LOGGED, NOT_LOGGED, NOT_LOGGED, NOT_LOGGED, NOT_LOGGED, NOT_LOGGED);
    }

    /**
     * Distance of a log that has none, m: speed (m/s) summed over time (s) by the trapezium rule, from 0.
     *
     * @throws InvalidValueException if a value is no number, time falls or the lengths differ
     */
    public static double[] distanceFrom(double[] time, double[] speed) {
        if (time.length != speed.length) {
            throw new InvalidValueException(
                    "log", time.length + " times and " + speed.length + " speeds", "give one speed for each time");
        }
        double[] distance = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            Check.finite("time (s) of sample " + (i + 1), time[i]);
            Check.finite("speed (m/s) of sample " + (i + 1), speed[i]);
            if (i > 0) {
                double step = time[i] - time[i - 1];
                if (!(step >= 0)) {
                    throw new InvalidValueException(
                            "time (s) of sample " + (i + 1),
                            Check.text(time[i]) + " lies before the time above it, " + Check.text(time[i - 1]),
                            "perhaps two laps are glued together: give each lap by itself");
                }
                distance[i] = distance[i - 1] + 0.5 * step * (speed[i] + speed[i - 1]);
            }
        }
        return distance;
    }

    @Override
    public double[] distance() {
        return distance.clone();
    }

    @Override
    public double[] speed() {
        return speed.clone();
    }

    @Override
    public double[] time() {
        return time.clone();
    }

    @Override
    public double[] throttle() {
        return throttle.clone();
    }

    @Override
    public double[] brake() {
        return brake.clone();
    }

    @Override
    public double[] gear() {
        return gear.clone();
    }

    @Override
    public double[] longitudinalAcceleration() {
        return longitudinalAcceleration.clone();
    }

    @Override
    public double[] lateralAcceleration() {
        return lateralAcceleration.clone();
    }

    /** Number of samples. */
    public int count() {
        return distance.length;
    }

    /** Distance from the first sample to the last, m. */
    public double length() {
        return distance[distance.length - 1] - distance[0];
    }
}
