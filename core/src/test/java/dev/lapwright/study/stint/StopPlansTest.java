package dev.lapwright.study.stint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.Track;
import java.util.List;
import org.assertj.core.data.Offset;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** When to stop, by closed forms of a tyre whose laps grow evenly slower: t₀ + c a on the lap of age a. */
class StopPlansTest {
    private static final int LAPS = 20;
    private static final double WEAR = 0.004;
    private static final Track OVAL = StudyCars.oval(300, 40);
    private static final Car CAR = PlainCar.ofMass(1000)
            .axles(1.3, 1.2, 0.45)
            .friction(1.4)
            .frontDrive(0)
            .with(Quantity.BRAKE_FRONT_SHARE, 62)
            .drag(0.8)
            .force(5000)
            .topSpeed(80)
            .car();

    private static final Compound STEADY = Compound.steady("tyre", 1, WEAR);

    private static StintResult stint(Compound... compounds) {
        return Stint.of(CAR, OVAL, Conditions.STANDARD, new RaceLength(LAPS, 0, 1, RaceLength.FORMATION_SHARE, 1))
                .onCompounds(List.of(compounds))
                .run(StudyRun.onThreads(1));
    }

    private static StopPlans plans(double loss, Compound... compounds) {
        return StopPlans.of(CAR, OVAL, Conditions.STANDARD, stint(compounds), loss);
    }

    private static StopPlansResult.Plan with(StopPlansResult found, int stops) {
        return found.plans().stream()
                .filter(plan -> plan.after().size() == stops)
                .findFirst()
                .orElseThrow();
    }

    /** Growth of a lap's time from one lap to the next by the laps of the plain stint, s. */
    private static double growth(StintResult stint) {
        List<StintResult.RunLap> laps = stint.runs().get(0).laps();
        return (laps.get(LAPS - 1).time() - laps.get(0).time()) / (LAPS - 1);
    }

    @Test
    void aStopThatCostsNothingIsMadeHalfWay() {
        StopPlansResult found = plans(0, STEADY).run(StudyRun.onThreads(1));
        // Σ a to n and from 0 again to N − n is least for n = N/2, and for two stops in thirds.
        assertThat(with(found, 1).after()).containsExactly(LAPS / 2);
        assertThat(with(found, 2).after().get(0)).isBetween(LAPS / 3, LAPS / 3 + 1);
        assertThat(with(found, 2).after().get(1)).isBetween(2 * LAPS / 3, 2 * LAPS / 3 + 1);
        assertThat(found.best().after()).as("more stops, less wear").hasSize(2);
    }

    @Test
    void aStopHalfWaySavesAQuarterOfWearTimesLapsSquared() {
        StintResult stint = stint(STEADY);
        StopPlansResult found = StopPlans.of(CAR, OVAL, Conditions.STANDARD, stint, 0)
                .withMostStops(1)
                .run(StudyRun.onThreads(1));
        double wear = growth(stint) + fuelGain(stint);
        // Wear alone: c N²/4. Laps grow a little faster as the tyre goes, by some percent over 8 % of grip.
        assertThat(with(found, 0).time() - with(found, 1).time())
                .isCloseTo(wear * LAPS * LAPS / 4, Percentage.withPercentage(6));
        assertThat(found.breakEven())
                .isCloseTo(with(found, 0).time() - with(found, 1).time(), Offset.offset(1e-9));
    }

    /** What a lap gains by the fuel burnt on the one before, s. */
    private static double fuelGain(StintResult stint) {
        return stint.timePerKg() * stint.use().fuel();
    }

    @Test
    void aStopThatCostsMoreThanItSavesIsNotMade() {
        StopPlansResult free = plans(0, STEADY).withMostStops(1).run(StudyRun.onThreads(1));
        double worth = free.breakEven();
        assertThat(plans(worth + 1, STEADY)
                        .withMostStops(1)
                        .run(StudyRun.onThreads(1))
                        .best()
                        .after())
                .isEmpty();
        assertThat(plans(worth - 1, STEADY)
                        .withMostStops(1)
                        .run(StudyRun.onThreads(1))
                        .best()
                        .after())
                .hasSize(1);
    }

    @Test
    void aTyreThatDoesNotWearIsDrivenToTheFlag() {
        StopPlansResult found = plans(5, Compound.steady("stone", 1, 0)).run(StudyRun.onThreads(1));
        assertThat(found.best().after()).isEmpty();
        // Each stop costs its loss and nothing else: fuel and grip are the same.
        assertThat(with(found, 1).time() - found.best().time()).isCloseTo(5, Offset.offset(1e-9));
    }

    @Test
    void neutralisedLapsTakeTheirPaceAndMakeAStopCheap() {
        Neutralised laps = new Neutralised(9, 11, 0.5, 0.5, 0.2, 4);
        Compound stone = Compound.steady("stone", 1, 0);
        StopPlansResult green = plans(20, stone).withMostStops(0).run(StudyRun.onThreads(1));
        StopPlansResult slow =
                plans(20, stone).withMostStops(0).neutralised(laps).run(StudyRun.onThreads(1));
        double lap = stint(stone).lap().time();
        // Three laps at half the pace take three laps more; fuel saved makes the rest a little slower.
        assertThat(slow.best().time() - green.best().time()).isCloseTo(3 * lap, Percentage.withPercentage(1));
        StopPlansResult stops =
                plans(20, STEADY).withMostStops(1).neutralised(laps).run(StudyRun.onThreads(1));
        assertThat(with(stops, 1).after().get(0)).isBetween(9, 11);
        StopPlansResult dear = plans(20, STEADY).withMostStops(1).run(StudyRun.onThreads(1));
        assertThat(with(stops, 1).after()).isNotEqualTo(with(dear, 1).after());
    }

    @Test
    void aPlanThatIsToldIsDrivenWithEveryLapSolved() {
        StintResult stint = stint(STEADY);
        StopPlansResult found = StopPlans.of(CAR, OVAL, Conditions.STANDARD, stint, 30)
                .withMostStops(0)
                .run(StudyRun.onThreads(1));
        // Without a stop it is the stint.
        assertThat(found.best().time()).isCloseTo(stint.runs().get(0).time(), Offset.offset(0.02));
        assertThat(found.best().laps()).isEqualTo(LAPS);
        assertThat(CAR.value(Quantity.COMPOUND_GRIP)).isEqualTo(1);
    }

    @Test
    void whatIsNoPlanIsRefused() {
        assertThatThrownBy(() -> plans(-1, STEADY)).isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> plans(1, STEADY).withMostStops(3)).isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> new Neutralised(5, 3, 0.6, 0.5, 0.3, 1)).hasMessageContaining("is no stretch");
    }
}
