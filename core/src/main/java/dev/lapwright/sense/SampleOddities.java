package dev.lapwright.sense;

import dev.lapwright.track.survey.UnitPlausibility;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;

/**
 * Oddities of rows: of a log's clock, distance and speed, and of surveyed points. Each kind is told at its first places, with how many there
 * are. Bounds are common practice, no source, unless a reason stands beside them.
 */
public final class SampleOddities {
    /** Times of one kind that are told each by itself. */
    private static final int TOLD = 3;
    /** Change of speed that no car makes, m/s²: three times what the best brakes with much downforce do. */
    private static final double NO_CAR = 150;

    /** Steps of the clock or between points beside the usual one that are a gap. */
    private static final double GAP = 8;

    /** Least gap of a clock that counts, s. */
    private static final double LEAST_PAUSE = 0.3;
    /** Distance beside the sum of speed over time, relative: an error of speed of so much moves a fit's grip by twice as much. */
    private static final double SCALE = 0.01;

    /** Flying laps beside their median. */
    private static final double SHORT = 0.93;

    private static final double LONG = 1.3;

    /** Slope between neighbouring points that no road has. */
    private static final double CLIFF = 0.4;

    /** Way to a point over the way past it, from which on it is a spike. */
    private static final double OUT_AND_BACK = 2;

    private final IntFunction<String> place;
    private final List<Oddity> found = new ArrayList<>();

    private SampleOddities(IntFunction<String> place) {
        this.place = place;
    }

    /** Where one kind of oddity was seen. */
    private final class Kind {
        private final String remedy;
        private int seen;
        private int last;

        Kind(String remedy) {
            this.remedy = remedy;
        }

        void at(int row, String problem) {
            if (seen < TOLD) {
                found.add(new Oddity(place.apply(row), problem, remedy));
            }
            seen++;
            last = row;
        }

        void end() {
            if (seen > TOLD) {
                found.add(new Oddity("up to " + place.apply(last), (seen - TOLD) + " more of the same kind", remedy));
            }
        }
    }

    /**
     * Oddities of logged samples.
     *
     * @param time s, as many as speeds; empty if it is not logged
     * @param distance m, as many; empty if it is not logged; may begin anew at a lap
     * @param speed m/s
     * @param place of a sample, for people
     */
    public static List<Oddity> ofLog(double[] time, double[] distance, double[] speed, IntFunction<String> place) {
        SampleOddities oddities = new SampleOddities(place);
        oddities.clock(time);
        oddities.speeds(time, distance, speed);
        oddities.scale(time, distance, speed);
        return List.copyOf(oddities.found);
    }

    /**
     * Oddities of surveyed points in their order.
     *
     * @param x m
     * @param y m
     * @param z m; empty if it was not surveyed
     * @param place of a point, for people
     */
    public static List<Oddity> ofPoints(double[] x, double[] y, double[] z, IntFunction<String> place) {
        SampleOddities oddities = new SampleOddities(place);
        oddities.points(x, y);
        oddities.heights(x, y, z);
        return List.copyOf(oddities.found);
    }

    /**
     * Oddities of lap times off the timing screen: flying laps far from the others.
     *
     * @param time of the flying laps, s
     * @param place of a lap, for people
     */
    public static List<Oddity> ofLaps(double[] time, IntFunction<String> place) {
        SampleOddities oddities = new SampleOddities(place);
        double usual = median(time);
        Kind fast = oddities
        .new Kind("mark it if the course was cut or the clock began late; it makes a run look better than it was");
        Kind slow = oddities.new Kind("mark it as spoilt, or as an out or in lap");
        for (int i = 0; i < time.length; i++) {
            if (time[i] < SHORT * usual) {
                fast.at(i, "a lap of " + Oddity.text(time[i]) + " s among laps of " + Oddity.text(usual) + " s");
            } else if (time[i] > LONG * usual) {
                slow.at(i, "a lap of " + Oddity.text(time[i]) + " s among laps of " + Oddity.text(usual) + " s");
            }
        }
        fast.end();
        slow.end();
        return List.copyOf(oddities.found);
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted.length == 0 ? Double.NaN : sorted[sorted.length / 2];
    }

