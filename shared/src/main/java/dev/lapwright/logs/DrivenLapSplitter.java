package dev.lapwright.logs;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.SafeFile;
import dev.lapwright.fit.DrivenLap;
import dev.lapwright.samples.LapStarts;
import dev.lapwright.samples.UnitMismatch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Splitter of a log into laps, each with its distance from the line. */
final class DrivenLapSplitter {
    /** Below this a car is not driving: m/s, for times told by speed alone. */
    private static final double CREEP = 1;
    /** A first sample further than this from the line, m, counts from somewhere else. */
    private static final double FAR = 100;

    private final String source;
    private final DrivenChannels channels;
    private final List<String> remarks;
    private final LapStarts starts;

    /** @param remarks to which is added what cannot be used */
    DrivenLapSplitter(String source, DrivenChannels channels, List<String> remarks) {
        this.source = source;
        this.remarks = remarks;
        this.channels = channels;
        int count = channels.speed().length;
        starts = new LapStarts(
                channels.distance().length > 0 ? channels.distance() : new double[count],
                channels.time(),
                channels.lap().length > 0 ? channels.lap() : new double[count]);
    }

    List<DrivenLog.Lap> laps() {
        if (channels.time().length > 0) {
            UnitMismatch.check(source, channels.distance(), channels.time(), channels.speed(), starts::beginsAnew);
        }
        List<DrivenLog.Lap> laps = new ArrayList<>();
        DocumentException first = null;
        int counted = 0;
        for (LapStarts.Range range : starts.ranges()) {
            counted++;
            try {
                laps.add(lap(counted, range));
            } catch (InvalidValueException e) {
                int number = number(counted, range);
                String which = starts.ranges().size() > 1 ? "lap " + number + ": " : "";
                first = first == null ? new DocumentException(source, which + e.problem(), e.remedy()) : first;
                remarks.add("Lap " + number + " cannot be used: " + e.problem() + ".");
            }
        }
        if (laps.isEmpty()) {
            throw first;
        }
        return laps;
    }

    private int number(int counted, LapStarts.Range range) {
        return channels.lap().length > 0 ? (int) Math.rint(channels.lap()[range.from()]) : counted;
    }

    private DrivenLog.Lap lap(int counted, LapStarts.Range range) {
        int number = number(counted, range);
        double[] speed = cut(channels.speed(), range);
        double[] clock = cut(channels.time(), range);
        double[] distance = distance(range, speed, clock);
        double[] time = clock.clone();
        for (int i = 0; i < time.length; i++) {
            time[i] -= clock[0];
        }
        DrivenLap lap = new DrivenLap(
                "lap " + number + " of " + SafeFile.path(source).getFileName(),
                distance,
                speed,
                time,
                cut(channels.throttle(), range),
                cut(channels.brake(), range),
                cut(channels.gear(), range),
                cut(channels.longitudinalAcceleration(), range),
                cut(channels.lateralAcceleration(), range),
                new DrivenLap.Steering(cut(channels.steering(), range), cut(channels.yawRate(), range)));
        return new DrivenLog.Lap(number, lap, duration(distance, speed, time));
    }

    private static double[] cut(double[] channel, LapStarts.Range range) {
        return channel.length == 0 ? channel : Arrays.copyOfRange(channel, range.from(), range.to());
    }

    /** From the line: as logged where it starts anew there; else the line is taken half-way between two laps' samples. */
    private double[] distance(LapStarts.Range range, double[] speed, double[] clock) {
        double[] logged = channels.distance();
        boolean follows = range.from() > 0;
        if (logged.length == 0) {
            double[] driven = DrivenLap.distanceFrom(clock, speed);
            double step = follows ? clock[0] - channels.time()[range.from() - 1] : 0;
            double half = step > 0 && step < 1 ? speed[0] * step / 2 : 0;
            return Arrays.stream(driven).map(s -> s + half).toArray();
        }
        double[] distance = cut(logged, range);
        double origin = 0;
        if (follows && !starts.distanceFalls(range.from())) {
            origin = (logged[range.from() - 1] + logged[range.from()]) / 2;
        } else if (!follows && (distance[0] > FAR || continues(range.to()))) {
            // A log that was begun under way: where the line was is told by nothing better.
            origin = distance[0];
        }
        for (int i = 0; i < distance.length; i++) {
            distance[i] -= origin;
            // Jitter does not take the car back.
            distance[i] = i > 0 ? Math.max(distance[i], distance[i - 1]) : Math.max(0, distance[i]);
        }
        return distance;
    }

    /** Whether distance runs on into the lap that begins at a sample. */
    private boolean continues(int next) {
        return next < channels.speed().length && !starts.distanceFalls(next);
    }

    private static double duration(double[] distance, double[] speed, double[] time) {
        if (time.length > 0) {
            return time[time.length - 1];
        }
        double duration = 0;
        for (int i = 1; i < distance.length; i++) {
            duration += (distance[i] - distance[i - 1]) / Math.max(CREEP, (speed[i - 1] + speed[i]) / 2);
        }
        return duration;
    }
}
