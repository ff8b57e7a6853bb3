package dev.lapwright.brief;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.study.pressures.Pressures;
import dev.lapwright.tyre.Wheel;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Pressures to start from. */
class PressureStartTest {
    private static final double ZERO_CELSIUS = 273.15;

    private static BriefResult.StartPressures start(Brief brief) {
        return BriefCars.run(brief).pressures().value().orElseThrow();
    }

    /** The law of Gay-Lussac, written out: (p + p_air)/T does not change. */
    @Test
    void theColdPressureHeatedToTheTyresTemperatureIsTheIdeal() {
        BriefResult.StartPressures start = start(Brief.of(BriefCars.tyresAt(90), BriefCars.OVAL, BriefCars.DAY));
        assertThat(start.logged()).isFalse();
        assertThat(start.gasTempC()).isEqualTo(90);
        assertThat(start.study().tyres()).hasSize(4);
        double air = BriefCars.DAY.airPressureHpa() / 10;
        for (PressureResult.Tyre tyre : start.study().tyres()) {
            double cold = start.study().nextCold(tyre);
            double hot = (cold + air) * (90 + ZERO_CELSIUS) / (BriefCars.DAY.airTempC() + ZERO_CELSIUS) - air;
            // Double precision.
            assertThat(hot).isCloseTo(BriefCars.CAR.value(Quantity.IDEAL_PRESSURE_FRONT), within(1e-9));
        }
    }

    @Test
    void tyresNoWarmerThanTheAirSayNothingAndTheRestIsStillThere() {
        BriefResult brief = BriefCars.run(
                Brief.of(BriefCars.tyresAt(20), BriefCars.OVAL, BriefCars.DAY.with("conditions.airTempC", 20)));
        assertThat(brief.pressures().problem()).contains("no warmer than the air");
        assertThat(brief.pressures().remedy()).contains("log cold and hot pressures");
        assertThat(brief.stint().isThere()).isTrue();
    }

    @Test
    void loggedPairsOnSuchADayLeadToTheSettingOfTheStudyAskedDirectly() {
        PressureDay day = new PressureDay(BriefCars.DAY.airTempC(), 25, BriefCars.DAY.airPressureHpa());
        PressurePair pair = new PressurePair(Wheel.FRONT_LEFT, 120, 165, 15, day);
        PressureResult direct = Pressures.of(BriefCars.CAR, BriefCars.OVAL, BriefCars.DAY, List.of(pair))
                .run();
        BriefResult.StartPressures start = start(BriefCars.brief().withPressures(List.of(pair)));
        assertThat(start.logged()).isTrue();
        assertThat(start.gasTempC()).isNaN();
        assertThat(start.study().nextCold(start.study().tyres().get(0)))
                .isEqualTo(direct.nextCold(direct.tyres().get(0)));
    }

    /** A gas that will run hotter needs less pressure when it is shut in, if it is shut in as cold. */
    @Test
    void pairsOfAColderDayAreCarriedToTheDayOfTheBrief() {
        double air = BriefCars.DAY.airTempC() - 10;
        PressureDay before = new PressureDay(air, air + 8, BriefCars.DAY.airPressureHpa());
        PressurePair pair = new PressurePair(Wheel.FRONT_LEFT, 120, 165, air, before);
        BriefResult.StartPressures start = start(BriefCars.brief().withPressures(List.of(pair)));
        assertThat(start.study().next().airTempC()).isEqualTo(BriefCars.DAY.airTempC());
        // The track is as much warmer as the air, and so are the cold tyres.
        assertThat(start.study().next().trackTempC()).isEqualTo(BriefCars.DAY.airTempC() + 8);
        assertThat(start.study().coldTempC()).isEqualTo(BriefCars.DAY.airTempC());
    }

    private static BriefResult.PressureWorth worth(double awayKpa, int draws) {
        PressureDay day = new PressureDay(BriefCars.DAY.airTempC(), 25, BriefCars.DAY.airPressureHpa());
        double ideal = BriefCars.CAR.value(Quantity.IDEAL_PRESSURE_FRONT);
        List<PressurePair> pairs = Arrays.stream(Wheel.values())
                .map(wheel -> new PressurePair(wheel, 120, ideal + awayKpa, 15, day))
                .toList();
        Car car = BriefCars.car(BriefCars.plain().with(Quantity.PRESSURE_LOSS, 2e-5));
        return start(Brief.of(car, BriefCars.OVAL, BriefCars.DAY)
                        .withPressures(pairs)
                        .withDraws(draws))
                .worth()
                .orElseThrow();
    }

    /** Tyres 40 kPa away lose some percent of their grip by the law of the car's document, whichever of the drawn ones the car is. */
    @Test
    void pressuresFarAwayAreAGainBeforeAllRuns() {
        BriefResult.PressureWorth far = worth(40, 20);
        assertThat(far.isGain()).isTrue();
        assertThat(far.doubt().orElseThrow().high()).isNegative();
        assertThat(far.difference())
                .isBetween(
                        far.doubt().orElseThrow().low(),
                        far.doubt().orElseThrow().high());
    }

    @Test
    void pressuresAsWantedAreNone() {
        BriefResult.PressureWorth none = worth(0, 0);
        assertThat(none.isGain()).isFalse();
        assertThat(none.difference()).isCloseTo(0, within(1e-9));
        assertThat(start(BriefCars.brief().withDraws(0)).worth()).isEmpty();
    }
}
