package dev.lapwright.study.pressures;

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
import dev.lapwright.study.StudyCars;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import dev.lapwright.tyre.Wheel;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PressuresTest {
    private static final PressureDay DAY = new PressureDay(20, 30, 1013.25);

    private static PlainCar car() {
        return PlainCar.ofMass(1000)
                .axles(1.3, 1.2, 0.45)
                .friction(1.4)
                .stiffness(25)
                .frontDrive(0)
                .with(Quantity.BRAKE_FRONT_SHARE, 62)
                .with(Quantity.PRESSURE_LOSS, 3e-5)
                .with(Quantity.ROLLING_RESISTANCE, 0.012)
                .force(5000)
                .topSpeed(80);
    }

    private static PressurePair pair(Wheel wheel, double cold, double hot) {
        return new PressurePair(wheel, cold, hot, 20, DAY);
    }

    private static Pressures study(double cold, double hot) {
        return Pressures.of(
                car().car(), StudyCars.circuit(), Conditions.STANDARD, List.of(pair(Wheel.FRONT_LEFT, cold, hot)));
    }

    @Test
    void theNextColdSettingGivesTheTarget() {
        PressureResult result = study(117, 160).run();
        PressureResult.Tyre tyre = result.tyres().get(0);
        // Rounding of doubles.
        assertThat(tyre.hotFrom(result.nextCold(tyre), 20, DAY)).isCloseTo(tyre.targetKpa(), within(1e-9));
    }

    @Test
    void aPairThatMetTheTargetIsSetAgain() {
        PressureResult result = study(117, 170).run();
        // The plain car's ideal is the default of 170 kPa. Rounding of doubles.
        assertThat(result.nextCold(result.tyres().get(0))).isCloseTo(117, within(1e-9));
    }

    /** Closed form by hand: gas at 350.15 K hot over 293.15 K cold, ten kelvin more each; tolerance of the digits. */
    @Test
    void aWarmerDayAsksForTheColdSettingOfTheClosedForm() {
        double hot = (117 + 101.325) * 350.15 / 293.15 - 101.325;
        PressureResult result = study(117, hot)
                .forDay(DAY.warmer(10), 30)
                .withTarget(Wheel.FRONT_LEFT, 165)
                .run();
        double expected = (165 + 101.325) * 303.15 / 360.15 - 101.325;
        assertThat(result.nextCold(result.tyres().get(0))).isCloseTo(expected, within(1e-9));
    }

    @Test
    void severalRunsCountByTheirMean() {
        PressurePair first = pair(Wheel.FRONT_LEFT, 117, 160);
        PressurePair second = pair(Wheel.FRONT_LEFT, 120, 168);
        PressureResult.Tyre tyre = new PressureResult.Tyre(Wheel.FRONT_LEFT, List.of(first, second), 170);
        assertThat(tyre.rise()).isEqualTo((first.rise() + second.rise()) / 2);
        assertThat(tyre.riseSpread()).isEqualTo(Math.abs(first.rise() - second.rise()));
    }

    @Test
    void pressuresFurtherFromTheIdealCostMoreTime() {
        List<PressureResult.Cost> costs = study(117, 160).run().costs();
        // The front axle of this rear-driven car without roll stiffness of its own never gives up first.
        assertThat(costs.get(0).front()).isNotNegative();
        assertThat(costs.get(0).rear()).isPositive();
        for (int i = 1; i < costs.size(); i++) {
            assertThat(costs.get(i).both()).isGreaterThan(costs.get(i - 1).both());
        }
    }

    /** The grip lost is the parabola of the car's document: 3e-5 per kPa squared, 20 kPa away. */
    @Test
    void theGripLostIsThatOfTheDocument() {
        PressureResult.Cost cost = study(117, 160).run().costs().stream()
                .filter(one -> one.awayKpa() == 20)
                .findFirst()
                .orElseThrow();
        assertThat(cost.gripLost()).isCloseTo(0.012, within(1e-12));
    }

    @Test
    void hotPressuresAtTheIdealCostNothing() {
        assertThat(study(117, 170).run().measuredCost()).isZero();
    }

    @Test
    void leftBendsWorkTheRightTyresHarder() {
        TyreEnergy energy = TyreEnergy.of(LapSolver.lap(car().car(), StudyCars.circuit(), Conditions.STANDARD));
        assertThat(energy.leftExcess(true)).isNegative();
        assertThat(energy.leftExcess(false)).isNegative();
    }

    /**
     * On a circle all is even, so by the closed form the energy of a lap is the length times the drag of cornering, the rolling
     * resistance and the slip of the driven tyres, X²/(c N).
     */
    @Test
    void onACircleTheEnergyIsTheWorkOfTheTyresResistances() {
        Track circle = new SegmentPath(List.of(Segment.arc(2 * Math.PI * 60, 60)), true, 1).closedTrack("circle", 1e-6);
        Lap lap = LapSolver.lap(car().car(), circle, Conditions.STANDARD);
        TyreEnergy energy = TyreEnergy.of(lap);
        double sum = 0;
        for (Wheel wheel : Wheel.values()) {
            sum += energy.of(wheel);
        }
        double rear = lap.value(Channel.LOAD_REAR_LEFT, 0) + lap.value(Channel.LOAD_REAR_RIGHT, 0);
        double all = rear + lap.value(Channel.LOAD_FRONT_LEFT, 0) + lap.value(Channel.LOAD_FRONT_RIGHT, 0);
        double drive = lap.value(Channel.DRIVE_FORCE, 0);
        double expected =
                2 * Math.PI * 60 * (lap.value(Channel.CORNERING_DRAG, 0) + 0.012 * all + drive * drive / (25 * rear));
        // The lap's speed is settled to some 1e-9 of itself.
        assertThat(sum).isCloseTo(expected, within(1e-6 * expected));
    }

    @ParameterizedTest
    @ValueSource(doubles = {117, 100})
    void aHotPressureNotAboveTheColdOneIsRefused(double hot) {
        assertThatThrownBy(() -> pair(Wheel.FRONT_LEFT, 117, hot))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("not above the cold one");
    }

    @Test
    void anAbsolutePressureIsToldByWhatItLooksLike() {
        assertThatThrownBy(() -> study(218, 271).run())
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("looks like an absolute pressure")
                .hasMessageContaining("169.7");
    }

    @Test
    void pressuresInPsiTakenForKilopascalAreTold() {
        assertThatThrownBy(() -> pair(Wheel.FRONT_LEFT, 17, 24))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("looks like psi");
    }
}
