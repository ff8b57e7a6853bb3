package dev.lapwright.fit;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Locale;

/**
 * Validation of logged laps: whether each can be of this car and track and in the right units, with what it looks like otherwise;
 * and where along the track it starts, by correlation with the modelled speeds.
 */
final class LapValidator {
    /** A lap that is not as long as the track by this share is another: lines differ by less. */
    private static final double LENGTH_SLACK = 0.05;

    private static final double WALKING = 2;
    private static final double SLOWEST = 0.65;
    private static final double FASTEST = 1.45;
    private static final double CLOCK_SLACK = 0.05;
    private static final double MOST_SPACING = 25;
    /** Laps of one car on one circuit agree in shape to 0.9 and more; laps of two circuits by chance only. */
    private static final double LEAST_CORRELATION = 0.6;
    /** Below this scatter over the mean there is no shape to compare: a skid-pad. */
    private static final double FLAT = 0.02;

    private static final double MOST_OFFSET = 250;
    private static final double OFFSET_STEP = 5;
    /** Units that a speed is often in by mistake, and by how much it is then too high as m/s. */
    private static final List<Mistake> MISTAKES = List.of(
            new Mistake(3.6, "km/h taken as m/s"),
            new Mistake(2.237, "mph taken as m/s"),
            new Mistake(1.609, "km/h taken as mph"),
            new Mistake(1 / 1.609, "mph taken as km/h"),
            new Mistake(1 / 2.237, "m/s taken as mph"),
            new Mistake(1 / 3.6, "m/s taken as km/h"));

    private record Mistake(double factor, String words) {}

    private final Track track;
    private final SpeedCurve model;
    private final double modelTime;

    LapValidator(Track track, SpeedCurve model, double modelTime) {
        this.track = track;
        this.model = model;
        this.modelTime = modelTime;
    }

    /** How far offsets are searched, m. */
    double mostOffset() {
        return Math.min(MOST_OFFSET, LENGTH_SLACK * track.length());
    }

    /** Throws what is wrong with a lap. */
    void check(DrivenLap lap) {
        double length = lap.length();
        double time = timeBySpeed(lap);
        double mean = length / time;
        double ratio = mean / (track.length() / modelTime);
        if (!(mean >= WALKING)) {
            throw new InvalidValueException(
                    lap.name(),
                    String.format(Locale.ROOT, "its mean speed is %.2f m/s, slower than walking", mean),
                    "give a lap driven at speed; perhaps its distance or speed is in other units than m and m/s");
        }
        checkClock(lap, time);
        if (!(ratio >= SLOWEST && ratio <= FASTEST)) {
            throw new InvalidValueException(
                    lap.name(),
                    String.format(Locale.ROOT, "its mean speed is %.2f times that of the car on this track", ratio),
                    lookOf(ratio, "choose the car and the circuit that were driven, and see to the unit of its speed"));
        }
        checkLength(lap);
        double spacing = LapCells.spacing(lap, 0.9);
        if (!(spacing <= MOST_SPACING)) {
            throw new InvalidValueException(
                    lap.name(),
                    String.format(Locale.ROOT, "its samples lie %.0f m apart", spacing),
                    "a fit needs one every 25 m at least: log 5 times a second or more");
        }
    }

    private void checkClock(DrivenLap lap, double time) {
        double[] clock = lap.time();
        if (clock.length == 0) {
            return;
        }
        double elapsed = clock[clock.length - 1] - clock[0];
        double ratio = elapsed / time;
        if (!(Math.abs(ratio - 1) <= CLOCK_SLACK)) {
            throw new InvalidValueException(
                    lap.name(),
                    String.format(
                            Locale.ROOT,
                            "by its clock it takes %.2f s, by its speed along its distance %.2f s",
                            elapsed,
                            time),
                    lookOf(ratio, "see to the units of time, distance and speed: s, m and m/s"));
        }
    }

    private static String lookOf(double ratio, String otherwise) {
        for (Mistake mistake : MISTAKES) {
            if (Math.abs(Math.log(ratio / mistake.factor())) < Math.log(1.15)) {
                return "its speed looks like " + mistake.words() + ": name its unit";
            }
        }
        return otherwise;
    }

