package dev.lapwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JsonLayoutTest {
    @ParameterizedTest
    @CsvSource({
        "1200, 1200",
        "0.1, 0.1",
        "-0.02, -0.02",
        "1e-5, 0.00001",
        "2e-7, 2E-7",
        "1e6, 1000000",
        "1e15, 1E+15",
        "0, 0",
        "-0.0, 0",
        "2e23, 2E+23",
        "2.0E-44, 2E-44",
        "NaN, null",
        "-Infinity, null",
    })
    void numbersAreShort(double value, String text) {
        assertThat(JsonLayout.number(value)).isEqualTo(text);
    }

    @Property
    void everyNumberReadsBackAsTheSame(@ForAll long bits) {
        double value = Double.longBitsToDouble(bits);
        if (Double.isFinite(value) && value != 0) {
            assertThat(Double.parseDouble(JsonLayout.number(value))).isEqualTo(value);
        }
    }

    @Test
    void smallObjectsStandInOneLine() {
        Map<String, Object> row = new LinkedHashMap<>();
        row.put("rpm", 1500.0);
        row.put("torqueNm", 300.5);
        Map<String, Object> object = new LinkedHashMap<>();
        object.put("name", "A \"quoted\" \\ name\n");
        object.put("ratios", List.of(3.1, 2.0));
        object.put("curve", List.of(row, row));
        object.put("none", Map.of());
        object.put("empty", List.of());
        object.put("closed", true);
        assertThat(JsonLayout.text(object)).isEqualTo("""
                        {
                          "name": "A \\"quoted\\" \\\\ name\\n",
                          "ratios": [3.1, 2],
                          "curve": [
                            { "rpm": 1500, "torqueNm": 300.5 },
                            { "rpm": 1500, "torqueNm": 300.5 }
                          ],
                          "none": {},
                          "empty": [],
                          "closed": true
                        }
                        """);
    }

    @Test
    void longListsFillTheirLines() throws IOException {
        List<Double> numbers = new ArrayList<>();
        for (int i = 0; i < 1000; i++) {
            numbers.add(i / 7.0);
        }
        String text = JsonLayout.text(Map.of("column", numbers));
        assertThat(text.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(110));
        // 1000 numbers of some 18 characters fill a little under 200 lines of 110.
        assertThat(text.lines().count()).isLessThan(220);
        assertThat(new ObjectMapper().readTree(text).get("column")).hasSize(1000);
    }

    @Property(tries = 200)
    void anyTextIsQuotedAsJsonWantsIt(@ForAll String text) throws IOException {
        String json = JsonLayout.text(Map.of("text", text));
        String back = new ObjectMapper().readTree(json).get("text").textValue();
        // A lone half of a surrogate pair has no UTF-8; it does not pass through any encoder.
        if (new String(text.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8).equals(text)) {
            assertThat(back).isEqualTo(text);
        }
    }
}
