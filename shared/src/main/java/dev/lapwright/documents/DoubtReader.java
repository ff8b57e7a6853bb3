package dev.lapwright.documents;

import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.text.Excerpt;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.NearestWord;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Reader of what a car document says of how well its quantities are known. */
final class DoubtReader {
    static final NumberField DEVIATION = size("standardDeviation", "one standard deviation, in the quantity's unit");
    static final NumberField LIMIT = size("limit", "how far off it is at most, in the quantity's unit");
    static final NumberField DEVIATION_PERCENT =
            percent("standardDeviationPercent", "one standard deviation, percent of its value");
    static final NumberField LIMIT_PERCENT = percent("limitPercent", "how far off it is at most, percent of its value");
    static final NumberField WITH_THOSE_ABOVE = NumberField.only(
            "withThoseAbove", Unit.NONE, -1, 1, "correlation of its error with those of each quantity above");

    /** Words for where a value comes from. */
    static final Map<String, CarDoubt.Source> SOURCES = Arrays.stream(CarDoubt.Source.values())
            .collect(Collectors.toMap(
                    source -> source.name().toLowerCase(Locale.ROOT),
                    source -> source,
                    (a, b) -> a,
                    LinkedHashMap::new));

    private static final List<NumberField> SIZES = List.of(DEVIATION, DEVIATION_PERCENT, LIMIT, LIMIT_PERCENT);
    private static final double LEAST = 1e-6;
    private static final double MOST_PERCENT = 100;

    private final FaultList faults;
    private final Set<String> quantities;
    private final Map<Quantity, Double> values;

    /**
     * @param quantities names of all that a doubt may be of
     * @param values those of the car, as far as they are given
     */
    DoubtReader(FaultList faults, Set<String> quantities, Map<Quantity, Double> values) {
        this.faults = faults;
        this.quantities = quantities;
        this.values = values;
    }

    private static NumberField size(String name, String meaning) {
        return NumberField.only(name, Unit.NONE, LEAST, NumberField.UNBOUNDED, meaning);
    }

    private static NumberField percent(String name, String meaning) {
        return NumberField.only(name, Unit.NONE, LEAST, MOST_PERCENT, meaning);
    }

    /** Names of the four ways to give a size, of which one stands. */
    static List<String> sizes() {
        return SIZES.stream().map(NumberField::name).toList();
    }

    /** Nothing where the section is absent or has faults, which have been reported. */
    CarDoubt read(ObjectReader section) {
        if (!section.isPresent()) {
            return CarDoubt.NONE;
        }
        Map<String, CarDoubt.Size> sizes = new LinkedHashMap<>();
        for (ObjectReader row : section.objects("quantities")) {
            readSize(row, sizes);
        }
        List<String> names = new ArrayList<>();
        List<double[]> rows = new ArrayList<>();
        for (ObjectReader row : section.objects("correlations")) {
            String name = quantity(row);
            if (!row.has(WITH_THOSE_ABOVE.name())) {
                row.missing(WITH_THOSE_ABOVE.name(), WITH_THOSE_ABOVE.meaning() + ", [] for the first");
            }
            double[] above = row.numbers(WITH_THOSE_ABOVE);
            row.close();
            if (above.length != rows.size()) {
                row.meaning(
                        WITH_THOSE_ABOVE.name(),
                        "it has " + above.length + " numbers below " + rows.size() + " quantities",
                        "give one for each quantity above, none for the first");
            }
            names.add(name);
            rows.add(above);
        }
        if (!faults.isEmpty()) {
            return CarDoubt.NONE;
        }
        try {
            return new CarDoubt(sizes, names, square(rows));
        } catch (InvalidValueException e) {
            faults.meaning(section.place(), section.path(), e);
            return CarDoubt.NONE;
        }
    }

