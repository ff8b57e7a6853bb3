package dev.lapwright.results.car;

import dev.lapwright.aero.Wing;
import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Report of all quantities of a car: each with unit, range, value and meaning. */
public final class QuantitiesReport {
    /** A quantity; NaN where it has no range of its own, as a gear ratio, which lies between its neighbours. */
    private record Row(String name, String unit, double min, double max, double value, String meaning) {}

    private static final Table<Row> TABLE = Table.<Row>of("Quantities")
            .words("name", "quantity", Row::name)
            .words("unit", "unit", Row::unit)
            .number("min", "from", "", Numbers::plain, Row::min)
            .number("max", "to", "", Numbers::plain, Row::max)
            .number("value", "value", "", Numbers::plain, Row::value)
            .value("meaning", Row::meaning);

    private QuantitiesReport() {}

    /** What is said of a car's quantities, for people and machines. */
    public static Report of(Car car) {
        List<Row> rows = rows(car);
        return new Report()
                .title("Quantities of " + Report.verbatim(car.name()), "")
                .rows(TABLE, rows)
                .field("kind", "car")
                .field("name", car.name())
                .field("quantities", TABLE, rows);
    }

    private static List<Row> rows(Car car) {
        List<Row> rows = new ArrayList<>();
        for (Quantity q : Quantity.values()) {
            rows.add(new Row(q.path(), q.unit().symbol(), q.min(), q.max(), car.value(q), q.meaning()));
        }
        for (String name :
                car.quantityNames().subList(rows.size(), car.quantityNames().size())) {
            Optional<Wing> wing = car.wings().stream()
                    .filter(w -> name.equals("aero.wings." + w.name() + ".angleDeg"))
                    .findFirst();
            rows.add(new Row(
                    name,
                    car.unitOf(name).symbol(),
                    wing.map(Wing::minAngleDeg).orElse(Double.NaN),
                    wing.map(Wing::maxAngleDeg).orElse(Double.NaN),
                    car.value(name),
                    wing.isPresent() ? "angle of the wing" : "gear ratio"));
        }
        return rows;
    }
}
