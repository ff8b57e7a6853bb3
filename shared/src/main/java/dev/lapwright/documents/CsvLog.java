package dev.lapwright.documents;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.survey.LoggedLap;
import dev.lapwright.track.survey.RecordedLap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The laps of a log under its headings: a new one begins where the lap's number changes, or distance or time starts anew. */
final class CsvLog {
    private static final List<CsvColumn> COLUMNS =
            List.of(CsvColumn.DISTANCE, CsvColumn.TIME, CsvColumn.SPEED, CsvColumn.LATERAL_ACCELERATION, CsvColumn.LAP);
    /** What a distance may fall by without beginning a new lap: jitter, m. */
    private static final double JITTER = 10;
    /** No log has so few samples a second. */
    private static final double LONG_STEP = 5;

    private final String source;
    private final CsvHeader header;
    private final double[] distance;
    private final double[] time;
    private final double[] speed;
    private final double[] acceleration;
    private final double[] lap;

    CsvLog(String source, CsvHeader header, CsvRows values) {
        this.source = source;
        this.header = header;
        distance = values.numbers(CsvColumn.DISTANCE);
        time = header.has(CsvColumn.TIME) ? values.times() : new double[distance.length];
        speed = values.numbers(CsvColumn.SPEED);
        acceleration = values.numbers(CsvColumn.LATERAL_ACCELERATION);
        lap = values.numbers(CsvColumn.LAP);
        values.throwIfAny();
    }

    SurveyFile file() {
        checkTimes();
        List<RecordedLap> laps = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= speed.length; i++) {
            if (i == speed.length || beginsAnew(i)) {
                laps.add(lap(from, i));
                from = i;
            }
        }
        return new SurveyFile(null, new double[0], laps, header.said(COLUMNS));
    }

    private boolean beginsAnew(int i) {
        return lap[i] != lap[i - 1]
                || distance[i] < distance[i - 1] - JITTER
                || (header.has(CsvColumn.TIME) && time[i] < time[i - 1]);
    }

    private RecordedLap lap(int from, int to) {
        double[] v = Arrays.copyOfRange(speed, from, to);
        double[] t = Arrays.copyOfRange(time, from, to);
        double[] s;
        if (header.has(CsvColumn.DISTANCE)) {
            s = Arrays.copyOfRange(distance, from, to);
            for (int i = 1; i < s.length; i++) {
                s[i] = Math.max(s[i], s[i - 1]);
            }
        } else {
            s = distances(t, v);
        }
        double duration = header.has(CsvColumn.TIME) ? t[t.length - 1] - t[0] : Double.NaN;
        return new RecordedLap(log(s, v, Arrays.copyOfRange(acceleration, from, to)), duration);
    }

    private double[] distances(double[] t, double[] v) {
        try {
            return LoggedLap.distances(t, v);
        } catch (InvalidValueException e) {
            throw new DocumentException(source, e.place() + ": " + e.problem(), e.remedy());
        }
    }

    private LoggedLap log(double[] s, double[] v, double[] a) {
        try {
            return new LoggedLap(s, v, a);
        } catch (InvalidValueException e) {
            throw new DocumentException(source, e.place() + ": " + e.problem(), e.remedy());
        }
    }

    /** Steps of time, and the distance that speed makes in them, tell units that were taken for others. */
    private void checkTimes() {
        if (!header.has(CsvColumn.TIME) || speed.length < 2) {
            return;
        }
        double driven = 0;
        double come = 0;
        double[] steps = new double[speed.length - 1];
        for (int i = 1; i < speed.length; i++) {
            steps[i - 1] = time[i] - time[i - 1];
            if (!beginsAnew(i)) {
                driven += (speed[i - 1] + speed[i]) / 2 * steps[i - 1];
                come += distance[i] - distance[i - 1];
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
        if (header.has(CsvColumn.DISTANCE)) {
            checkRatio(driven / come);
        }
    }

    private void checkRatio(double ratio) {
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
