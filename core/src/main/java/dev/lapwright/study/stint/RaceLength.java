package dev.lapwright.study.stint;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * Length of a race, and what is carried beside it.
 *
 * @param laps of a counted race; 0 for a timed one
 * @param seconds of a timed race, in which the lap under way is finished when time is up; 0 for a counted one
 * @param formationLaps driven before it
 * @param formationShare fuel of a formation lap over that of a racing lap
 * @param reserveLaps racing laps for which fuel is left at the flag
 */
public record RaceLength(int laps, double seconds, int formationLaps, double formationShare, double reserveLaps) {
    /** Share of a racing lap's fuel: common practice, no source; weaving and starts go with low speed. */
    public static final double FORMATION_SHARE = 0.6;

    private static final int MOST_LAPS = 300;

    public RaceLength {
        Check.inRange("seconds", seconds, 0, 6 * 3600);
        Check.inRange("formation laps", formationLaps, 0, 10);
        Check.inRange("fuel of a formation lap over that of a racing lap", formationShare, 0, 1);
        Check.inRange("reserve laps", reserveLaps, 0, 20);
        if (laps > 0 == seconds > 0) {
            throw new InvalidValueException(
                    "race", laps > 0 ? "it is both counted and timed" : "it has no length", "give laps or minutes");
        }
        Check.inRange("laps", laps, 0, MOST_LAPS);
    }

    /** Whether the race is over after so many laps and seconds. */
    boolean isOver(int lapsDone, double secondsDone) {
        if (laps > 0) {
            return lapsDone >= laps;
        }
        if (lapsDone > MOST_LAPS) {
            throw new InvalidValueException(
                    "race", "it is longer than " + MOST_LAPS + " laps", "give fewer minutes: one stint at a time");
        }
        return secondsDone >= seconds;
    }
}
