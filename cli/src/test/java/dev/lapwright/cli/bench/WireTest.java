package dev.lapwright.cli.bench;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.JsonTree;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Messages are JSON (RFC 8259) in one line, read back here by a general parser. */
class WireTest {
    @Property
    void aTextReadsBackAsItWas(@ForAll String text) {
        String line = Wire.text(Map.of("text", text));
        assertThat(line).doesNotContain("\n").doesNotContain("<");
        assertThat(JsonTree.object(line)).containsEntry("text", text);
    }

    @Property
    void aColumnIsRoundedToItsDecimals(
            @ForAll @DoubleRange(min = -1e8, max = 1e8) double value,
            @ForAll @IntRange(min = 0, max = 6) int decimals) {
        String line = Wire.text(Map.of("c", new Wire.Column(new double[] {value}, new int[] {0}, decimals)));
        double read = JsonTree.numbers(JsonTree.object(line), "c").get(0);
        // Half of the last decimal, and the rounding of a double of that size.
        assertThat(Math.abs(read - value)).isLessThanOrEqualTo(0.5 * Math.pow(10, -decimals) + 1e-7);
    }

    @Test
    void whatIsNoNumberIsNull() {
        Map<String, Object> message = new LinkedHashMap<>();
        message.put("c", new Wire.Column(new double[] {Double.NaN, -0.5, 1e300}, new int[] {0, 1, 2}, 1));
        message.put("list", Arrays.asList(null, Double.POSITIVE_INFINITY, true, List.of()));
        assertThat(Wire.text(message)).isEqualTo("{\"c\":[null,-0.5,null],\"list\":[null,null,true,[]]}");
    }
}
