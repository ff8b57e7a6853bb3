package dev.lapwright.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitSystemTest {
    /**
     * What one of an imperial unit is, as NIST SP 811 (2008) prints it in appendix B.8, to seven digits: foot 0.3048 m, mile 1609.344 m, mile
     * per hour 0.44704 m/s, inch 25.4 mm, pound 0.4535924 kg, pound-force 4.448222 N, psi 6.894757 kPa, lbf/in 175.1268 N/m, lbf·ft 1.355818 N·m,
     * square foot 0.09290304 m², horsepower (550 ft·lbf/s) 745.6999 W; degree Fahrenheit t/°C = (t/°F − 32)/1.8.
     */
    @ParameterizedTest
    @CsvSource({
        "m, 0.3048, ft",
        "km, 1.609344, mi",
        "km/h, 1.609344, mph",
        "m/s, 0.3048, ft/s",
        "mm, 25.4, in",
        "kg, 0.4535924, lb",
        "N, 4.448222, lbf",
        "kN, 0.004448222, lbf",
        "kPa, 6.894757, psi",
        "bar, 0.06894757, psi",
        "N/mm, 0.1751268, lbf/in",
        "Nm, 1.355818, lbf ft",
        "Nm/deg, 1.355818, lbf ft/deg",
        "N s/m, 175.1268, lbf s/in",
        "mm/s, 25.4, in/s",
        "m², 0.09290304, ft²",
        "kW, 0.7456999, hp",
        "degC, -17.222222222, degF"
    })
    void oneIsWhatTheTablesSay(String unit, String one, String symbol) {
        assertThat(UnitSystem.IMPERIAL.symbol(unit)).isEqualTo(symbol);
        // Seven digits are printed there.
        assertThat(Double.parseDouble(UnitSystem.IMPERIAL.numbers(one, unit))).isCloseTo(1, within(1e-6));
    }

    /** A hundred kilometres an hour are 62.137 miles an hour: told with steps of at most twice those of the figure. */
    @Test
    void digitsAreThoseThatThereWere() {
        assertThat(UnitSystem.IMPERIAL.told("100 km/h")).isEqualTo("62 mph");
        assertThat(UnitSystem.IMPERIAL.told("100.0 km/h")).isEqualTo("62.1 mph");
        assertThat(UnitSystem.IMPERIAL.told("68 mm")).isEqualTo("2.68 in");
        assertThat(UnitSystem.IMPERIAL.told("5541 m")).isEqualTo("18179 ft");
        assertThat(UnitSystem.IMPERIAL.told("200 N/mm")).isEqualTo("1142 lbf/in");
    }

    @Test
    void measuresInTextAreConvertedAndNothingElseIs() {
        assertThat(UnitSystem.IMPERIAL.told("at 200 km/h: drag 100 N, 63, 96 and 241 km/h, \u221212.5 degC"))
                .isEqualTo("at 124 mph: drag 22.5 lbf, 39, 60 and 150 mph, 9.5 degF");
        // With a sign of its own a temperature is a difference.
        assertThat(UnitSystem.IMPERIAL.told("+5 degC, \u00B12.0 degC")).isEqualTo("+9 degF, \u00B13.6 degF");
        for (String same : List.of(
                "T3 m",
                "rear-spring=200 N/mm",
                "2026-11-30 m",
                "1:36.132",
                "5 ms/kg",
                "12 laps",
                "34 K",
                "3.7 l",
                "10 m²/mm",
                "in 3 minutes")) {
            assertThat(UnitSystem.IMPERIAL.told(same)).isEqualTo(same);
        }
        assertThat(UnitSystem.SI.told("100 km/h")).isEqualTo("100 km/h");
        assertThat(UnitSystem.IMPERIAL.told("186 kPa (27.0 psi)")).isEqualTo("27.0 psi");
    }

    /** Somebody's name for a car or a setup stays, whatever it says. */
    @Test
    void namesStay() {
        String text = "Setup " + Report.verbatim("high 68 mm, -3 kg") + " at 100 km/h";
        assertThat(Report.plain(UnitSystem.IMPERIAL.told(text))).isEqualTo("Setup high 68 mm, -3 kg at 62 mph");
        assertThat(Report.plain(UnitSystem.SI.told(text))).isEqualTo("Setup high 68 mm, -3 kg at 100 km/h");
    }

    @Test
    void columnsAreConvertedAndFieldsAreNot() {
        Table<Double> table = Table.<Double>of("Speeds")
                .number("speedKmh", "speed", "km/h", Numbers.fixed(1), v -> v)
                .number("pressureKpa", "cold", "kPa", Numbers.fixed(0), v -> v)
                .text("cold", "bar", v -> Numbers.fixed(v / 100, 2))
                .text("fuel", "kg/lap", v -> "1.00")
                .words("", "where", v -> "at 100 m");
        Report.Rows<?> rows = (Report.Rows<?>) UnitSystem.IMPERIAL
                .blocks(new Report().rows(table, List.of(100.0)))
                .get(0);
        assertThat(cells(rows))
                .containsExactly("speed mph 62.1", "cold psi 14.5", "fuel lb/lap 2.20", "where  at 328 ft");
        assertThat(UnitSystem.IMPERIAL.table(table).map(100.0)).isEqualTo(table.map(100.0));
    }

    private static <R> List<String> cells(Report.Rows<R> rows) {
        R row = rows.rows().iterator().next();
        return rows.table().shown().stream()
                .map(column -> column.title() + " " + column.unit() + " "
                        + column.text().apply(row))
                .toList();
    }

    @Test
    void wordsNameSystems() {
        assertThat(UnitSystem.of(" Imperial ")).isEqualTo(UnitSystem.IMPERIAL);
        assertThat(UnitSystem.of("si")).isEqualTo(UnitSystem.SI);
        assertThat(UnitSystem.of("furlong")).isNull();
    }
}
