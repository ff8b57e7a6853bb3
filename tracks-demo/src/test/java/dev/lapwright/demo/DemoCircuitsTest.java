package dev.lapwright.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class DemoCircuitsTest {
    /** Geometry of a closed curve that does not cross itself: it turns once round. */
    @Test
    void aClosedCircuitTurnsOnceRound() {
        DemoFiles.ofKind("circuit").forEach((name, circuit) -> {
            if (circuit.path("closed").asBoolean()) {
                double turning = 0;
                for (JsonNode segment : circuit.path("segments")) {
                    turning += 0.5 * (startCurvature(segment) + endCurvature(segment)) * length(segment);
                }
                // The one angle that closes the loop is written to 0.0001°; half of that is its rounding.
                assertThat(Math.abs(Math.toDegrees(turning))).as(name).isCloseTo(360, within(0.00005 + 1e-9));
            }
        });
    }

    @Test
    void curvatureHasNoJumps() {
        DemoFiles.ofKind("circuit").forEach((name, circuit) -> {
            List<JsonNode> segments = circuit.path("segments").valueStream().toList();
            for (int i = circuit.path("closed").asBoolean() ? 0 : 1; i < segments.size(); i++) {
                JsonNode before = segments.get((i + segments.size() - 1) % segments.size());
                // Both sides of a joint are the same radius, written the same way.
                assertThat(startCurvature(segments.get(i)))
                        .as(name + " segment " + i)
                        .isEqualTo(endCurvature(before));
            }
        });
    }

    @Test
    void theLastSectorEndsWithTheRoad() {
        DemoFiles.ofKind("circuit").forEach((name, circuit) -> {
            double length = 0;
            for (JsonNode segment : circuit.path("segments")) {
                length += length(segment);
            }
            JsonNode ends = circuit.path("sectorEndsM");
            // Written to the millimetre.
            assertThat(ends.path(ends.size() - 1).asDouble()).as(name).isCloseTo(length, within(0.0005 + 1e-9));
        });
    }

    @Test
    void allThreeKindsOfRoadAreThere() {
        Map<String, JsonNode> circuits = DemoFiles.ofKind("circuit");
        assertThat(circuits.values().stream()
                        .filter(c -> c.path("closed").asBoolean())
                        .count())
                .isEqualTo(2);
        assertThat(circuits.values().stream()
                        .filter(c -> !c.path("closed").asBoolean())
                        .count())
                .isEqualTo(1);
    }

    private static double length(JsonNode segment) {
        return segment.has("angleDeg")
                ? segment.path("radiusM").asDouble()
                        * Math.toRadians(segment.path("angleDeg").asDouble())
                : segment.path("lengthM").asDouble();
    }

    private static double startCurvature(JsonNode segment) {
        return curvature(segment, segment.path("type").asText().equals("arc") ? "radiusM" : "startRadiusM");
    }

    private static double endCurvature(JsonNode segment) {
        return curvature(segment, segment.path("type").asText().equals("arc") ? "radiusM" : "endRadiusM");
    }

    private static double curvature(JsonNode segment, String radius) {
        double sign = segment.path("turn").asText().equals("left") ? 1 : -1;
        return segment.has(radius) ? sign / segment.path(radius).asDouble() : 0;
    }
}
