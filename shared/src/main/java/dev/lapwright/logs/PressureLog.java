package dev.lapwright.logs;

import dev.lapwright.car.Unit;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.text.CsvTable;
import dev.lapwright.text.Excerpt;
import dev.lapwright.text.FaultList;
import dev.lapwright.tyre.TreadTemperatures;
import dev.lapwright.tyre.Wheel;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.StringJoiner;

/**
 * Log of tyre pressures: comma-separated values, a row for each tyre of each run, oldest first, under headings in any order:
 * {@code tyre}, {@code cold}, {@code hot} and, where known, {@code air}, {@code track}, {@code cold temp}, {@code inner},
 * {@code middle}, {@code outer}, each with its unit. What a row leaves out is taken from the day given beside it.
 *
 * @param pairs in the order of the file; unmodifiable
 * @param tread temperatures across each tread, the last of the file; unmodifiable
 * @param columns which heading was taken for what
 */
public record PressureLog(List<PressurePair> pairs, Map<Wheel, TreadTemperatures> tread, String columns) {
    private static final List<PressureColumn> NEEDED =
            List.of(PressureColumn.TYRE, PressureColumn.COLD, PressureColumn.HOT);

    public PressureLog {
        pairs = List.copyOf(pairs);
        tread = Map.copyOf(tread);
    }

    /**
     * Reads it.
     *
     * @param day where a row names no temperatures of air or track; its air pressure holds for all rows
     * @param coldTempC temperature of the tyres when they were set, degC, where a row names none; NaN takes the row's air
     * @param usual unit of pressures whose heading names none
     * @throws DocumentException with all that is wrong with it
     */
    public static PressureLog read(DocumentSource source, PressureDay day, double coldTempC, Unit usual) {
        return new RowReader(source, day, coldTempC, usual).log();
    }

    /** Whether a text has the headings of such a log. */
    public static boolean isOne(DocumentSource source) {
        try {
            List<CsvTable.Row> rows = CsvTable.rows(source, "");
            Set<PressureColumn> found = EnumSet.noneOf(PressureColumn.class);
            for (int i = 0; i < rows.get(0).values().size(); i++) {
                PressureColumn.Heading heading = PressureColumn.of(rows.get(0).text(i));
                if (heading != null) {
                    found.add(heading.column());
                }
            }
            return found.containsAll(NEEDED);
        } catch (InvalidValueException | DocumentException noTable) {
            // What is wrong with it is told by whoever reads it.
            return false;
        }
    }

    private static final class RowReader {
        private final DocumentSource source;
        private final PressureDay day;
        private final double coldTempC;
        private final Unit usual;
        private final FaultList faults;
        private final Map<PressureColumn, Integer> places = new EnumMap<>(PressureColumn.class);
        private final Map<PressureColumn, Unit> units = new EnumMap<>(PressureColumn.class);

        RowReader(DocumentSource source, PressureDay day, double coldTempC, Unit usual) {
            this.source = source;
            this.day = day;
            this.coldTempC = coldTempC;
            this.usual = usual;
            faults = new FaultList(source.name());
        }

        PressureLog log() {
            List<CsvTable.Row> rows = CsvTable.rows(source, "begin it with tyre,cold (psi),hot (psi)");
            String columns = header(rows.get(0));
            faults.throwIfAny();
            List<PressurePair> pairs = new ArrayList<>();
            Map<Wheel, TreadTemperatures> tread = new EnumMap<>(Wheel.class);
            for (CsvTable.Row row : rows.subList(1, rows.size())) {
                try {
                    row(row, pairs, tread);
                } catch (InvalidValueException fault) {
                    faults.meaning(row.line(), fault.place(), fault.problem(), fault.remedy());
                }
            }
            faults.throwIfAny();
            if (pairs.isEmpty()) {
                throw new DocumentException(source.name(), "there is no row under its headings", "log a run");
            }
            return new PressureLog(pairs, tread, columns);
        }

        private String header(CsvTable.Row header) {
            StringJoiner said = new StringJoiner(", ");
            for (int i = 0; i < header.values().size(); i++) {
                PressureColumn.Heading heading = PressureColumn.of(header.text(i));
                if (heading == null) {
                    continue;
                }
                PressureColumn column = heading.column();
                if (places.put(column, i) != null) {
                    faults.form(header.line(), header.text(i), "two columns have this meaning", "keep one");
                }
                Unit assumed = column.isPressure() ? usual : Unit.CELSIUS;
                units.put(column, heading.unit() == null ? assumed : heading.unit());
                if (column != PressureColumn.TYRE) {
                    said.add(header.text(i) + " in " + units.get(column).symbol()
                            + (column.isPressure() ? " gauge" : ""));
                }
            }
            for (PressureColumn column : NEEDED) {
                if (!places.containsKey(column)) {
                    faults.form(
                            header.line(),
                            "",
                            "no column is headed like '" + column.example() + "'",
                            "the headings are: "
                                    + String.join(", ", header.values().toList()));
                }
            }
            return said.toString();
        }

        private void row(CsvTable.Row row, List<PressurePair> pairs, Map<Wheel, TreadTemperatures> tread) {
            double air = number(row, PressureColumn.AIR, day.airTempC());
            double track =
                    number(row, PressureColumn.TRACK, places.containsKey(PressureColumn.AIR) ? air : day.trackTempC());
            double set = number(row, PressureColumn.COLD_TEMPERATURE, Double.isNaN(coldTempC) ? air : coldTempC);
            PressureDay then = new PressureDay(air, track, day.airPressureHpa());
            double cold = number(row, PressureColumn.COLD, Double.NaN);
            double hot = number(row, PressureColumn.HOT, Double.NaN);
            double inner = number(row, PressureColumn.INNER, Double.NaN);
            double middle = number(row, PressureColumn.MIDDLE, Double.NaN);
            double outer = number(row, PressureColumn.OUTER, Double.NaN);
            for (Wheel wheel : Wheel.named(row.text(places.get(PressureColumn.TYRE)))) {
                pairs.add(new PressurePair(wheel, cold, hot, set, then));
                if (!Double.isNaN(inner + middle + outer)) {
                    tread.put(wheel, new TreadTemperatures(inner, middle, outer));
                }
            }
        }

        /** A value in kPa or degC; {@code otherwise} where the file or the row has none. */
        private double number(CsvTable.Row row, PressureColumn column, double otherwise) {
            Integer place = places.get(column);
            String text = place == null ? "" : row.text(place);
            if (text.isEmpty()) {
                if (column.isPressure()) {
                    throw new InvalidValueException(column.example(), "there is no value", "give a gauge pressure");
                }
                return otherwise;
            }
            if (column.isPressure()) {
                return GaugeText.kpa(column.example(), text, units.get(column));
            }
            double number = DecimalText.number(text)
                    .orElseThrow(() -> new InvalidValueException(
                            column.example(), "'" + Excerpt.of(text) + "' is not a number", "give a temperature"));
            return units.get(column).convert(number, Unit.CELSIUS);
        }
    }
}
