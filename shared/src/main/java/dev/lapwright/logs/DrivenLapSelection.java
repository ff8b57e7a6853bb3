package dev.lapwright.logs;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fit.DrivenLap;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Laps of some logs that a circuit can be judged by: whole ones, and of those the ones driven through at pace.
 *
 * @param laps in order; at least one; unmodifiable
 * @param leftOut which were not taken and why, one sentence each; unmodifiable
 */
public record DrivenLapSelection(List<DrivenLap> laps, List<String> leftOut) {
    /** A lap as logged is this much longer or shorter than the circuit at most: wheels slip, lines differ. */
    static final double LENGTH_TOLERANCE = 0.05;
    /** As near to a ratio of units a length must be to be taken for one in another unit. */
    private static final double UNIT_TOLERANCE = 0.02;
    /** Slower than this times the fastest whole lap is no lap at pace: common practice, no source. */
    static final double PACE = 1.07;
    /** Slower than this, m/s, somewhere on a closed circuit: an out lap, an in lap, or a spin. */
    private static final double CREEP = 4;

    private static final double METRE_PER_SECOND_IN_KMH = 3.6;

    public DrivenLapSelection {
        laps = List.copyOf(laps);
        leftOut = List.copyOf(leftOut);
    }

    /**
     * Picks laps.
     *
     * @param numbers of the laps wanted in each log; empty for all that are whole and driven at pace
     * @throws InvalidValueException if a number is in no log, if a lap wanted is not whole, or none is left
     */
    public static DrivenLapSelection of(List<DrivenLog> logs, Track track, List<Integer> numbers) {
        return numbers.isEmpty() ? clean(logs, track) : chosen(logs, track, numbers);
    }

    private static DrivenLapSelection chosen(List<DrivenLog> logs, Track track, List<Integer> numbers) {
        List<DrivenLap> laps = new ArrayList<>();
        List<String> others = new ArrayList<>();
        for (int number : numbers) {
            boolean found = false;
            for (DrivenLog log : logs) {
                for (DrivenLog.Lap lap : log.laps()) {
                    if (lap.number() == number) {
                        String looks = length(lap, track);
                        if (!looks.isEmpty()) {
                            throw new InvalidValueException(lap.lap().name(), looks, remedy(looks));
                        }
                        found = true;
                    }
                }
            }
            if (!found) {
                throw new InvalidValueException(
                        "--lap " + number, "no log has a lap of this number", "there are: " + numbers(logs));
            }
        }
        for (DrivenLog log : logs) {
            for (DrivenLog.Lap lap : log.laps()) {
                if (numbers.contains(lap.number())) {
                    laps.add(lap.lap());
                } else {
                    others.add(lap.lap().name());
                }
            }
        }
        return new DrivenLapSelection(
                laps, others.isEmpty() ? List.of() : List.of("Not chosen: " + String.join(", ", others) + "."));
    }

    private static DrivenLapSelection clean(List<DrivenLog> logs, Track track) {
        double fastest = Double.POSITIVE_INFINITY;
        for (DrivenLog log : logs) {
            for (DrivenLog.Lap lap : log.laps()) {
                boolean whole = length(lap, track).isEmpty();
                fastest = whole ? Math.min(fastest, lap.duration()) : fastest;
            }
        }
        List<DrivenLap> laps = new ArrayList<>();
        List<String> leftOut = new ArrayList<>();
        String first = "";
        for (DrivenLog log : logs) {
            for (DrivenLog.Lap lap : log.laps()) {
                String looks = length(lap, track);
                String why = looks.isEmpty() ? pace(lap, track, fastest) : looks;
                if (why.isEmpty()) {
                    laps.add(lap.lap());
                } else {
                    leftOut.add(sentence(lap.lap().name(), why));
                    first = first.isEmpty() ? why : first;
                }
            }
        }
        if (laps.isEmpty()) {
            boolean one = leftOut.size() == 1;
            throw new InvalidValueException(
                    one ? logs.get(0).laps().get(0).lap().name() : "logs",
                    one
                            ? first
                            : "none of " + leftOut.size() + " laps is a whole lap at pace: "
                                    + leftOut.get(0).replaceAll("\\.$", ""),
                    remedy(first));
        }
        return new DrivenLapSelection(laps, leftOut);
    }

    private static String sentence(String name, String why) {
        return Character.toUpperCase(name.charAt(0)) + name.substring(1) + ": " + why + ".";
    }

    private static String numbers(List<DrivenLog> logs) {
        List<String> numbers = new ArrayList<>();
        logs.forEach(log -> log.laps().forEach(lap -> numbers.add(Integer.toString(lap.number()))));
        return String.join(", ", numbers.stream().distinct().toList());
    }

    /** Why a lap is none of this circuit; empty if its length is right. */
    private static String length(DrivenLog.Lap lap, Track track) {
        double ratio = lap.lap().length() / track.length();
        if (Math.abs(ratio - 1) <= LENGTH_TOLERANCE) {
            return "";
        }
        String is = "it is " + metres(lap.lap().length()) + " m long and " + track.name() + " " + metres(track.length())
                + " m";
        return is + looksLike(ratio);
    }

    private static String looksLike(double ratio) {
        for (int laps = 2; laps <= 9; laps++) {
            if (Math.abs(ratio / laps - 1) <= LENGTH_TOLERANCE) {
                return ", which looks like " + (laps == 2 ? "two" : laps) + " laps glued together";
            }
        }
        if (near(ratio, 0.001)) {
            return ", which looks like km taken for m";
        }
        if (near(ratio, 1000)) {
            return ", which looks like m taken for km";
        }
        if (near(ratio, 1 / 1609.344)) {
            return ", which looks like miles taken for m";
        }
        if (near(ratio, 1 / 0.3048)) {
            return ", which looks like feet taken for m";
        }
        if (near(ratio, 3.6)) {
            return ", which looks like speeds in km/h taken for m/s";
        }
        return ratio < 1 ? ": an out lap, an in lap, or another circuit" : ": another circuit, or a detour";
    }

    private static boolean near(double ratio, double wanted) {
        return Math.abs(ratio / wanted - 1) <= UNIT_TOLERANCE;
    }

    private static String remedy(String looks) {
        if (looks.contains("glued")) {
            return "add a column lap that counts them, or cut the log at the line";
        }
        if (looks.contains("taken for")) {
            return "put the unit in the heading, as in distance (km), or say --column distance=HEADING:km";
        }
        return looks.contains(" m long")
                ? "log whole laps of this circuit, or name the circuit that was driven"
                : "name laps with --lap N to take them all the same";
    }

    /** Why a whole lap was not driven at pace; empty if it was. */
    private static String pace(DrivenLog.Lap lap, Track track, double fastest) {
        double[] speed = lap.lap().speed();
        double least = Double.POSITIVE_INFINITY;
        for (double v : speed) {
            least = Math.min(least, v);
        }
        if (track.isClosed() && least < CREEP) {
            return "it falls to " + Check.text(Math.rint(least * METRE_PER_SECOND_IN_KMH))
                    + " km/h, which looks like an out lap, an in lap or a spin";
        }
        if (lap.duration() > PACE * fastest) {
            return String.format(
                    Locale.ROOT,
                    "its %.1f s are more than %.0f %% of the fastest, %.1f s: an out lap, an in lap or traffic",
                    lap.duration(),
                    100 * PACE,
                    fastest);
        }
        return "";
    }

    private static String metres(double length) {
        return length < 100 ? Check.text(Math.rint(100 * length) / 100) : Check.text(Math.rint(length));
    }
}
