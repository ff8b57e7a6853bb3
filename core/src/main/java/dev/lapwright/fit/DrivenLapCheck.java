package dev.lapwright.fit;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/** Looks at a lap's channels by themselves, before any track is known. */
final class DrivenLapCheck {
    private static final int LEAST_SAMPLES = 50;
    /** A pedal may read a little beyond its ends. */
    private static final double PEDAL_SLACK = 0.1;

    private DrivenLapCheck() {}

    static void check(
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
}
