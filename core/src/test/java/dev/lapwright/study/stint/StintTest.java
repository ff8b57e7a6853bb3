package dev.lapwright.study.stint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.study.StudyCars;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.List;
import org.junit.jupiter.api.Test;

class StintTest {
    private static final FuelConsumption CONSUMPTION = FuelConsumption.constant(300);
    private static final Compound EVEN = Compound.steady("even", 1, 0);
    private static final Compound SOFT = Compound.steady("soft", 1.01, 0.002);
    private static final Compound HARD = Compound.steady("hard", 1, 0.0005);

    private static PlainCar car() {
        return PlainCar.ofMass(1000)
                .axles(1.3, 1.2, 0.45)
                .friction(1.4)
                .frontDrive(0)
                .with(Quantity.BRAKE_FRONT_SHARE, 62)
                .with(Quantity.SENSITIVITY_X_FRONT, 0.1)
                .with(Quantity.SENSITIVITY_X_REAR, 0.1)
                .with(Quantity.SENSITIVITY_Y_FRONT, 0.1)
                .with(Quantity.SENSITIVITY_Y_REAR, 0.1)
                .with(Quantity.EFFICIENCY, 0.9)
                .drag(0.8)
                .force(5000)
                .topSpeed(80);
    }

    private static StintResult stint(RaceLength race, Compound... compounds) {
        return Stint.of(car().car(), StudyCars.circuit(), Conditions.STANDARD, race)
                .withConsumption(CONSUMPTION)
                .onCompounds(List.of(compounds))
                .run();
    }

    private static RaceLength laps(int count) {
        return new RaceLength(count, 0, 1, 0.6, 1.5);
    }

    /** Closed form at a steady speed: work is force times way over efficiency, fuel is work times consumption. */
    @Test
    void onACircleTheFuelIsForceTimesWay() {
        Track circle = new SegmentPath(List.of(Segment.arc(2 * Math.PI * 60, 60)), true, 1).closedTrack("circle", 1e-6);
        Lap lap = LapSolver.lap(car().car(), circle, Conditions.STANDARD);
        double work = lap.value(Channel.DRIVE_FORCE, 0) * 2 * Math.PI * 60 / 0.9;
        StintResult.FuelUse use = StintResult.FuelUse.of(lap, CONSUMPTION);
        // The lap's speed is settled to some 1e-9 of itself.
        assertThat(use.engineWork()).isCloseTo(work, within(1e-6 * work));
        assertThat(use.fuel()).isCloseTo(work * 0.3 / 3.6e6, within(1e-6 * use.fuel()));
    }

    @Test
    void aCountedRaceHasItsLaps() {
        assertThat(stint(laps(7), EVEN).runs().get(0).laps()).hasSize(7);
    }

    @Test
    void aTimedRaceFinishesTheLapUnderWay() {
        StintResult.Run run =
                stint(new RaceLength(0, 300, 0, 0, 0), EVEN).runs().get(0);
        int count = run.laps().size();
        assertThat(run.time()).isGreaterThanOrEqualTo(300);
        assertThat(run.timeAfter(count - 1)).isLessThan(300);
    }

    private static StintResult.SetFuel onFuel(double kg) {
        return Stint.of(car().car().with(Quantity.FUEL_MASS, kg), StudyCars.circuit(), Conditions.STANDARD, laps(8))
                .withConsumption(CONSUMPTION)
                .onCompounds(List.of(EVEN))
                .run()
                .onSetFuel()
                .get(0);
    }

    @Test
    void theFuelThatIsSetIsJudgedByWhatIsNeeded() {
        StintResult needs = stint(laps(8), EVEN);
        double needed = needs.startFuel();
        StintResult.SetFuel more = onFuel(needed + 3);
        // Fuel is settled to 1e-4 kg.
        assertThat(more.spare()).isCloseTo(3, within(2e-4));
        assertThat(more.reachesTheFlag()).isTrue();
        // 3 kg more on each of 8 laps; what a kg costs is told on the first and changes by a few percent with weight.
        double cost = 8 * 3 * needs.timePerKg();
        assertThat(more.cost()).isCloseTo(cost, within(0.1 * cost));
        // Half a reserve short: to the flag it is enough.
        StintResult.Run run = needs.runs().get(0);
        StintResult.SetFuel scarce = onFuel(needed - 0.5 * run.reserveFuel());
        assertThat(scarce.reachesTheFlag()).isTrue();
        assertThat(scarce.spare()).isCloseTo(-0.5 * run.reserveFuel(), within(2e-3));
        // The formation lap and five and a half laps, which use a little less than the mean of heavier ones.
        StintResult.SetFuel dry = onFuel(run.formationFuel() + 5.5 * run.fuelPerLap());
        assertThat(dry.reachesTheFlag()).isFalse();
        assertThat(dry.lapsOfFuel()).isEqualTo(5);
        assertThat(dry.cost()).isNegative();
    }

