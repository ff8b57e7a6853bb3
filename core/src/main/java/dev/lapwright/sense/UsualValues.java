package dev.lapwright.sense;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.car.UnitGuess;
import dev.lapwright.fault.Check;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Usual values, beyond which one is told of where another common unit explains it: a mass in pounds, a pressure in psi. Bounds are common practice,
 * no source, and wide: a value within them may be in another unit all the same.
 */
public final class UsualValues {
    /** Least and most, in the quantity's own unit. */
    private record Bounds(double least, double most) {}

    private static final Map<Quantity, Bounds> BY_QUANTITY = new EnumMap<>(Map.ofEntries(
            Map.entry(Quantity.MASS, new Bounds(150, 2500)),
            Map.entry(Quantity.WHEELBASE, new Bounds(1, 4)),
            Map.entry(Quantity.TRACK_FRONT, new Bounds(0.8, 2.2)),
            Map.entry(Quantity.TRACK_REAR, new Bounds(0.8, 2.2)),
            Map.entry(Quantity.WIDTH, new Bounds(0.9, 2.6)),
            Map.entry(Quantity.CG_HEIGHT, new Bounds(0.1, 1)),
            Map.entry(Quantity.SPRING_FRONT, new Bounds(4, 800)),
            Map.entry(Quantity.SPRING_REAR, new Bounds(4, 800)),
            Map.entry(Quantity.VERTICAL_RATE_FRONT, new Bounds(60, 800)),
            Map.entry(Quantity.VERTICAL_RATE_REAR, new Bounds(60, 800)),
            Map.entry(Quantity.RIDE_HEIGHT_FRONT, new Bounds(5, 300)),
            Map.entry(Quantity.RIDE_HEIGHT_REAR, new Bounds(5, 300)),
            Map.entry(Quantity.DRAG_AREA, new Bounds(0, 3)),
            Map.entry(Quantity.LIFT_AREA_FRONT, new Bounds(-1, 5)),
            Map.entry(Quantity.LIFT_AREA_REAR, new Bounds(-1, 5)),
            Map.entry(Quantity.REFERENCE_LOAD_FRONT, new Bounds(400, 20_000)),
            Map.entry(Quantity.REFERENCE_LOAD_REAR, new Bounds(400, 20_000)),
            Map.entry(Quantity.HOT_PRESSURE_FRONT, new Bounds(60, 400)),
            Map.entry(Quantity.HOT_PRESSURE_REAR, new Bounds(60, 400)),
            Map.entry(Quantity.IDEAL_PRESSURE_FRONT, new Bounds(60, 400)),
            Map.entry(Quantity.IDEAL_PRESSURE_REAR, new Bounds(60, 400)),
            Map.entry(Quantity.TYRE_TEMPERATURE, new Bounds(0, 140)),
            Map.entry(Quantity.IDEAL_TEMPERATURE, new Bounds(0, 140)),
            Map.entry(Quantity.REV_LIMIT, new Bounds(2000, 25_000)),
            Map.entry(Quantity.BRAKE_FRONT_SHARE, new Bounds(30, 90))));

    /** A height, m, above which none is. */
    private static final double HIGHEST_CIRCUIT = 4000;

    private UsualValues() {}

    /** Values of a car as set up that another unit would make usual. */
    static List<Oddity> of(Car car) {
        return BY_QUANTITY.entrySet().stream()
                .flatMap(
                        entry -> one(
                                entry.getKey().path(),
                                car.value(entry.getKey()),
                                entry.getKey().unit(),
                                entry.getValue())
                                .stream())
                .toList();
    }

    /** The same of a day. */
    public static List<Oddity> of(Conditions day) {
        double least = Math.rint(StandardAtmosphere.pressure(HIGHEST_CIRCUIT) / 100);
        return Stream.of(
                        one("airTempC", day.airTempC(), Unit.CELSIUS, new Bounds(-20, 48)),
                        // From thin air to a high at the sea.
                        one("airPressureHpa", day.airPressureHpa(), Unit.HECTOPASCAL, new Bounds(least, 1065)),
                        one("humidityPercent", day.humidityPercent(), Unit.PERCENT, new Bounds(3, 100)),
                        one("windSpeedMps", day.windSpeedMps(), Unit.METRE_PER_SECOND, new Bounds(0, 20)))
                .flatMap(Optional::stream)
                .toList();
    }

    private static Optional<Oddity> one(String place, double value, Unit unit, Bounds usual) {
        // Nought is nought in any unit, and stands for what is not given.
        return value == 0
                ? Optional.empty()
                : UnitGuess.of(value, unit, usual.least, usual.most)
                        .map(guess -> new Oddity(
                                place,
                                Check.text(value) + " " + unit.symbol() + "; usual are " + Check.text(usual.least)
                                        + " to " + Check.text(usual.most),
                                guess));
    }
}
