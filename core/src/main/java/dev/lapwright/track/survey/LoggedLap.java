package dev.lapwright.track.survey;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * The record of one lap, sample by sample: distance, speed and lateral acceleration.
 *
 * @param distance m, not falling, one value for each sample; cloned in and out
 * @param speed m/s, as long; cloned in and out
 * @param lateralAcceleration m/s², positive where the car turns left, as long; cloned in and out
 */
public record LoggedLap(double[] distance, double[] speed, double[] lateralAcceleration) {
    /** @throws InvalidValueException if a number is not finite or out of its range, or the distance falls */
    public LoggedLap {
        distance = distance.clone();
        speed = speed.clone();
        lateralAcceleration = lateralAcceleration.clone();
        if (distance.length != speed.length || distance.length != lateralAcceleration.length) {
            throw new InvalidValueException(
                    "log", "distance, speed and lateral acceleration are not equally long", "give one value a sample");
        }
        for (int i = 0; i < distance.length; i++) {
            String sample = "sample " + (i + 1) + ": ";
            Check.inRange(sample + "distance (m)", distance[i], -1e7, 1e7);
            Check.inRange(sample + "speed (m/s)", speed[i], -1, 1000);
            Check.inRange(sample + "lateral acceleration (m/s²)", lateralAcceleration[i], -200, 200);
            if (i > 0 && !(distance[i] >= distance[i - 1])) {
                throw new InvalidValueException(
                        sample + "distance (m)",
                        Check.text(distance[i]) + " lies behind the one before it, " + Check.text(distance[i - 1]),
                        "keep the samples of one lap, in order");
            }
        }
    }

    /**
     * The distances of a log that knows only its times: the integral of speed by the trapezoidal rule.
     *
     * @param time s, not falling
     * @param speed m/s
     * @throws InvalidValueException if a time is not finite or falls
     */
    public static double[] distances(double[] time, double[] speed) {
        double[] distance = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            Check.finite("sample " + (i + 1) + ": time (s)", time[i]);
            if (i > 0) {
                if (!(time[i] >= time[i - 1])) {
                    throw new InvalidValueException(
                            "sample " + (i + 1) + ": time (s)",
                            Check.text(time[i]) + " is before the one above it, " + Check.text(time[i - 1]),
                            "keep the samples of one lap, in order");
                }
                distance[i] = distance[i - 1] + (speed[i - 1] + speed[i]) / 2 * (time[i] - time[i - 1]);
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
    public double[] lateralAcceleration() {
        return lateralAcceleration.clone();
    }

    /** The same with the other sign: for sensors that call a right turn positive. */
    public LoggedLap mirrored() {
        double[] turned = new double[lateralAcceleration.length];
        for (int i = 0; i < turned.length; i++) {
            turned[i] = -lateralAcceleration[i];
        }
        return new LoggedLap(distance, speed, turned);
    }
}