    private void checkLength(DrivenLap lap) {
        double ratio = lap.length() / track.length();
        if (Math.abs(ratio - 1) <= LENGTH_SLACK) {
            return;
        }
        String problem = String.format(
                Locale.ROOT,
                "it is %.0f m long, %.2f times the %.0f m of %s",
                lap.length(),
                ratio,
                track.length(),
                track.name());
        double whole = Math.rint(ratio);
        String remedy = "choose the circuit that was driven";
        if (whole >= 2 && Math.abs(ratio - whole) <= LENGTH_SLACK * whole) {
            remedy = String.format(
                    Locale.ROOT,
                    "it looks like %.0f laps glued together: give each lap by itself, from line to line",
                    whole);
        } else if (ratio < 1) {
            remedy = "give a whole lap from line to line, or choose the circuit that was driven";
        }
        throw new InvalidValueException(lap.name(), problem, remedy);
    }

    /** Time that a lap takes by its speeds along its distance, s. */
    static double timeBySpeed(DrivenLap lap) {
        double[] distance = lap.distance();
        double[] speed = lap.speed();
        double time = 0;
        for (int i = 1; i < distance.length; i++) {
            double mean = 0.5 * (speed[i] + speed[i - 1]);
            time += (distance[i] - distance[i - 1]) / Math.max(mean, 0.1);
        }
        return Math.max(time, 1e-9);
    }

    /** The offset (m) at which the lap's shape agrees best with the model's. */
    double offset(LapCells cells) {
        if (deviation(cells.speed) < FLAT || deviation(modelled(cells, 0)) < FLAT) {
            return 0;
        }
        // An open run begins where it begins.
        double reach = track.isClosed() ? mostOffset() : 0;
        double best = best(cells, -reach, reach);
        double agreement = correlation(cells, best);
        if (agreement >= LEAST_CORRELATION) {
            return best;
        }
        double anywhere = best(cells, 0, track.isClosed() ? track.length() : 0);
        double found = correlation(cells, anywhere);
        String remedy = found > 0.9
                ? String.format(
                        Locale.ROOT,
                        "it looks like this circuit begun %.0f m on: give distance from this circuit's line",
                        anywhere)
                : "it looks like another circuit, one driven the other way round, or quite another car: choose the circuit and"
                        + " the car that were driven";
        throw new InvalidValueException(
                cells.lap.name(),
                String.format(
                        Locale.ROOT,
                        "its speeds rise and fall elsewhere than on %s (correlation %.2f)",
                        track.name(),
                        agreement),
                remedy);
    }

    private double best(LapCells cells, double from, double to) {
        double best = 0;
        double most = Double.NEGATIVE_INFINITY;
        int steps = (int) Math.ceil((to - from) / OFFSET_STEP);
        for (int i = 0; i <= steps; i++) {
            double offset = from + (to - from) * i / steps;
            double agreement = correlation(cells, offset);
            if (agreement > most) {
                most = agreement;
                best = offset;
            }
        }
        return best;
    }

    private double[] modelled(LapCells cells, double offset) {
        double[] means = new double[cells.count];
        for (int c = 0; c < means.length; c++) {
            means[c] = model.mean(cells.edge(c, offset, 0), cells.edge(c + 1, offset, 0));
        }
        return means;
    }

    private double correlation(LapCells cells, double offset) {
        double[] means = modelled(cells, offset);
        double n = 0;
        double x = 0;
        double y = 0;
        for (int c = 0; c < means.length; c++) {
            if (cells.sampled[c]) {
                n++;
                x += means[c];
                y += cells.speed[c];
            }
        }
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int c = 0; c < means.length; c++) {
            if (cells.sampled[c]) {
                double a = means[c] - x / n;
                double b = cells.speed[c] - y / n;
                xx += a * a;
                xy += a * b;
                yy += b * b;
            }
        }
        return xy / Math.sqrt(xx * yy);
    }

    private static double deviation(double[] values) {
        double sum = 0;
        double squares = 0;
        for (double value : values) {
            sum += value;
            squares += value * value;
        }
        double mean = sum / values.length;
        return Math.sqrt(Math.max(0, squares / values.length - mean * mean)) / mean;
    }
}
