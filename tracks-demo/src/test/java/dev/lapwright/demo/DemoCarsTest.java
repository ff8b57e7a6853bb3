package dev.lapwright.demo;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class DemoCarsTest {
    @Test
    void everyCarHasTwelveToTwentyFourAdjustments() {
        DemoFiles.ofKind("car")
                .forEach((name, car) ->
                        assertThat(car.path("adjustments")).as(name).hasSizeBetween(12, 24));
    }

    @Test
    void everySetupIsForADemoCarAndNamesItsAdjustments() {
        Map<String, List<String>> adjustments = new HashMap<>();
        DemoFiles.ofKind("car").values().forEach(car -> {
            List<String> names = new ArrayList<>();
            car.path("adjustments")
                    .forEach(adjustment -> names.add(adjustment.path("name").asText()));
            adjustments.put(car.path("name").asText(), names);
        });
        DemoFiles.ofKind("setup").forEach((name, setup) -> {
            String car = setup.path("car").asText();
            assertThat(adjustments).as(name).containsKey(car);
            List<String> set = new ArrayList<>();
            setup.path("settings").fieldNames().forEachRemaining(set::add);
            assertThat(adjustments.get(car)).as(name).containsAll(set);
        });
    }

    @Test
    void everyCarHasTwoSetupsOrMoreWhoseNamesBeginWithIts() {
        for (String car : DemoFiles.ofKind("car").keySet()) {
            assertThat(DemoFiles.ofKind("setup").keySet().stream().filter(setup -> setup.startsWith(car + "-")))
                    .as(car)
                    .hasSizeGreaterThanOrEqualTo(2);
        }
    }

    /** EN 228 allows petrol 720 to 775 kg/m³ at 15 °C (edition of 2012, from memory). */
    @Test
    void aLitreOfFuelWeighsWhatPetrolMay() {
        DemoFiles.ofKind("car").forEach((name, car) -> {
            for (JsonNode adjustment : car.path("adjustments")) {
                if (adjustment.path("name").asText().equals("fuel-litres")) {
                    double kilogramsPerLitre =
                            adjustment.path("moves").path(0).path("factor").asDouble();
                    assertThat(kilogramsPerLitre).as(name).isBetween(0.720, 0.775);
                }
            }
        });
    }
}
