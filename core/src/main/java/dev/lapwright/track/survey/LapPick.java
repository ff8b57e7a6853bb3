package dev.lapwright.track.survey;

import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/**
 * The choice of one of several laps: the one asked for, or else the fastest if the times are known, or else the first.
 *
 * @param number from 1
 * @param count how many there were
 * @param how a sentence for people
 */
public record LapPick(int number, int count, String how) {
    /** A lap whose length differs more from that of the others went another way, or was not whole. */
    private static final double SAME_LENGTH = 0.05;
    /** A slower lap was driven on another line: warming up, or in traffic. Ours, no source. */
    private static final double SAME_PACE = 0.05;

    /**
     * Picks one.
     *
     * @param durations of the laps, s; NaN where not known
     * @param wanted the number from 1, or empty
     * @throws InvalidValueException if there is no such lap
     */
    static LapPick of(double[] durations, OptionalInt wanted) {
        int count = durations.length;
        if (wanted.isPresent()) {
            int number = wanted.getAsInt();
            if (number < 1 || number > count) {
                throw new InvalidValueException(
                        "lap",
                        "there is no lap " + number,
                        count == 1 ? "one whole lap is there" : count + " whole laps are there");
            }
            return new LapPick(number, count, said(number, count, durations, "as asked"));
        }
        int fastest = -1;
        for (int i = 0; i < count; i++) {
            if (durations[i] > 0 && (fastest < 0 || durations[i] < durations[fastest])) {
                fastest = i;
            }
        }
        return fastest < 0
                ? new LapPick(1, count, said(1, count, durations, "the first; no times are known"))
                : new LapPick(fastest + 1, count, said(fastest + 1, count, durations, "the fastest"));
    }

    /**
     * Other laps to pool with the one picked: those as fast, to {@value #SAME_PACE}, the likest first; without times those next to it.
     *
     * @param durations of the laps, s; NaN where not known
     * @param most how many at most
     * @return their indices, from 0
     */
    List<Integer> like(double[] durations, int most) {
        double own = durations[number - 1];
        boolean timed = own > 0;
        List<Integer> others = new ArrayList<>();
        for (int i = 0; i < durations.length; i++) {
            boolean same = !timed || Math.abs(durations[i] - own) <= SAME_PACE * own;
            if (i != number - 1 && same) {
                others.add(i);
            }
        }
        others.sort(Comparator.comparingDouble(i -> timed ? Math.abs(durations[i] - own) : Math.abs(i - number + 1)));
        return List.copyOf(others.subList(0, Math.min(most, others.size())));
    }

    private static String said(int number, int count, double[] durations, String why) {
        double duration = durations[number - 1];
        return "lap " + number + " of " + count + " whole " + (count == 1 ? "lap" : "laps") + " taken, "
                + (count == 1 ? "the only one" : why)
                + (duration > 0 ? String.format(Locale.ROOT, ", %.2f s", duration) : "");
    }

    /** The laps of a log that are as long as the others; the first and the last are often not whole. */
    static List<RecordedLap> whole(List<RecordedLap> laps) {
        double[] lengths =
                laps.stream().mapToDouble(RecordedLap::length).sorted().toArray();
        double usual = lengths[lengths.length / 2];
        List<RecordedLap> whole = new ArrayList<>();
        for (RecordedLap lap : laps) {
            if (Math.abs(lap.length() - usual) <= SAME_LENGTH * usual) {
                whole.add(lap);
            }
        }
        return whole;
    }

    /** A lap of a log, and how it was picked. */
    public record OfLog(LoggedLap log, LapPick pick) {}

    /**
     * Picks a lap of a log.
     *
     * @param laps at least one
     * @param wanted the number among the whole ones from 1, or empty
     * @throws InvalidValueException if there is no such lap
     */
    public static OfLog ofLog(List<RecordedLap> laps, OptionalInt wanted) {
        if (laps.isEmpty()) {
            throw new InvalidValueException("log", "it has no samples", "give one whole lap");
        }
        List<RecordedLap> whole = whole(laps);
        LapPick pick = of(whole.stream().mapToDouble(RecordedLap::duration).toArray(), wanted);
        return new OfLog(whole.get(pick.number() - 1).log(), pick);
    }

    /**
     * One of several laps in a log.
     *
     * @param log its samples
     * @param duration s; NaN if it is not known
     */
    public record RecordedLap(LoggedLap log, double duration) {
        double length() {
            double[] distance = log.distance();
            return distance.length == 0 ? 0 : distance[distance.length - 1] - distance[0];
        }
    }
}
