package dev.lapwright.text;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
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

    private final StringBuilder text = new StringBuilder();
    private final CSVPrinter printer;

    public CsvText() {
        try {
            printer = new CSVPrinter(text, FORMAT);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public void row(List<String> cells) {
        try {
            printer.printRecord(cells);
        } catch (IOException e) {
            // Nothing is written but memory.
            throw new UncheckedIOException(e);
        }
    }

    public String text() {
        return text.toString();
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
