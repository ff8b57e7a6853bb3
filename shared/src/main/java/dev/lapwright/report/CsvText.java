package dev.lapwright.report;

import dev.lapwright.fault.DecimalText;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Comma-separated values (RFC 4180, but with plain line feeds) gathered row by row. */
public final class CsvText {
    private static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setRecordSeparator('\n').get();
    /** Far beyond the model, far short of noise. */
    private static final MathContext DIGITS = new MathContext(9);
    /** What is smaller is noise about zero. */
    private static final int DECIMALS = 9;

    /** What makes a spreadsheet take a cell for a formula, as OWASP lists it under "CSV Injection"; also in the wide forms of East Asia. */
    private static final String FORMULA = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    private final Appendable out;
    private final CSVPrinter printer;

    /** A text in memory. */
    public CsvText() {
        this(new StringBuilder());
    }

    /** A text that is written row by row. */
    public CsvText(Appendable out) {
        this.out = out;
        try {
            printer = new CSVPrinter(out, FORMAT);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Writes the columns that a table has for machines: a line of names, then each row; numbers to nine digits. */
    public static <R> void write(Table<R> table, Iterable<R> rows, Appendable out) {
        CsvText csv = new CsvText(out);
        List<Table.Column<R>> columns = table.keyed();
        csv.row(columns.stream().map(Table.Column::key).toList());
        List<String> cells = new ArrayList<>();
        for (R row : rows) {
            cells.clear();
            for (Table.Column<R> column : columns) {
                cells.add(cell(column.value().apply(row)));
            }
            csv.row(cells);
        }
    }

    private static String cell(Object value) {
        if (value instanceof Double number) {
            return number(number);
        }
        return value == null ? "" : value.toString();
    }

    /**
     * Adds a row. A text that a spreadsheet would take for a formula gets an apostrophe before it; numbers stay as they are.
     */
    public void row(List<String> cells) {
        try {
            for (String cell : cells) {
                printer.print(isFormula(cell) ? "'" + cell : cell);
            }
            printer.println();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean isFormula(String cell) {
        return !cell.isEmpty()
                && FORMULA.indexOf(cell.charAt(0)) >= 0
                && DecimalText.number(cell).isEmpty();
    }

    /** All rows so far, of a text in memory. */
    public String text() {
        return out.toString();
    }

    /** Nine digits in plain notation, whatever the locale; empty where there is no number. */
    public static String number(double value) {
        return Double.isFinite(value) ? decimal(value).stripTrailingZeros().toPlainString() : "";
    }

    /** The value that {@link #number} writes. */
    public static double rounded(double value) {
        return Double.isFinite(value) ? decimal(value).doubleValue() : value;
    }

    private static BigDecimal decimal(double value) {
        // From the shortest decimal, which fits a long: many times faster than from the exact one.
        BigDecimal digits = BigDecimal.valueOf(value).round(DIGITS);
        return digits.scale() > DECIMALS ? digits.setScale(DECIMALS, RoundingMode.HALF_EVEN) : digits;
    }
}
