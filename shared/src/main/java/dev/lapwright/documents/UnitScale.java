package dev.lapwright.documents;

import dev.lapwright.car.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * Scale on which a number of a document may be written: the suffix that its field's name then has, and the rising function that
 * turns what is written into the value the model takes.
 *
 * @param suffix of the field's name
 * @param symbol behind a printed number; empty for a pure number
 * @param toModel from the number in the document to the model's
 * @param fromModel its inverse
 */
record UnitScale(String suffix, String symbol, DoubleUnaryOperator toModel, DoubleUnaryOperator fromModel) {
    /** NIST SP 811 (2008), appendix B.8: pound-force foot to newton metre, 1.355 817 948 331 4004 exactly. */
    private static final double NM_PER_POUND_FORCE_FOOT = 4.4482216152605 * 0.3048;

    private static final UnitScale DEGREE =
            new UnitScale(Unit.DEGREE.fieldSuffix(), Unit.DEGREE.symbol(), Math::toRadians, Math::toDegrees);
    private static final UnitScale RADIAN = identity(Unit.RADIAN.fieldSuffix(), Unit.RADIAN.symbol());
    /** A slope in percent is 100 times its tangent: rise over run. */
    private static final UnitScale TANGENT_PERCENT =
            new UnitScale("Percent", "%", p -> Math.atan(p / 100), a -> 100 * Math.tan(a));

    /** Inclination of a road, to rad; percent first. */
    static final List<UnitScale> SLOPE = List.of(TANGENT_PERCENT, DEGREE, RADIAN);
    /** Inclination of a road, to rad; degrees first. */
    static final List<UnitScale> BANK = List.of(DEGREE, TANGENT_PERCENT, RADIAN);
    /** Torque, to Nm. */
    static final List<UnitScale> TORQUE = List.of(
            identity("Nm", "Nm"),
            new UnitScale("LbfFt", "lbf ft", t -> t * NM_PER_POUND_FORCE_FOOT, t -> t / NM_PER_POUND_FORCE_FOOT));

    private static final Map<Unit, List<UnitScale>> BY_UNIT = byUnit();

    private static Map<Unit, List<UnitScale>> byUnit() {
        Map<Unit, List<UnitScale>> scales = new EnumMap<>(Unit.class);
        for (Unit unit : Unit.values()) {
            scales.put(unit, make(unit, unit));
        }
        return scales;
    }

    /** The unit that it is; empty for a scale that is none, as a slope in percent is not. */
    Optional<Unit> unit() {
        return equals(TANGENT_PERCENT)
                ? Optional.empty()
                : Arrays.stream(Unit.values())
                        .filter(unit -> unit.fieldSuffix().equals(suffix)
                                && unit.symbol().equals(symbol))
                        .findFirst();
    }

    /** The same number in document and model. */
    static UnitScale identity(String suffix, String symbol) {
        return new UnitScale(suffix, symbol, DoubleUnaryOperator.identity(), DoubleUnaryOperator.identity());
    }

    /** One unit alone, for a value the model takes in that unit. */
    static List<UnitScale> only(Unit unit) {
        return List.of(identity(unit.fieldSuffix(), unit.symbol()));
    }

    /** All units that convert to the one the model takes; that one first. */
    static List<UnitScale> of(Unit model) {
        return of(model, model);
    }

    /**
     * All units that convert to the one the model takes, with another as the usual one in documents.
     *
     * <p>A pure number and a percentage have no alternatives: a field's name without a unit would leave open which is
     * meant.
     */
    static List<UnitScale> of(Unit usual, Unit model) {
        return usual == model ? BY_UNIT.get(usual) : make(usual, model);
    }

    private static List<UnitScale> make(Unit usual, Unit model) {
        List<UnitScale> scales = new ArrayList<>();
        for (Unit unit : usual.alternatives()) {
            boolean clear = unit == usual || !usual.convertsTo(Unit.NONE);
            if (clear) {
                scales.add(new UnitScale(
                        unit.fieldSuffix(),
                        unit.symbol(),
                        written -> unit.convert(written, model),
                        value -> model.convert(value, unit)));
            }
        }
        return List.copyOf(scales);
    }
}