    @Test
    void theReserveIsLeftAtTheFlag() {
        StintResult.Run run = stint(laps(8), EVEN).runs().get(0);
        StintResult.RunLap last = run.laps().get(7);
        // Fuel is settled to 1e-4 kg.
        assertThat(last.fuelAtStart() - last.fuelUsed()).isCloseTo(run.reserveFuel(), within(2e-4));
        assertThat(run.reserveFuel()).isCloseTo(1.5 * run.fuelPerLap(), within(1e-9));
    }

    @Test
    void theFormationLapTakesItsShare() {
        StintResult.Run run = stint(laps(8), EVEN).runs().get(0);
        // A lap with all fuel on board takes a little more than the mean one: some percent.
        assertThat(run.formationFuel()).isCloseTo(0.6 * run.fuelPerLap(), within(0.03 * run.fuelPerLap()));
    }

    @Test
    void burningFuelMakesLapsFaster() {
        List<StintResult.RunLap> laps = stint(laps(6), EVEN).runs().get(0).laps();
        for (int i = 1; i < laps.size(); i++) {
            assertThat(laps.get(i).time()).isLessThan(laps.get(i - 1).time());
        }
    }

    /** Closed form: 1.01 (1 - 0.002 n) = 1 - 0.0005 n at n = 6.58 laps on the tyre, which is passed between laps 7 and 8. */
    @Test
    void theHarderCompoundIsFasterFromTheLapWhereGripsCross() {
        StintResult result = stint(laps(16), SOFT, HARD);
        assertThat(result.runs().get(0).fasterFrom(result.runs().get(1))).isEqualTo(8);
    }

    @Test
    void theLeadInAllChangesLaterThanThePace() {
        StintResult result = stint(laps(20), SOFT, HARD);
        StintResult.Run soft = result.runs().get(0);
        StintResult.Run hard = result.runs().get(1);
        int ahead = soft.aheadFrom(hard);
        assertThat(ahead).isGreaterThan(soft.fasterFrom(hard));
        assertThat(hard.timeAfter(ahead)).isLessThan(soft.timeAfter(ahead));
        assertThat(hard.timeAfter(ahead - 1)).isGreaterThanOrEqualTo(soft.timeAfter(ahead - 1));
    }

    @Test
    void allCompoundsBeginWithTheSameFuel() {
        StintResult result = stint(laps(5), SOFT, HARD);
        double most =
                Math.max(result.runs().get(0).fuelNeeded(), result.runs().get(1).fuelNeeded());
        // Fuel is settled to 1e-4 kg.
        assertThat(result.startFuel()).isCloseTo(most, within(1e-3));
    }

    @Test
    void wearBeyondTheCliffIsSteeper() {
        Compound cliff = new Compound("cliff", 1, 0.001, 10, 0.005);
        assertThat(cliff.gripAfter(10)).isCloseTo(0.99, within(1e-12));
        assertThat(cliff.gripAfter(12)).isCloseTo(0.978, within(1e-12));
    }

    @Test
    void aTyreThatLosesHalfItsGripIsRefused() {
        assertThatThrownBy(() -> Compound.steady("s", 1, 0.1).gripAfter(6))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("half of its grip");
    }

    @Test
    void aRaceIsEitherCountedOrTimed() {
        assertThatThrownBy(() -> new RaceLength(5, 60, 0, 0, 0)).isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> new RaceLength(0, 0, 0, 0, 0)).isInstanceOf(InvalidValueException.class);
    }

    @Test
    void anOpenRunHasNoStint() {
        Track run = Track.open("run", 10, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(500, 0)));
        assertThatThrownBy(() -> Stint.of(car().car(), run, Conditions.STANDARD, laps(5))
                        .withConsumption(CONSUMPTION)
                        .onCompounds(List.of(EVEN))
                        .run())
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("no circuit");
    }
}
