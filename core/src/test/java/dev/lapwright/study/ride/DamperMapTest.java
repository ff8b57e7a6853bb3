package dev.lapwright.study.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.ride.Damper;
import dev.lapwright.ride.Kerb;
import dev.lapwright.ride.PassSolver;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.ride.RoadProfile;
import dev.lapwright.study.StudyRun;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** Maps of fast bump and rebound. */
class DamperMapTest {
    private static final QuarterCar CAR =
            new QuarterCar(270, 42, 150e3, 320e3, 250, new Damper(9300, 4200, 12600, 5900, 0.06, 0.06), 0.87, 800);
    private static final RoadProfile KERB = new Kerb(Kerb.Shape.HALF_SINE, 0.05, 1, 1).felt(0.1);
    private static final double SPEED = 28;
    private static final double[] RATES = {1000, 3000, 5000, 7000};

    private static DamperMap map() {
        return DamperMap.of(CAR, KERB, SPEED);
    }

    @Test
    void twoThreadsGiveWhatOneGives() {
        DamperMapResult one = map().over(RATES, RATES).run(StudyRun.onThreads(1));
        DamperMapResult two = map().over(RATES, RATES).run(StudyRun.onThreads(2));
        assertThat(two.passes()).isEqualTo(one.passes());
    }

    @Test
    void eachPlaceHoldsThePassOfItsPair() {
        DamperMapResult map = map().over(RATES, RATES).run(StudyRun.onThreads(1));
        assertThat(map.at(1, 3)).isEqualTo(PassSolver.over(KERB, SPEED).drive(CAR.withFast(3000, 7000)));
    }

    @Test
    void noPairBeatsTheBest() {
        DamperMapResult map = map().over(RATES, RATES).run(StudyRun.onThreads(1));
        for (RideMeasure measure : RideMeasure.values()) {
            double best = measure.of(map.best(measure).pass());
            // Two values that differ by less than 0.001 count as equal.
            assertThat(map.passes()).allMatch(pass -> measure.of(pass) >= best - 1e-3);
        }
    }

    @Test
    void theBestWithinARangeOfRatiosLiesInIt() {
        DamperMapResult map = map().over(RATES, RATES).run(StudyRun.onThreads(1));
        DamperMapResult.Pair pair = map.best(RideMeasure.LOAD, 1, 2).orElseThrow();
        assertThat(pair.rebound() / pair.bump()).isBetween(1.0, 2.0);
    }

    @Test
    void noPairHasARatioThatTheMapDoesNotHold() {
        // The greatest ratio of these rates is 7.
        DamperMapResult map = map().over(RATES, RATES).run(StudyRun.onThreads(1));
        assertThat(map.best(RideMeasure.LOAD, 8, 9)).isEmpty();
    }

    @Test
    void theSlopeIsThatBetweenNearbyPasses() {
        DamperMapResult map = map().over(RATES, RATES).run(StudyRun.onThreads(1));
        PassSolver solver = PassSolver.over(KERB, SPEED);
        double more = RideMeasure.BODY.of(solver.drive(CAR.withFast(4300, 5900)));
        double less = RideMeasure.BODY.of(solver.drive(CAR.withFast(4100, 5900)));
        // A shorter step: differs by the curve's third derivative, and by peaks seen every 0.5 ms.
        assertThat(map.bumpSlope(RideMeasure.BODY)).isCloseTo((more - less) / 200, Percentage.withPercentage(5));
    }

    @Test
    void theStandardMapHasFourHundredPairs() {
        assertThat(map().pairs()).isEqualTo(400);
    }

    @Test
    void oneRateIsNoMap() {
        assertThatThrownBy(() -> map().over(new double[] {1000}, RATES))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("2 or more");
    }
}
