package dev.lapwright.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * System of units in which people read a report: SI as the studies say it, or the units of the imperial system, put in their place where a table
 * is laid out and where text is printed. Fields for machines are never changed.
 *
 * <p>Factors are exact by definition: international yard and pound of 1959, standard gravity (NIST SP 811 (2008), appendix B.8; horsepower is
 * 550 ft·lbf/s). A converted number has so many decimals that its step is at most twice the step of the number that it stands for.
 *
 * <p>What has no everyday unit there stays as it is: litres, kelvin of a difference, hectopascals of the weather, joules, g, seconds.
 */
public enum UnitSystem {
    /** As reports say it. */
    SI(Map.of()),
    /** Miles an hour, feet, inches, pounds, pounds per square inch, degrees Fahrenheit. */
    IMPERIAL(imperial());

    private static final String NUMBER = "[-+\u2212±]?\\d+(?:\\.\\d+)?";
    private static final String BETWEEN = "(?:,? (?:to|and|or|of|from|by|±) |, | ± |/|\\.\\.)";
    /** A number that no name, setting, date or path holds. */
    private static final Pattern LONE =
            Pattern.compile("(?<![\\p{L}\\p{N}_=.:])" + NUMBER + "(?![\\p{L}\\p{N}_:]|\\.\\d)");

    private static final Pattern LONE_NUMBER = Pattern.compile(NUMBER);
    /** A number of a name that a unit follows: it is no measure. */
    private static final char NAMED = '\u0005';

    private static final int MOST_DECIMALS = 9;

    /** Unit that stands in the place of another. */
    private record Shown(String symbol, double factor, double offset) {
        Shown(String symbol, double factor) {
            this(symbol, factor, 0);
        }
    }

    private final Map<String, Shown> shown;
    private final Pattern measures;

    UnitSystem(Map<String, Shown> shown) {
        this.shown = shown;
        String symbols = shown.keySet().stream()
                .sorted((a, b) -> b.length() - a.length())
                .map(Pattern::quote)
                .collect(Collectors.joining("|"));
        measures = shown.isEmpty()
                ? null
                : Pattern.compile("(?<![\\p{L}\\p{N}_=.:-])(" + NUMBER + "(?:" + BETWEEN + NUMBER + ")*)([ \u00A0]?)("
                        + symbols + ")(?![\\p{L}\\p{N}²=_^]|:\\S|/(?!lap))");
    }

    private static Map<String, Shown> imperial() {
        Map<String, Shown> all = new LinkedHashMap<>();
        double mile = 1609.344;
        double foot = 0.3048;
        double inch = foot / 12;
        double pound = 0.45359237;
        double force = pound * 9.80665;
        double psi = force / (inch * inch);
        all.put("km/h", new Shown("mph", 1000 / mile));
        all.put("m/s", new Shown("ft/s", 1 / foot));
        all.put("km", new Shown("mi", 1000 / mile));
        all.put("m", new Shown("ft", 1 / foot));
        all.put("mm", new Shown("in", 1e-3 / inch));
        all.put("m²", new Shown("ft²", 1 / (foot * foot)));
        all.put("kg", new Shown("lb", 1 / pound));
        all.put("N", new Shown("lbf", 1 / force));
        all.put("kN", new Shown("lbf", 1000 / force));
        all.put("Nm", new Shown("lbf ft", 1 / (force * foot)));
        all.put("Nm/deg", new Shown("lbf ft/deg", 1 / (force * foot)));
        all.put("N/mm", new Shown("lbf/in", 1000 * inch / force));
        all.put("N s/m", new Shown("lbf s/in", inch / force));
        all.put("mm/s", new Shown("in/s", 1e-3 / inch));
        all.put("kW", new Shown("hp", 1000 / (550 * foot * force)));
        all.put("kPa", new Shown("psi", 1000 / psi));
        all.put("bar", new Shown("psi", 1e5 / psi));
        all.put("degC", new Shown("degF", 1.8, 32));
        all.put("°C", new Shown("°F", 1.8, 32));
        return all;
    }

    /** The system of a word, letter case aside; null if it is none. */
    public static UnitSystem of(String word) {
        for (UnitSystem system : values()) {
            if (system.name().toLowerCase(Locale.ROOT).equals(word.strip().toLowerCase(Locale.ROOT))) {
                return system;
            }
        }
        return null;
    }

    /** Symbol of the unit in which numbers of another are shown; that itself where there is no other. */
    public String symbol(String unit) {
        int slash = unit.indexOf("/lap");
        if (slash > 0) {
            return symbol(unit.substring(0, slash)) + unit.substring(slash);
        }
        Shown other = shown.get(unit);
        return other == null ? unit : other.symbol();
    }

