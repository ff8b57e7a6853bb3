package dev.lapwright.study.stint;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * A tyre compound and how it wears: after n laps its grip is that of the car's tyre data times
 *
 * <pre>g (1 - w n - w2 max(0, n - n2))</pre>
 *
 * a steady fall, and a steeper one from a lap on. Common practice, no source: laps measured on the tyre give the numbers.
 *
 * @param name for people
 * @param grip g of a new one, 1 for that of the car's document
 * @param wear w, share of grip lost on each lap
 * @param cliffLap n2, laps from which it falls faster
 * @param cliffWear w2, share of grip lost on each lap after those, beside w
 */
public record Compound(String name, double grip, double wear, double cliffLap, double cliffWear) {
    private static final double LEAST_LEFT = 0.5;

    public Compound {
        Check.inRange("compound's grip", grip, 0.5, 1.5);
        Check.inRange("compound's wear", wear, 0, 0.1);
        Check.inRange("lap of the cliff", cliffLap, 0, 1000);
        Check.inRange("wear after the cliff", cliffWear, 0, 0.2);
    }

    /** One that falls steadily. */
    public static Compound steady(String name, double grip, double wear) {
        return new Compound(name, grip, wear, 0, 0);
    }

    /**
     * Grip after so many laps.
     *
     * @throws InvalidValueException if it has lost half of its grip by then
     */
    public double gripAfter(double laps) {
        Check.inRange("laps on the tyre", laps, 0, 10_000);
        double left = 1 - wear * laps - cliffWear * Math.max(0, laps - cliffLap);
        if (!(left >= LEAST_LEFT)) {
            throw new InvalidValueException(
                    "compound " + name,
                    "after " + Check.text(laps) + " laps it would have lost half of its grip",
                    "give less wear, or fewer laps");
        }
        return grip * left;
    }
}