    private static double[] steps(double[] values) {
        double[] steps = new double[Math.max(0, values.length - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = values[i + 1] - values[i];
        }
        return steps;
    }

    private void clock(double[] time) {
        double[] steps = steps(time);
        double usual = median(steps);
        Kind jumps = new Kind("look at the clock there; what lies across it is no lap");
        Kind back = new Kind("take out the rows that stand twice, or part the file there");
        Kind still = new Kind("take out the row, or give the clock more decimals");
        for (int i = 0; i < steps.length; i++) {
            if (steps[i] < 0) {
                back.at(i + 1, "the clock goes back by " + Oddity.text(-steps[i]) + " s");
            } else if (steps[i] == 0) {
                still.at(i + 1, "the clock stands still");
            } else if (steps[i] > Math.max(GAP * usual, LEAST_PAUSE)) {
                jumps.at(
                        i + 1,
                        "the clock jumps by " + Oddity.text(steps[i]) + " s, where rows are usually "
                                + Oddity.text(usual) + " s apart");
            }
        }
        jumps.end();
        back.end();
        still.end();
    }

    /** Speeds that no car reaches, and single rows from which and to which it would have to jump. */
    private void speeds(double[] time, double[] distance, double[] speed) {
        Kind fast = new Kind("put the unit in the heading, as in speed (km/h), or take out the rows");
        Kind spikes = new Kind("correct the row or take it out");
        for (int i = 0; i < speed.length; i++) {
            if (speed[i] > UnitPlausibility.FASTEST || speed[i] < -1) {
                fast.at(i, "a speed of " + Oddity.text(3.6 * speed[i]) + " km/h");
            } else if (i > 0 && i + 1 < speed.length && !(speed[i] < 0)) {
                double before = change(time, distance, speed, i - 1);
                double after = change(time, distance, speed, i);
                if (before * after < 0 && Math.min(Math.abs(before), Math.abs(after)) > NO_CAR) {
                    spikes.at(
                            i,
                            "the speed is " + Oddity.text(3.6 * speed[i]) + " km/h between "
                                    + Oddity.text(3.6 * speed[i - 1]) + " and " + Oddity.text(3.6 * speed[i + 1])
                                    + ": no car changes so fast");
                }
            }
        }
        fast.end();
        spikes.end();
    }

    /** Change of speed from a row to the next, m/s²; 0 where there is nothing to tell it. */
    private static double change(double[] time, double[] distance, double[] speed, int i) {
        double seconds = 0;
        if (time.length > 0) {
            seconds = time[i + 1] - time[i];
        } else if (distance.length > 0) {
            seconds = (distance[i + 1] - distance[i]) / Math.max(1, 0.5 * (speed[i] + speed[i + 1]));
        }
        return seconds > 0 ? (speed[i + 1] - speed[i]) / seconds : 0;
    }

    /** Distance beside speed summed over time, over rows in which both go on. */
    private void scale(double[] time, double[] distance, double[] speed) {
        double way = 0;
        double summed = 0;
        for (int i = 0; time.length > 0 && distance.length > 0 && i + 1 < speed.length; i++) {
            double seconds = time[i + 1] - time[i];
            double metres = distance[i + 1] - distance[i];
            if (seconds > 0 && seconds < LEAST_PAUSE && metres >= 0) {
                way += metres;
                summed += 0.5 * (speed[i] + speed[i + 1]) * seconds;
            }
        }
        if (summed > 0 && Math.abs(way / summed - 1) > SCALE) {
            found.add(new Oddity(
                    "distance and speed",
                    "speed over time adds up to " + Oddity.text(summed / 1000) + " km, where the distance is "
                            + Oddity.text(way / 1000) + " km",
                    "one of them is scaled wrong by " + Oddity.text(100 * (way / summed - 1))
                            + " %: correct it, as by the rolling radius set in the logger"));
        }
    }

    private void points(double[] x, double[] y) {
        double[] steps = new double[Math.max(0, x.length - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = Math.hypot(x[i + 1] - x[i], y[i + 1] - y[i]);
        }
        double usual = median(steps);
        Kind gaps = new Kind("add points there if the road bends; on a straight it does no harm");
        Kind spikes = new Kind("correct the point or take it out");
        Kind twice = new Kind("take one of them out");
        for (int i = 0; i < steps.length; i++) {
            if (steps[i] == 0) {
                twice.at(i + 1, "the point is that before it");
            } else if (isSpike(x, y, steps, i)) {
                spikes.at(
                        i,
                        "the way goes " + Oddity.text(steps[i])
                                + " m out to this point and back again, where points are usually " + Oddity.text(usual)
                                + " m apart");
            } else if (steps[i] > GAP * usual && !isSpike(x, y, steps, i + 1)) {
                gaps.at(
                        i + 1,
                        Oddity.text(steps[i]) + " m from the point before, where points are usually "
                                + Oddity.text(usual) + " m apart");
            }
        }
        gaps.end();
        spikes.end();
        twice.end();
    }

    /** Whether the way to a point and on from it is much longer than past it. */
    private static boolean isSpike(double[] x, double[] y, double[] steps, int i) {
        return i > 0
                && i < steps.length
                && Math.min(steps[i - 1], steps[i])
                        > OUT_AND_BACK * Math.hypot(x[i + 1] - x[i - 1], y[i + 1] - y[i - 1]);
    }

    private void heights(double[] x, double[] y, double[] z) {
        Kind cliffs = new Kind("correct the elevation; if all are rough, smooth them more, --elevation-smoothing 200");
        for (int i = 1; i + 1 < z.length; i++) {
            double before = (z[i] - z[i - 1]) / Math.max(1, Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]));
            double after = (z[i + 1] - z[i]) / Math.max(1, Math.hypot(x[i + 1] - x[i], y[i + 1] - y[i]));
            if (before * after < 0 && Math.min(Math.abs(before), Math.abs(after)) > CLIFF) {
                cliffs.at(
                        i,
                        "the elevation is " + Oddity.text(z[i]) + " m between " + Oddity.text(z[i - 1]) + " and "
                                + Oddity.text(z[i + 1]));
            }
        }
        cliffs.end();
    }
}
