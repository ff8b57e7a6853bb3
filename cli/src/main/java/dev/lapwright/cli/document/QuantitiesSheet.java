package dev.lapwright.cli.document;

import dev.lapwright.aero.Wing;
import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.TextTable;
import dev.lapwright.report.Numbers;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** All quantities of a car, each with unit, range and value. */
public final class QuantitiesSheet implements Sheet {
    private final Car car;

    public QuantitiesSheet(Car car) {
        this.car = car;
    }

    private record Row(String name, String unit, double min, double max, double value, String meaning) {}

    private List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        for (Quantity q : Quantity.values()) {
            rows.add(new Row(q.path(), q.unit().symbol(), q.min(), q.max(), car.value(q), q.meaning()));
        }
        for (String name :
                car.quantityNames().subList(rows.size(), car.quantityNames().size())) {
            Wing wing = car.wings().stream()
                    .filter(w -> name.equals("aero.wings." + w.name() + ".angleDeg"))
                    .findFirst()
                    .orElse(null);
            String unit = car.unitOf(name).symbol();
            double value = car.value(name);
            // A gear ratio lies between those of its neighbours.
            rows.add(
                    wing == null
                            ? new Row(name, unit, Double.NaN, Double.NaN, value, "gear ratio")
                            : new Row(name, unit, wing.minAngleDeg(), wing.maxAngleDeg(), value, "angle of the wing"));
        }
        return rows;
    }

    @Override
    public void print(Console console) {
        console.line(console.bold("Quantities of " + car.name()));
        TextTable table = new TextTable()
                .words("quantity")
                .words("unit")
                .numbers("from", "")
                .numbers("to", "")
                .numbers("value", "");
        for (Row row : rows()) {
            table.row(
                    row.name(),
                    row.unit(),
                    Numbers.plain(row.min()),
                    Numbers.plain(row.max()),
                    Numbers.plain(row.value()));
        }
        table.printTo(console);
    }

    @Override
    public Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("kind", "car");
        tree.put("name", car.name());
        List<Object> quantities = new ArrayList<>();
        for (Row row : rows()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", row.name());
            one.put("unit", row.unit());
            one.put("min", row.min());
            one.put("max", row.max());
            one.put("value", row.value());
            one.put("meaning", row.meaning());
            quantities.add(one);
        }
        tree.put("quantities", quantities);
        return tree;
    }
}
