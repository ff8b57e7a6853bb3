package dev.lapwright.charts.lap;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.Example;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class LimitMapTest {
    private static final Lap LAP = Example.lap();

    private static List<String> texts() {
        return Drawn.of(LimitMap.of(LAP, ChartStyle.STANDARD), ImageSize.MAP).texts();
    }

    @Test
    void everyLimitThatTakesTimeIsNamedWithItsShare() {
        LAP.limitShares().forEach((limit, share) -> {
            if (share >= 0.005) {
                assertThat(texts()).contains(limit.label() + " " + Math.round(100 * share) + "%");
            }
        });
    }

    @Test
    void everyCornerStartNorthAndScaleAreThere() {
        List<String> texts = texts();
        assertThat(texts).contains("N", "Start and finish").anyMatch(text -> text.matches("[0-9]+ m"));
        LAP.stations()
                .corners()
                .forEach(corner -> assertThat(texts)
                        .anyMatch(text -> text.equals(corner.label()) || text.equals("T" + corner.number())));
    }

    /** Printed in grey, or seen by somebody who does not tell colours. */
    @Test
    void whatLimitsMostCarsIsToldByItsLineAlone() {
        List<Limit> usual = List.of(Limit.POWER, Limit.BRAKES, Limit.FRONT_GRIP, Limit.REAR_GRIP);
        assertThat(usual.stream().map(LimitMap::stroke).distinct()).hasSameSizeAs(usual);
        assertThat(Arrays.stream(Limit.values()).map(LimitMap::stroke)).doesNotContainNull();
    }
}
