package dev.lapwright.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Notes of a fit in plain sentences: what it did not use, and what looks odd. */
final class FitNotes {
    private static final double ODD_SCALE = 0.01;
    private static final double ODD_DROPPED = 0.15;
    private static final double ODD_GEARS = 0.8;
    private static final double ODD_LIFTED = 0.02;
    private static final int FEW_LAPS = 5;

    private FitNotes() {}

    static List<String> of(List<FitResult.LapFit> laps, List<FitResult.Estimate> estimates, boolean settled) {
        List<String> notes = new ArrayList<>();
        if (!settled) {
            notes.add("The search did not come to rest: take the values as rough, and fit fewer parameters.");
        }
        laps.forEach(lap -> odd(lap, notes));
        for (FitResult.Estimate estimate : estimates) {
            if (estimate.atBound()) {
                notes.add(say(
                        "The %s ended at the end of what is searched: the car, the day or the circuit is another, or the"
                                + " parameter stands in for something else.",
                        estimate.parameter().title()));
            }
        }
        if (any(laps, lap -> lap.throttle().length > 0)) {
            notes.add("Throttle, and brake where it was logged, tell where a driver lifted; they are not fitted.");
        }
        if (any(laps, lap -> lap.gear().length > 0)) {
            notes.add("Gears are compared with the fitted car's; they are not fitted.");
        }
        if (any(laps, lap -> lap.longitudinalAcceleration().length > 0)) {
            notes.add("Longitudinal acceleration is compared with the fitted car's; it is not fitted, since speed over"
                    + " distance tells the same without an accelerometer's tilt and zero.");
        }
        if (any(laps, lap -> lap.lateralAcceleration().length > 0)) {
            notes.add("Lateral acceleration is not used: it follows from speed and the track's curvature.");
        }
        if (any(laps, lap -> lap.steering().yawRate().length > 0)) {
            notes.add("Yaw rate over speed tells the radius driven, its scale by the angle that the circuit turns.");
        }
        if (any(laps, lap -> lap.steering().angle().length > 0)) {
            notes.add(
                    "Steering angle beyond what gentle bends take tells which axle gives up first; nothing else is taken"
                            + " from it.");
        }
        if (laps.size() < FEW_LAPS) {
            notes.add("With fewer than five laps the intervals know nothing of what differs from lap to lap, such as"
                    + " fuel, tyres and the track.");
        }
        notes.add("Grip is what driver, line and tyres used together; a driver with margin in hand fits as less grip.");
        return notes;
    }

    private static boolean any(List<FitResult.LapFit> laps, java.util.function.Predicate<DrivenLap> has) {
        return laps.stream().map(FitResult.LapFit::lap).anyMatch(has);
    }

    private static void odd(FitResult.LapFit lap, List<String> notes) {
        String name = lap.lap().name();
        if (Math.abs(lap.alignment().scale() - 1) > ODD_SCALE) {
            notes.add(say(
                    "%s: its distance was scaled by %.4f; the speed's scale is found by itself.",
                    name, lap.alignment().scale()));
        }
        if (lap.dropped() > ODD_DROPPED) {
            notes.add(say(
                    "%s: %.0f %% of it was left out, which is much: see where in the weights of the trace.",
                    name, 100 * lap.dropped()));
        }
        if (lap.lifted() > ODD_LIFTED) {
            notes.add(say(
                    "%s: over %.0f %% of it the driver had lifted where the car can go flat out; left out.",
                    name, 100 * lap.lifted()));
        }
        if (lap.gearAgreement() < ODD_GEARS) {
            notes.add(say(
                    "%s: its gear is the fitted car's over only %.0f %% of it: see to the ratios, the final drive and where"
                            + " the driver shifts.",
                    name, 100 * lap.gearAgreement()));
        }
    }

    private static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
