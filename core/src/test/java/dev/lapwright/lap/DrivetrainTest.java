package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.powertrain.TorqueCurve;
import org.junit.jupiter.api.Test;

/** Engine speed, road speed and force at the wheels against worked examples. */
class DrivetrainTest {
    private static final double MPS_PER_MPH = 0.44704;
    private static final double KMH_PER_MPS = 3.6;
    private static final double M_PER_INCH = 0.0254;
    private static final double N_PER_LBF = 4.4482216152605;
    private static final double M_PER_FOOT = 0.3048;

    /** A car with one gear; torque in Nm is the same at all engine speeds. */
    private static PlainCar geared(double ratio, double finalDrive, double radius, double efficiency, double torque) {
        return PlainCar.ofMass(1000)
                .with(Quantity.FINAL_DRIVE, finalDrive)
                .with(Quantity.WHEEL_RADIUS, radius)
                .with(Quantity.EFFICIENCY, efficiency)
                .with(Quantity.REV_LIMIT, 6000)
                .engine(new TorqueCurve(new double[] {0, 60_000}, new double[] {torque, torque}))
                .gears(ratio);
    }

    @Test
    void engineSpeedFollowsTheRuleOf336() {
        // The trade's rule rpm = mph · ratio · 336 / tyre diameter in inches; the example, 65 mph, 3.08 and 30 in
        // giving
        // 2242, from docslib.org document 13816045. The exact factor is 63360 / (60 pi) = 336.135, 0.04 % more; half a
        // digit.
        Drivetrain car = Drivetrain.of(geared(1, 3.08, 15 * M_PER_INCH, 1, 100).vehicle());
        assertThat(car.engineSpeed(1, 65 * MPS_PER_MPH)).isCloseTo(2242, within(0.0004 * 2242 + 0.5));
    }

    @Test
    void aThousandRevolutionsAreTheWheelsCircumferenceEachMinute() {
        // Geometry: 1000 / 4 turns of 2 pi 0.3 m a minute are 28.274 km/h, to the last digit given.
        Drivetrain car = Drivetrain.of(geared(1, 4, 0.3, 1, 100).vehicle());
        assertThat(car.limitSpeed(1) * KMH_PER_MPS / 6).isCloseTo(28.274, within(0.0005));
    }

    @Test
    void wheelForceIsTorqueTimesRatiosTimesEfficiencyOverRadius() {
        // calculatoratoz.com, calculator 37737: 270 Nm, gear 2.55, final drive 2, efficiency 0.83, radius 0.55 m give
        // 2078.018 N, to the last digit given.
        Drivetrain car = Drivetrain.of(geared(2.55, 2, 0.55, 0.83, 270).vehicle());
        assertThat(car.force(1, 20)).isCloseTo(2078.018, within(0.0005));
    }

    @Test
    void collegeExerciseOfSpeedAndTractiveEffort() {
        // Inputs of a BTEC exercise (askmehelpdesk.com, question 404774): 150 Nm at 4000 rpm, gear 29/30 · 88/20,
        // radius
        // 0.315 m. Worked by hand: 111.68 km/h and 2025.4 N without losses, to the last digit.
        Drivetrain car =
                Drivetrain.of(geared(29 / 30.0 * 88 / 20, 1, 0.315, 1, 150).vehicle());
        assertThat(car.engineSpeed(1, 111.68 / KMH_PER_MPS)).isCloseTo(4000, within(0.5));
        assertThat(car.force(1, 111.68 / KMH_PER_MPS)).isCloseTo(2025.4, within(0.05));
    }

    @Test
    void engineTorqueThatHoldsTopSpeedPushesAsHardAsTheResistance() {
        // Mannering and Washburn, Principles of Highway Engineering, problem 2.7 (inputs seen at tutorbin.com, answers
        // as
        // remembered from the solutions manual): 136.35 lb ft, ratio 2.5, efficiency 0.88, radius 12.6 in give the
        // 285.7 lb that hold 130 mph; the printed digits are good to 0.02 %.
        Drivetrain car = Drivetrain.of(geared(2.5, 1, 12.6 * M_PER_INCH, 0.88, 136.35 * N_PER_LBF * M_PER_FOOT)
                .vehicle());
        assertThat(car.force(1, 130 * MPS_PER_MPH) / N_PER_LBF).isCloseTo(285.7, within(0.0002 * 285.7));
    }