    private void readSize(ObjectReader row, Map<String, CarDoubt.Size> sizes) {
        String name = quantity(row);
        double amount = Double.NaN;
        NumberField given = null;
        int count = 0;
        for (NumberField field : SIZES) {
            double value = row.optional(field, Double.NaN);
            if (row.has(field)) {
                amount = value;
                given = field;
                count++;
            }
        }
        String source = row.choice("source", SOURCES.keySet(), "estimated");
        if (count == 0) {
            row.missing(sizes(), "size of the doubt");
        }
        row.close();
        if (count > 1) {
            row.form(given.name(), "the size of the doubt is given twice", "keep one of " + String.join(", ", sizes()));
        }
        if (name != null && sizes.containsKey(name)) {
            row.meaning("quantity", "the doubt of " + name + " is given twice", "give it once");
        }
        if (name != null && source != null && count == 1 && !Double.isNaN(amount)) {
            boolean percent = given == DEVIATION_PERCENT || given == LIMIT_PERCENT;
            boolean limit = given == LIMIT || given == LIMIT_PERCENT;
            if (!percent && amount > mostOf(name)) {
                row.meaning(
                        given.name(),
                        Check.text(amount) + " is more than all of its value, " + Check.text(mostOf(name)),
                        "give less");
            }
            sizes.put(name, new CarDoubt.Size(amount, percent, limit, SOURCES.get(source)));
        }
    }

    /** The value of what is above nothing by its kind, as a mass; infinite for all else, as an angle. */
    private double mostOf(String name) {
        return values.entrySet().stream()
                .filter(one -> one.getKey().path().equals(name) && one.getKey().min() > 0)
                .mapToDouble(Map.Entry::getValue)
                .findFirst()
                .orElse(Double.POSITIVE_INFINITY);
    }

    private String quantity(ObjectReader row) {
        if (!row.has("quantity")) {
            row.missing("quantity", "path of the quantity, as in chassis.massKg");
        }
        String name = row.text("quantity", null, ObjectReader.MAX_NAME_LENGTH);
        if (name != null && !quantities.contains(name)) {
            row.meaning(
                    "quantity",
                    "this car has no quantity " + Excerpt.of(name),
                    NearestWord.remedy(name, quantities, "name one as in chassis.massKg"));
            return null;
        }
        return name;
    }

    private static double[][] square(List<double[]> rows) {
        int n = rows.size();
        double[][] square = new double[n][n];
        for (int i = 0; i < n; i++) {
            square[i][i] = 1;
            for (int j = 0; j < i; j++) {
                square[i][j] = rows.get(i)[j];
                square[j][i] = square[i][j];
            }
        }
        return square;
    }

    /** What is read back by {@link #read}, as maps and lists. */
    static Map<String, Object> tree(CarDoubt doubt) {
        Map<String, Object> section = new LinkedHashMap<>();
        List<Object> sizes = new ArrayList<>();
        doubt.quantities().forEach((name, size) -> {
            Map<String, Object> row = new LinkedHashMap<>();
            row.put("quantity", name);
            NumberField field = size.limit()
                    ? size.percent() ? LIMIT_PERCENT : LIMIT
                    : size.percent() ? DEVIATION_PERCENT : DEVIATION;
            row.put(field.name(), size.amount());
            row.put("source", size.source().name().toLowerCase(Locale.ROOT));
            sizes.add(row);
        });
        section.put("quantities", sizes);
        if (!doubt.correlated().isEmpty()) {
            List<Object> rows = new ArrayList<>();
            double[][] correlation = doubt.correlation();
            for (int i = 0; i < correlation.length; i++) {
                Map<String, Object> row = new LinkedHashMap<>();
                row.put("quantity", doubt.correlated().get(i));
                List<Double> above = new ArrayList<>();
                for (int j = 0; j < i; j++) {
                    above.add(correlation[i][j]);
                }
                row.put(WITH_THOSE_ABOVE.name(), above);
                rows.add(row);
            }
            section.put("correlations", rows);
        }
        return section;
    }
}