    /** By what a number of a unit is multiplied where it is drawn and not told; a temperature has no such factor. */
    public double factor(String unit) {
        Shown other = shown.get(unit);
        return other == null ? 1 : other.factor();
    }

    /**
     * Numbers of a unit as they are shown.
     *
     * @param text of a cell: a number, several, or words
     * @param unit of the numbers in it
     */
    public String numbers(String text, String unit) {
        int slash = unit.indexOf("/lap");
        Shown other = shown.get(slash > 0 ? unit.substring(0, slash) : unit);
        return other == null ? text : replaced(text, LONE, other);
    }

    private static String replaced(String text, Pattern pattern, Shown unit) {
        return pattern.matcher(text).replaceAll(found -> Matcher.quoteReplacement(converted(found.group(), unit)));
    }

    private static String converted(String number, Shown unit) {
        String sign = number.startsWith("+") || number.startsWith("±") ? number.substring(0, 1) : "";
        BigDecimal value = new BigDecimal(number.substring(sign.length()).replace('\u2212', '-'));
        // What has a sign of its own is a difference.
        double offset = sign.isEmpty() ? unit.offset() : 0;
        double there = value.doubleValue() * unit.factor() + offset;
        int decimals = Math.max(0, value.scale());
        double step = Math.pow(10, -decimals) * unit.factor();
        int shownDecimals = Math.max(0, Math.min(MOST_DECIMALS, (int) Math.ceil(-Math.log10(2 * step))));
        String text = BigDecimal.valueOf(there)
                .setScale(shownDecimals, RoundingMode.HALF_UP)
                .toPlainString();
        return sign + text;
    }

    /** Running text with its measures, a number with a unit behind it each, as they are shown. */
    public String told(String text) {
        if (measures == null || text.chars().noneMatch(Character::isDigit)) {
            return plain(text);
        }
        String there = measures.matcher(text)
                .replaceAll(found ->
                        Matcher.quoteReplacement(replaced(found.group(1), LONE_NUMBER, shown.get(found.group(3)))
                                + found.group(2)
                                + shown.get(found.group(3)).symbol()));
        // A pressure told in two units is told once.
        return plain(there.replaceAll("([\\d.]+ psi) \\(\\1\\)", "$1"));
    }

    private static String plain(String text) {
        return text.replace(String.valueOf(NAMED), "");
    }

    /** A name in which numbers are no measures, whatever stands behind them. */
    static String named(String name) {
        return IMPERIAL.measures.matcher(name).find()
                ? name.replaceAll("(\\d)([ \u00A0]?\\p{L})", "$1" + NAMED + "$2")
                : name;
    }

    /** What people read of a report, in its order. */
    public List<Report.Block> blocks(Report report) {
        return report.blocks().stream().map(this::block).toList();
    }

    private Report.Block block(Report.Block block) {
        if (block instanceof Report.Title title) {
            return new Report.Title(told(title.subject()), told(title.rest()));
        } else if (block instanceof Report.Item item) {
            return new Report.Item(item.name(), told(item.text()));
        } else if (block instanceof Report.Hanging hanging) {
            return new Report.Hanging(hanging.beginning(), told(hanging.text()));
        } else if (block instanceof Report.Paragraph paragraph) {
            return new Report.Paragraph(told(paragraph.text()));
        } else if (block instanceof Report.Point point) {
            return new Report.Point(told(point.text()));
        } else if (block instanceof Report.Line line) {
            return new Report.Line(told(line.text()));
        } else if (block instanceof Report.Caution caution) {
            return new Report.Caution(caution.beginning(), told(caution.text()));
        } else if (block instanceof Report.Rows<?> rows) {
            return rows(rows);
        }
        return block;
    }

    private <R> Report.Rows<R> rows(Report.Rows<R> rows) {
        return new Report.Rows<>(table(rows.table()), rows.rows());
    }

    /** A table with its columns for people in these units; of two that said one thing in two units which now are one, the first is kept. */
    public <R> Table<R> table(Table<R> table) {
        if (this == SI) {
            return table;
        }
        Map<String, String> there = new HashMap<>();
        List<Table.Column<R>> columns = new ArrayList<>();
        for (Table.Column<R> column : table.columns()) {
            String symbol = symbol(column.unit());
            String before = there.putIfAbsent(column.title() + " " + symbol, column.unit());
            if (before == null || before.equals(column.unit())) {
                columns.add(new Table.Column<>(
                        column.key(),
                        column.title(),
                        symbol,
                        column.value(),
                        column.unit().isEmpty()
                                ? row -> told(column.text().apply(row))
                                : row -> plain(numbers(column.text().apply(row), column.unit())),
                        column.traits()));
            }
        }
        return table.with(columns);
    }
}
