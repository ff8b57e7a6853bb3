package dev.lapwright.logs;

import dev.lapwright.car.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Kinds of column in a log of tyre pressures, with the headings that name each. */
enum PressureColumn {
    TYRE("tyre", List.of("tyre", "tire", "wheel", "corner")),
    COLD_TEMPERATURE("cold temp (degC)", List.of()),
    COLD("cold (psi)", List.of("cold")),
    HOT("hot (psi)", List.of("hot")),
    AIR("air (degC)", List.of("air", "ambient")),
    TRACK("track (degC)", List.of("track", "road")),
    INNER("inner (degC)", List.of("inner", "inside")),
    MIDDLE("middle (degC)", List.of("middle", "centre", "center")),
    OUTER("outer (degC)", List.of("outer", "outside"));

    private final String example;
    private final List<String> words;

    PressureColumn(String example, List<String> words) {
        this.example = example;
        this.words = words;
    }

    /** A heading that names it. */
    String example() {
        return example;
    }

    boolean isPressure() {
        return this == COLD || this == HOT;
    }

    /** What a heading says: the column, and its unit or null. */
    record Heading(PressureColumn column, Unit unit) {}

    /** The column that a heading such as {@code cold (psi)}, {@code coldPsi} or {@code track_temp_f} names, or null. */
    static Heading of(String text) {
        List<String> tokens = tokens(text);
        if (tokens.isEmpty()) {
            return null;
        }
        PressureColumn column = null;
        boolean temperature = tokens.contains("temp") || tokens.contains("temperature");
        if (tokens.contains("cold") && temperature) {
            column = COLD_TEMPERATURE;
        } else {
            for (PressureColumn candidate : values()) {
                if (candidate.words.contains(tokens.get(0))) {
                    column = candidate;
                }
            }
        }
        boolean hotTemperature = column == HOT && temperature;
        return column == null || hotTemperature ? null : new Heading(column, unit(column, tokens));
    }

    private static Unit unit(PressureColumn column, List<String> tokens) {
        for (String token : tokens) {
            if (column.isPressure()) {
                for (Unit unit : GaugeText.UNITS) {
                    if (unit.symbol().toLowerCase(Locale.ROOT).equals(token)) {
                        return unit;
                    }
                }
            } else if (List.of("c", "degc", "celsius").contains(token)) {
                return Unit.CELSIUS;
            } else if (List.of("f", "degf", "fahrenheit").contains(token)) {
                return Unit.FAHRENHEIT;
            }
        }
        return null;
    }

    private static List<String> tokens(String text) {
        List<String> tokens = new ArrayList<>();
        String apart = text.replaceAll("°", "deg").replaceAll("([a-z])([A-Z])(?=[A-Za-z]|$)", "$1 $2");
        for (String token : apart.split("[^A-Za-z]+")) {
            if (!token.isEmpty()) {
                tokens.add(token.toLowerCase(Locale.ROOT));
            }
        }
        if (tokens.contains("k") && tokens.contains("pa")) {
            tokens.add("kpa");
        }
        int degree = tokens.indexOf("deg");
        if (degree >= 0 && degree + 1 < tokens.size()) {
            tokens.add("deg" + tokens.get(degree + 1));
        }
        return tokens;
    }
}
