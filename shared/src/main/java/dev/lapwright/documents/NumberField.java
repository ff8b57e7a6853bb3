package dev.lapwright.documents;

import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/**
 * Number field of a document: its name, which ends in its unit, the units that may stand there instead, and its range. Reader
 * and schema are both made from these, so that they cannot disagree.
 */
final class NumberField {
    /**
     * A limit turned into another unit is rounded to this many digits, so that 200 °C is 392 °F and not a little more.
     */
    private static final MathContext LIMIT_DIGITS = new MathContext(12);
    /** What rounding the limit may let through, as a share of the limit. */
    private static final double LIMIT_SLACK = 1e-11;

    /** A limit as far out as this is there to refuse nonsense and is not worth naming. */
    static final double UNBOUNDED = 1e7;

    private final String base;
    private final List<UnitScale> scales;
    private final List<String> names;
    private final double min;
    private final double max;
    private final String meaning;

    /**
     * @param base name without the unit
     * @param scales ways to write it, the usual one first
     * @param min least value on the usual scale
     * @param max greatest value on the usual scale
     * @param meaning in a few words
     */
    NumberField(String base, List<UnitScale> scales, double min, double max, String meaning) {
        this.base = base;
        this.scales = scales;
        this.min = min;
        this.max = max;
        this.meaning = meaning;
        List<String> all = new ArrayList<>(scales.size());
        for (UnitScale scale : scales) {
            all.add(base + scale.suffix());
        }
        names = List.copyOf(all);
    }

    /** The field of a quantity of the car, under the last part of its path. */
    static NumberField of(Quantity quantity) {
        String path = quantity.path();
        String name = path.substring(path.lastIndexOf('.') + 1);
        String base =
                name.substring(0, name.length() - quantity.unit().fieldSuffix().length());
        return new NumberField(base, UnitScale.of(quantity.unit()), quantity.min(), quantity.max(), quantity.meaning());
    }

    /** A number in a unit that may be replaced by any that converts to it. */
    static NumberField of(String base, Unit unit, double min, double max, String meaning) {
        return new NumberField(base, UnitScale.of(unit), min, max, meaning);
    }

    /** A number in one unit only. */
    static NumberField only(String base, Unit unit, double min, double max, String meaning) {
        return new NumberField(base, UnitScale.only(unit), min, max, meaning);
    }

    /** Name without the unit. */
    String base() {
        return base;
    }

    /** What it is, in a few words. */
    String meaning() {
        return meaning;
    }

    /** Ways to write it, the usual one first. */
    List<UnitScale> scales() {
        return scales;
    }

    /** The usual scale. */
    UnitScale usual() {
        return scales.get(0);
    }

    /** Name of the field on the usual scale. */
    String name() {
        return names.get(0);
    }

    /** Names of the field on all scales, in their order. */
    List<String> names() {
        return names;
    }

    /** Least number that may be written on a scale. */
    double min(UnitScale scale) {
        return limit(min, scale);
    }

    /** Greatest number that may be written on a scale. */
    double max(UnitScale scale) {
        return limit(max, scale);
    }

    private double limit(double onUsualScale, UnitScale scale) {
        UnitScale usual = usual();
        if (scale.suffix().equals(usual.suffix())) {
            return onUsualScale;
        }
        double there = scale.fromModel().applyAsDouble(usual.toModel().applyAsDouble(onUsualScale));
        return new BigDecimal(there).round(LIMIT_DIGITS).doubleValue();
    }

    /** Whether a number written on a scale lies in the range; false for NaN. */
    boolean allows(double written, UnitScale scale) {
        return written >= min(scale) && written <= max(scale);
    }

    /** The model's value for a number written on a scale, held to the model's range where rounding would leave it. */
    double toModel(double written, UnitScale scale) {
        double value = scale.toModel().applyAsDouble(written);
        double least = usual().toModel().applyAsDouble(min);
        double greatest = usual().toModel().applyAsDouble(max);
        double slack = LIMIT_SLACK * Math.max(Math.abs(least), Math.abs(greatest));
        boolean justBelow = value < least && value >= least - slack;
        boolean justAbove = value > greatest && value <= greatest + slack;
        return justBelow ? least : justAbove ? greatest : value;
    }

    /** The number that stands for a value of the model on the usual scale. */
    double fromModel(double value) {
        return usual().fromModel().applyAsDouble(value);
    }

    /** The range on a scale, for people. */
    String range(UnitScale scale) {
        String unit = scale.symbol().isEmpty() ? "" : " " + scale.symbol();
        if (max >= UNBOUNDED) {
            return (min <= -UNBOUNDED ? "a number" : "at least " + Check.text(min(scale))) + unit;
        }
        return Check.text(min(scale)) + " to " + Check.text(max(scale)) + unit;
    }
}
