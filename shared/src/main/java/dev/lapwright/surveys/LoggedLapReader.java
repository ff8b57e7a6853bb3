package dev.lapwright.surveys;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.samples.LapStarts;
import dev.lapwright.samples.SampleColumn;
import dev.lapwright.samples.SampleHeader;
import dev.lapwright.samples.SampleRows;
import dev.lapwright.samples.UnitMismatch;
import dev.lapwright.track.survey.LapPick;
import dev.lapwright.track.survey.LoggedLap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Reader of logged laps that become a circuit: a new lap begins where the lap's number changes, or distance or time starts
 * anew.
 */
final class LoggedLapReader {
    private static final List<SampleColumn> COLUMNS = List.of(
            SampleColumn.DISTANCE,
            SampleColumn.TIME,
            SampleColumn.SPEED,
            SampleColumn.LATERAL_ACCELERATION,
            SampleColumn.LAP);

    private final String source;
    private final SampleHeader header;
    private final double[] distance;
    private final double[] time;
    private final double[] speed;
    private final double[] acceleration;
    private final LapStarts starts;

    LoggedLapReader(String source, SampleHeader header, SampleRows values) {
        this.source = source;
        this.header = header;
        distance = values.numbers(SampleColumn.DISTANCE);
        time = header.has(SampleColumn.TIME) ? values.times() : new double[distance.length];
        speed = values.numbers(SampleColumn.SPEED);
        acceleration = values.numbers(SampleColumn.LATERAL_ACCELERATION);
        starts = new LapStarts(
                distance, header.has(SampleColumn.TIME) ? time : new double[0], values.numbers(SampleColumn.LAP));
        values.checkOrder(SampleColumn.TIME, time, 0);
        values.checkOrder(SampleColumn.DISTANCE, distance, LapStarts.JITTER);
        values.throwIfAny();
    }

    SurveyFile file() {
        if (header.has(SampleColumn.TIME)) {
            UnitMismatch.check(
                    source,
                    header.has(SampleColumn.DISTANCE) ? distance : new double[0],
                    time,
                    speed,
                    starts::beginsAnew);
        }
        List<LapPick.RecordedLap> laps = new ArrayList<>();
        starts.ranges().forEach(range -> laps.add(lap(range.from(), range.to())));
        return new SurveyFile(
                null, new double[0], laps, header.said(COLUMNS), header.passedOver(COLUMNS), new double[0]);
    }

    private LapPick.RecordedLap lap(int from, int to) {
        double[] v = Arrays.copyOfRange(speed, from, to);
        double[] t = Arrays.copyOfRange(time, from, to);
        double[] s;
        if (header.has(SampleColumn.DISTANCE)) {
            s = Arrays.copyOfRange(distance, from, to);
            for (int i = 1; i < s.length; i++) {
                s[i] = Math.max(s[i], s[i - 1]);
            }
        } else {
            s = distances(t, v);
        }
        double duration = header.has(SampleColumn.TIME) ? t[t.length - 1] - t[0] : Double.NaN;
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
