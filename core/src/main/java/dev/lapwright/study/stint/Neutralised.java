package dev.lapwright.study.stint;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * Laps on which the race is neutralised, as behind a safety car, and what they take. All shares are common practice, no source, unless
 * measured.
 *
 * @param from first such lap, from 1; 0 where there is none
 * @param to last such lap
 * @param pace speed over that of a racing lap
 * @param fuel of such a lap over that of a racing lap
 * @param wear of the tyres on such a lap over that on a racing lap
 * @param stopLoss time that a stop at the end of such a lap costs beside driving on, s: the others are slow too
 */
public record Neutralised(int from, int to, double pace, double fuel, double wear, double stopLoss) {
    /** Speed, fuel and wear where nothing is said: common practice, no source. */
    public static final double USUAL_PACE = 0.65;

    public static final double USUAL_FUEL = 0.5;
    public static final double USUAL_WEAR = 0.3;
    /** What a stop costs then, of what it costs otherwise, where nothing is said: common practice, no source. */
    public static final double USUAL_LOSS = 0.5;

    /** No such laps. */
    public static final Neutralised NEVER = new Neutralised(0, 0, 1, 1, 1, 0);

    public Neutralised {
        Check.inRange("pace of a neutralised lap", pace, 0.2, 1);
        Check.inRange("fuel of a neutralised lap", fuel, 0, 1);
        Check.inRange("wear of a neutralised lap", wear, 0, 1);
        Check.inRange("loss of a stop on a neutralised lap (s)", stopLoss, 0, 600);
        Check.inRange("first neutralised lap", from, 0, 1000);
        if (to < from) {
            throw new InvalidValueException(
                    "neutralised laps",
                    "from lap " + from + " to lap " + to + " is no stretch",
                    "give the first, then the last");
        }
    }

    /** Whether there are such laps. */
    public boolean isAny() {
        return from > 0;
    }

    /** Whether a lap, from 1, is one of them. */
    public boolean holds(int lap) {
        return isAny() && lap >= from && lap <= to;
    }
}