    @Test
    void dragThatHoldsTopSpeedIsTheTextbooks() {
        // The same problem: 19.8 sq ft at a drag coefficient of 0.28 make 207.6 lb at 130 mph where the air weighs
        // 0.002060 slugs a cubic foot; here it weighs 1.225 kg/m³, that is 0.0023769 slugs. Four digits each.
        double area = 0.28 * 19.8 * M_PER_FOOT * M_PER_FOOT;
        Drivetrain car = Drivetrain.of(geared(1, 1, 0.3, 1, 100)
                .with(Quantity.DRAG_AREA, area)
                .with(Quantity.REV_LIMIT, 3000)
                .vehicle());
        double pounds = car.resistance(130 * MPS_PER_MPH, 0, 0) / N_PER_LBF;
        assertThat(pounds * 0.002060 / 0.0023769).isCloseTo(207.6, within(0.0005 * 207.6));
    }

    @Test
    void onASlopeTheWeightPullsBack() {
        // Weight times sine, by definition; arithmetic only.
        Drivetrain car = Drivetrain.of(PlainCar.ofMass(1000).vehicle());
        assertThat(car.resistance(20, 0, 0.1)).isCloseTo(1000 * PlainCar.GRAVITY * Math.sin(0.1), within(1e-6));
    }

    @Test
    void headWindAddsToTheAirSpeed() {
        // Drag goes with the square of air speed: 20 + 5 m/s against 25 in still air. The same table; rounding only.
        Drivetrain car = Drivetrain.of(PlainCar.ofMass(1000).drag(0.5).vehicle());
        assertThat(car.resistance(20, 5, 0)).isCloseTo(car.resistance(25, 0, 0), within(1e-6));
    }

    @Test
    void thereIsNoForceBeyondTheRevLimit() {
        Drivetrain car =
                Drivetrain.of(PlainCar.ofMass(1000).topSpeed(30).gears(1, 0.5).vehicle());
        assertThat(car.force(1, 30)).isPositive();
        assertThat(car.force(1, 30.1)).isZero();
        assertThat(car.force(2, 30.1)).isPositive();
    }

    @Test
    void gearsAreLeftAboveTheirShiftSpeed() {
        // The same torque at all speeds pulls harder in a lower gear up to the limit: 30 m/s by construction.
        Drivetrain car =
                Drivetrain.of(PlainCar.ofMass(1000).topSpeed(30).gears(1, 0.5).vehicle());
        assertThat(car.shiftSpeed(1)).isCloseTo(30, within(1e-9));
        assertThat(car.shiftSpeed(2)).isNaN();
        assertThat(car.gearAt(30)).isEqualTo(1);
        assertThat(car.gearAt(30.01)).isEqualTo(2);
    }

    @Test
    void shiftsAreMadeWhereTheGearsPullAlike() {
        // Torque falls evenly from 200 Nm at rest to nothing at 10 000 rpm. T = 200 (1 - n): i (1 - i x) is the same in
        // gears 2 and 1 (x in units of the limit in gear 1) where x = 1/3, so n = 2/3 of the limit in the lower gear.
        // The
        // curve is tabulated and exact on a straight line; the search ends after 60 halvings.
        PlainCar car = PlainCar.ofMass(1000)
                .with(Quantity.REV_LIMIT, 10_000)
                .engine(new TorqueCurve(new double[] {0, 10_000}, new double[] {200, 0}))
                .gears(2, 1);
        Drivetrain drivetrain = Drivetrain.of(car.vehicle());
        assertThat(drivetrain.engineSpeed(1, drivetrain.shiftSpeed(1))).isCloseTo(10_000 * 2 / 3.0, within(1e-3));
    }

    @Test
    void aGearThatIsNotThereIsNamed() {
        Drivetrain car = Drivetrain.of(PlainCar.ofMass(1000).vehicle());
        assertThatThrownBy(() -> car.force(2, 10))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("gear 2");
    }
}
