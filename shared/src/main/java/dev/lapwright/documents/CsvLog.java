package dev.lapwright.documents;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.survey.LapPick;
import dev.lapwright.track.survey.LoggedLap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The laps of a log under its headings: a new one begins where the lap's number changes, or distance or time starts anew. */
final class CsvLog {
    private static final List<CsvColumn> COLUMNS =
            List.of(CsvColumn.DISTANCE, CsvColumn.TIME, CsvColumn.SPEED, CsvColumn.LATERAL_ACCELERATION, CsvColumn.LAP);

    private final String source;
    private final CsvHeader header;
    private final double[] distance;
    private final double[] time;
    private final double[] speed;
    private final double[] acceleration;
    private final LapStarts starts;

    CsvLog(String source, CsvHeader header, CsvRows values) {
        this.source = source;
        this.header = header;
        distance = values.numbers(CsvColumn.DISTANCE);
        time = header.has(CsvColumn.TIME) ? values.times() : new double[distance.length];
        speed = values.numbers(CsvColumn.SPEED);
        acceleration = values.numbers(CsvColumn.LATERAL_ACCELERATION);
        starts = new LapStarts(
                distance, header.has(CsvColumn.TIME) ? time : new double[0], values.numbers(CsvColumn.LAP));
        values.throwIfAny();
    }

    SurveyFile file() {
        if (header.has(CsvColumn.TIME)) {
            LogUnits.check(
                    source, header.has(CsvColumn.DISTANCE) ? distance : new double[0], time, speed, starts::beginsAnew);
        }
        List<LapPick.RecordedLap> laps = new ArrayList<>();
        starts.ranges().forEach(range -> laps.add(lap(range.from(), range.to())));
        return new SurveyFile(null, new double[0], laps, header.said(COLUMNS));
    }

    private LapPick.RecordedLap lap(int from, int to) {
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
        return new LapPick.RecordedLap(log(s, v, Arrays.copyOfRange(acceleration, from, to)), duration);
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
}
