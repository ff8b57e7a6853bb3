package dev.lapwright.samples;

import dev.lapwright.files.DocumentException;
import java.util.Arrays;
import java.util.function.IntPredicate;

/** Check for units taken for others: they show where a log's distance, time and speed do not go together. */
public final class UnitMismatch {
    /** No log has so few samples a second. */
    private static final double LONG_STEP = 5;

    private UnitMismatch() {}

    /**
     * Looks at steps of time, and at the distance that speed makes in them.
     *
     * @param distance m; empty if it is not logged
     * @param time s
     * @param speed m/s
     * @param beginsAnew whether a sample begins a new lap
     * @throws DocumentException that says what it looks like
     */
    public static void check(String source, double[] distance, double[] time, double[] speed, IntPredicate beginsAnew) {
        if (speed.length < 2) {
            return;
        }
        double driven = 0;
        double come = 0;
        double[] steps = new double[speed.length - 1];
        for (int i = 1; i < speed.length; i++) {
            steps[i - 1] = time[i] - time[i - 1];
            if (!beginsAnew.test(i)) {
                driven += (speed[i - 1] + speed[i]) / 2 * steps[i - 1];
                come += distance.length > 0 ? distance[i] - distance[i - 1] : 0;
            }
        }
        Arrays.sort(steps);
        double usual = steps[steps.length / 2];
        if (usual > LONG_STEP) {
            throw new DocumentException(
                    source,
                    "its samples are " + Math.round(usual) + " s apart, which looks like milliseconds",
                    "put the unit in the heading, as in time (ms)");
        }
        if (distance.length > 0) {
            checkRatio(source, driven / come);
        }
    }

    private static void checkRatio(String source, double ratio) {
        String looks = "";
        if (near(ratio, 3.6)) {
            looks = "speeds look like km/h taken for m/s, or distances like ones in other units";
        } else if (near(ratio, 1 / 0.44704)) {
            looks = "speeds look like mph taken for m/s";
        } else if (near(ratio, 1 / 3.6)) {
            looks = "speeds look like m/s taken for km/h";
        } else if (near(ratio, 1000) || near(ratio, 1000 / 3.6)) {
            looks = "distances look like km taken for m, or times like milliseconds";
        } else if (near(ratio, 0.3048)) {
            looks = "distances look like feet taken for m";
        }
        if (!looks.isEmpty()) {
            throw new DocumentException(
                    source,
                    "its speeds make " + Math.rint(100 * ratio) / 100 + " times its distance in its times; " + looks,
                    "put the units in the headings, as in speed (km/h)");
        }
    }

    private static boolean near(double ratio, double wanted) {
        return Math.abs(ratio / wanted - 1) < 0.04;
    }
}
