package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Conditions;
import dev.lapwright.car.DayDoubt;
import dev.lapwright.files.DocumentSource;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ConditionsReaderTest {
    @Test
    void whatIsLeftOutIsAsOnAStandardDay() {
        Conditions day = Documents.conditions(TestDocuments.source("valid/conditions/least.json"));
        assertThat(day).isEqualTo(new Conditions("Standard day", 15, 1013.25, 0, 0, 0, 1));
    }

    /**
     * U.S. Standard Atmosphere 1976, table I, geometric altitude 2000 m: 275.154 K, 795.01 hPa; equal to ISO 2533:1975.
     */
    @Test
    void anAltitudeGivesPressureAndTemperatureOfTheStandardAtmosphere() {
        Conditions day = at2000("");
        // Half of the last digit printed.
        assertThat(day.airTempC() + 273.15).isCloseTo(275.154, within(5e-4));
        assertThat(day.airPressureHpa()).isCloseTo(795.01, within(5e-3));
    }

    @Test
    void aTemperatureBesideAnAltitudeIsKept() {
        Conditions day = at2000(", \"airTempC\": 30");
        assertThat(day.airTempC()).isEqualTo(30);
        assertThat(day.airPressureHpa()).isCloseTo(795.01, within(5e-3));
    }

    private static Conditions at2000(String more) {
        String text = "{ \"lapwright\": \"conditions/1\", \"name\": \"Pass\", \"altitudeM\": 2000" + more + " }";
        return Documents.conditions(new DocumentSource("pass", text));
    }

    @Test
    void whatIsStatedOfDoubtComesBackFromADocument() {
        DayDoubt doubt = new DayDoubt(OptionalDouble.of(0.5), OptionalDouble.empty(), OptionalDouble.of(0.25));
        Conditions day = Conditions.STANDARD.doubting(doubt);
        Conditions again = Documents.conditions(new DocumentSource("day", DocumentWriter.text(day)));
        assertThat(again.doubt()).isEqualTo(doubt);
        assertThat(again.with("conditions.airTempC", 30).doubt()).isEqualTo(doubt);
    }
}
