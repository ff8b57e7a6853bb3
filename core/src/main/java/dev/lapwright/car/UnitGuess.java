package dev.lapwright.car;

import dev.lapwright.fault.Check;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Guess of the unit in which a value was meant that is out of all bounds in the unit that it was given in: each in which it would be
 * within them. Units that people write and no field takes count as well.
 */
public final class UnitGuess {
    /** More fit by chance where bounds are wide. */
    private static final int MOST_TOLD = 3;

    /** Bounds that lie farther apart than by this factor tell no unit. */
    private static final double WIDE = 1e5;

    private static final int DIGITS = 4;

    /**
     * Unit that no field takes.
     *
     * @param factor what one of it is in the unit wanted
     * @param offset added after that
     */
    private record Foreign(String symbol, double factor, double offset) {
        Foreign(String symbol, double factor) {
            this(symbol, factor, 0);
        }
    }

    /** By definition (NIST SP 811, 2008, appendix B.8); conventional inch of mercury and kilogram-force. */
    private static final Map<Unit, List<Foreign>> FOREIGN = new EnumMap<>(Map.ofEntries(
            Map.entry(Unit.METRE, List.of(new Foreign("cm", 0.01), new Foreign("ft", 0.3048), new Foreign("km", 1000))),
            Map.entry(Unit.MILLIMETRE, List.of(new Foreign("cm", 10))),
            Map.entry(Unit.SQUARE_METRE, List.of(new Foreign("ft²", 0.09290304))),
            Map.entry(
                    Unit.NEWTON,
                    List.of(new Foreign("lbf", 4.4482216152605), new Foreign("kgf", 9.80665), new Foreign("kN", 1000))),
            Map.entry(Unit.NEWTON_PER_MM, List.of(new Foreign("kgf/mm", 9.80665), new Foreign("N/m", 0.001))),
            Map.entry(Unit.KILOPASCAL, List.of(new Foreign("Pa", 0.001))),
            Map.entry(Unit.HECTOPASCAL, List.of(new Foreign("Pa", 0.01), new Foreign("inHg", 33.86389))),
            Map.entry(Unit.CELSIUS, List.of(new Foreign("K", 1, -273.15))),
            Map.entry(Unit.METRE_PER_SECOND, List.of(new Foreign("kn", 1852 / 3600.0))),
            Map.entry(Unit.SECOND, List.of(new Foreign("ms", 0.001))),
            Map.entry(Unit.NEWTON_SECOND_PER_METRE, List.of(new Foreign("N s/mm", 1000))),
            Map.entry(Unit.RPM, List.of(new Foreign("thousand rpm", 1000), new Foreign("rad/s", 30 / Math.PI)))));

    private UnitGuess() {}

    /**
     * What the value is in each unit in which it lies within bounds, as "2650 mm are 2.65 m"; empty where it lies there as it stands, or in
     * no unit.
     *
     * @param unit that it was given in
     * @param least bound in that unit
     * @param most bound in that unit
     */
    public static Optional<String> of(double value, Unit unit, double least, double most) {
        boolean wide = least > 0 && most > WIDE * least;
        // What may be above 1 is a ratio, which nobody writes in percent.
        boolean ratio = unit == Unit.NONE && most > 1;
        if (!Double.isFinite(value) || (value >= least && value <= most) || wide || ratio) {
            return Optional.empty();
        }
        List<String> fits = new ArrayList<>();
        for (Unit other : unit.alternatives()) {
            add(fits, value, name(other), other.convert(value, unit), unit, least, most);
        }
        for (Foreign other : FOREIGN.getOrDefault(unit, List.of())) {
            add(fits, value, other.symbol(), value * other.factor() + other.offset(), unit, least, most);
        }
        return fits.isEmpty() || fits.size() > MOST_TOLD
                ? Optional.empty()
                : Optional.of("another unit may have been meant: " + String.join(", ", fits));
    }

    /** A remedy, and behind it the guess if there is one. */
    public static String remedy(String remedy, double value, Unit unit, double least, double most) {
        return remedy + of(value, unit, least, most).map(guess -> "; " + guess).orElse("");
    }

    private static String name(Unit unit) {
        return unit == Unit.NONE ? "as a share" : unit.symbol();
    }

    private static void add(
            List<String> fits, double value, String symbol, double there, Unit unit, double least, double most) {
        if (there >= least && there <= most) {
            fits.add(Check.text(value) + " " + symbol + (Math.abs(value) <= 1 ? " is " : " are ")
                    + Check.text(
                            new BigDecimal(there).round(new MathContext(DIGITS)).doubleValue())
                    + (unit.symbol().isEmpty() ? "" : " " + unit.symbol()));
        }
    }
}
