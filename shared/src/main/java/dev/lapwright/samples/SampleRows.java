package dev.lapwright.samples;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.text.CsvTable;
import dev.lapwright.text.Excerpt;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.TextPlace;
import java.util.List;
import java.util.OptionalDouble;

/** Numbers of a survey or a logged lap under its headings, in SI. */
public final class SampleRows {
    private static final double DAY = 86_400;

    private final SampleHeader header;
    private final List<CsvTable.Row> rows;
    private final FaultList faults;

    public SampleRows(SampleHeader header, List<CsvTable.Row> rows, FaultList faults) {
        this.header = header;
        this.rows = rows;
        this.faults = faults;
    }

    public SampleHeader header() {
        return header;
    }

    public void throwIfAny() {
        faults.throwIfAny();
    }

    public TextPlace line(int row) {
        return rows.get(row).line();
    }

    /** A column in SI; zeros where the file has none. Faults are gathered. */
    public double[] numbers(SampleColumn column) {
        double[] numbers = new double[rows.size()];
        SampleHeader.Place place = header.place(column);
        if (place != null) {
            for (int i = 0; i < numbers.length; i++) {
                numbers[i] = number(i, column, place);
            }
        }
        return numbers;
    }

    /** A column of angles, rad; of those in percent, which are tangents, the angle. */
    public double[] angles(SampleColumn column) {
        double[] angles = numbers(column);
        SampleHeader.Place place = header.place(column);
        if (place != null && place.unit().matches("(?i)%|percent")) {
            for (int i = 0; i < angles.length; i++) {
                angles[i] = Math.atan(angles[i]);
            }
        }
        return angles;
    }

    /** A column in SI whose empty cells hold the value above them, as slower channels are logged; zeros where there is none. */
    public double[] held(SampleColumn column) {
        double[] numbers = new double[rows.size()];
        SampleHeader.Place place = header.place(column);
        for (int i = 0; place != null && i < numbers.length; i++) {
            boolean empty = rows.get(i).text(place.index()).isEmpty();
            numbers[i] = empty ? (i > 0 ? numbers[i - 1] : 0) : number(i, column, place);
        }
        return numbers;
    }

    /** Gears, also those written N and R: both are 0, as are reverse ones. */
    public double[] gears() {
        double[] gears = new double[rows.size()];
        SampleHeader.Place place = header.place(SampleColumn.GEAR);
        for (int i = 0; place != null && i < gears.length; i++) {
            String text = rows.get(i).text(place.index());
            boolean none = text.matches("(?i)n|r|neutral|reverse|-");
            boolean held = text.isEmpty() && i > 0;
            gears[i] = none || text.isEmpty() ? 0 : Math.max(0, Math.rint(number(i, SampleColumn.GEAR, place)));
            gears[i] = held ? gears[i - 1] : gears[i];
        }
        return gears;
    }

    /** Times in seconds; also those written like 14:02:31.25 or as a date and such a time, which may pass midnight. */
    public double[] times() {
        double[] times = new double[rows.size()];
        SampleHeader.Place place = header.place(SampleColumn.TIME);
        for (int i = 0; i < times.length; i++) {
            String text = withPoint(rows.get(i).text(place.index()));
            double clock = text.indexOf(':') > 0 ? clock(text) : Double.NaN;
            times[i] = Double.isNaN(clock) ? number(i, SampleColumn.TIME, place) : clock;
            if (!Double.isNaN(clock) && i > 0 && times[i] < times[i - 1] - DAY / 2) {
                times[i] += DAY;
            }
        }
        return times;
    }

    /**
     * Gathers a fault for each value by itself out of order, as one mistyped: where those about it are in order without it. A
     * value from which all begins anew, as at a new lap, is none.
     *
     * @param values of the column, one for each row
     * @param slack by which values may fall
     */
    public void checkOrder(SampleColumn column, double[] values, double slack) {
        SampleHeader.Place place = header.place(column);
        for (int i = 1; place != null && i + 1 < values.length; i++) {
            double before = values[i - 1];
            double after = values[i + 1];
            boolean out = values[i] > after + slack || values[i] < before - slack;
            if (out && before < after) {
                faults.meaning(
                        line(i),
                        column.title(),
                        "'" + Excerpt.of(rows.get(i).text(place.index())) + "' stands between '"
                                + Excerpt.of(rows.get(i - 1).text(place.index())) + "' and '"
                                + Excerpt.of(rows.get(i + 1).text(place.index())) + "'",
                        "correct the row or take it out");
            }
        }
    }

    private static double clock(String text) {
        String time = text.substring(Math.max(text.lastIndexOf('T'), text.lastIndexOf(' ')) + 1)
                .replaceAll("Z$", "");
        double seconds = 0;
        for (String part : time.split(":", -1)) {
            if (!part.matches("\\d+(\\.\\d*)?")) {
                return Double.NaN;
            }
            seconds = 60 * seconds + Double.parseDouble(part);
        }
        return seconds;
    }

    /** One comma inside a cell can only be a decimal one; beside points the sign that stands last is, the others part thousands. */
    private static String withPoint(String text) {
        int comma = text.lastIndexOf(',');
        int point = text.lastIndexOf('.');
        if (comma < 0) {
            return text;
        }
        if (point < 0) {
            return text.indexOf(',') == comma ? text.replace(',', '.') : text;
        }
        return comma > point && text.indexOf(',') == comma
                ? text.replace(".", "").replace(',', '.')
                : point > comma && text.indexOf('.') == point ? text.replace(",", "") : text;
    }

    private double number(int row, SampleColumn column, SampleHeader.Place place) {
        String text = rows.get(row).text(place.index());
        OptionalDouble number = DecimalText.number(withPoint(text));
        if (number.isPresent()) {
            double value = number.getAsDouble() * place.factor();
            if (Math.abs(value) <= column.most()) {
                return value;
            }
            faults.form(
                    line(row),
                    column.title(),
                    (Check.text(number.getAsDouble()) + " " + place.unit()).strip()
                            + " is more than anything that is logged",
                    "correct the row or take it out");
            return Double.NaN;
        }
        faults.form(
                line(row),
                column.title(),
                text.isEmpty() ? "there is no value" : "'" + Excerpt.of(text) + "' is not a number",
                "give a number" + (place.unit().isEmpty() ? "" : " in " + place.unit()) + " with a decimal point");
        return Double.NaN;
    }
}
