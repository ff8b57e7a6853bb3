package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import java.util.EnumMap;
import java.util.Map;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Both wheels of an axle on one tyre curve, g(ρ) = sin(1.5 atan(√3 ρ)) with its peak at 1 (the similarity method of Pacejka, Tire and Vehicle
 * Dynamics, chapter 4, from memory): their common peak, the drag of cornering, and what lean takes off them.
 */
class WheelPairTest {
    private static final double LOAD = 7000;

    private static WheelPair pair(Map<Quantity, Double> changes) {
        Car car = TestCars.winged(changes);
        return new WheelPair(Vehicle.of(car, Conditions.STANDARD).front, 2);
    }

    private static void carry(WheelPair pair, double load, double transfer, double side, boolean left) {
        pair.stand(1, side, left);
        pair.carry(load, transfer);
    }

    private static double curve(double rho) {
        return Math.sin(1.5 * Math.atan(Math.sqrt(3) * rho));
    }

    /**
     * The greatest sum over a common slip angle, found by Brent's method (Commons Math). Tolerance: the next term of the curve at its
     * peak is of third order, 0.32 x³, with x how far a wheel is from its own peak; here up to 0.25 for the wheel with a quarter of
     * the force or less: 0.2 %.
     */
    @ParameterizedTest
    @CsvSource({"0, 0", "1500, 0", "3000, 0", "3000, 0.3", "3000, -0.3", "1500, 0.5", "1500, -0.5", "3400, 0.2"})
    void twoWheelsPeakTogetherAtOneSlipAngle(double transfer, double toe) {
        WheelPair pair = pair(Map.of(Quantity.TOE_FRONT, toe, Quantity.STIFFNESS_SENSITIVITY_FRONT, 0.3));
        carry(pair, LOAD, transfer, 0, true);
        AxleData data = pair.data;
        double inner = LOAD / 2 - transfer;
        double outer = LOAD / 2 + transfer;
        double shape = 1.5 * Math.sqrt(3);
        double innerAngle = shape * data.frictionY(inner) / data.stiffnessPerLoad(inner);
        double outerAngle = shape * data.frictionY(outer) / data.stiffnessPerLoad(outer);
        double exact = new BrentOptimizer(1e-12, 1e-12)
                .optimize(
                        new MaxEval(500),
                        GoalType.MAXIMIZE,
                        new SearchInterval(0.01, 1),
                        new UnivariateObjectiveFunction(angle -> inner
                                        * data.frictionY(inner)
                                        * curve((angle - Math.toRadians(toe)) / innerAngle)
                                + outer * data.frictionY(outer) * curve((angle + Math.toRadians(toe)) / outerAngle)))
                .getValue();
        assertThat(pair.lateralPeak).isCloseTo(exact, within(2e-3 * exact));
        double plain = inner * data.frictionY(inner) + outer * data.frictionY(outer);
        assertThat(pair.lateralPeak).isLessThanOrEqualTo(plain);
    }

    /**
     * Force times the slip angle that it takes: u P · 1.5 (P/C) tan(asin(u)/1.5), the curve turned about. Tolerance: the chord's fit is within
     * 0.05 of a stiffness of which at least 0.53 is left.
     */
    @ParameterizedTest
    @CsvSource({"0.1", "0.3", "0.5", "0.7", "0.85", "0.95", "0.97"})
    void dragOfCorneringIsForceTimesSlipAngle(double share) {
        WheelPair pair = pair(Map.of(Quantity.TOE_FRONT, 0.0));
        carry(pair, LOAD, 0, 0, true);
        double angle = 1.5 * pair.lateralPeak / pair.stiffness * Math.tan(Math.asin(share) / 1.5);
        double exact = share * pair.lateralPeak * angle;
        assertThat(pair.corneringDrag(share)).isCloseTo(exact, within(0.05 / 0.53 * exact));
    }

    /** Toe on a straight: both wheels pull against each other, C τ each, their drag 2 C τ² (linear tyres, by hand). */
    @Test
    void toeCostsItsSlipAngleTwice() {
        WheelPair pair = pair(Map.of(Quantity.TOE_FRONT, 0.5));
        carry(pair, LOAD, 0, 0, true);
        double toe = Math.PI / 360;
        assertThat(pair.toeDrag).isCloseTo(pair.stiffness * toe * toe, within(1e-9));
    }

    /**
     * By hand: 2.5 degrees of camber, 0.8 degrees of roll, so the outer wheel leans 1.7 into the bend and the inner 3.3 out of it; best
     * at 2, loss 0.002 across and 0.001 along.
     */
    @Test
    void leanTakesItsShareOffEachWheel() {
        Map<Quantity, Double> camber = Map.of(
                Quantity.TOE_FRONT, 0.0,
                Quantity.CAMBER_FRONT, -2.5,
                Quantity.BEST_INCLINATION_FRONT, 2.0,
                Quantity.INCLINATION_LOSS_Y_FRONT, 0.002,
                Quantity.INCLINATION_LOSS_X_FRONT, 0.001,
                Quantity.SENSITIVITY_Y_FRONT, 0.0,
                Quantity.SENSITIVITY_X_FRONT, 0.0);
        WheelPair pair = pair(camber);
        double side = 0.8 / pair.data.leanPerSide;
        double upright = LOAD / 2 * pair.data.frictionY(LOAD / 2);
        carry(pair, LOAD, 0, side, true);
        double outer = upright / (1 + 0.002 * 0.3 * 0.3);
        double inner = upright / (1 + 0.002 * 5.3 * 5.3);
        // Both wheels peak 5 % apart, which costs them 27/256 · 0.05² of their peaks: far below the tolerance.
        assertThat(pair.lateralPeak).isCloseTo(outer + inner, within(1e-3 * upright));
        double along = LOAD / 2 * pair.data.frictionX(LOAD / 2);
        double weaker = along / (1 + 0.001 * 3.3 * 3.3);
        double stronger = along / (1 + 0.001 * 1.7 * 1.7);
        // Brakes by theory 7.5a, half of the policy.
        double apart = stronger - weaker;
        assertThat(pair.brakeCapacity(0))
                .isCloseTo(2 * weaker + 0.5 * apart * apart / (weaker + stronger), within(1e-9 * weaker));
    }

    /** A car whose left and right wheels differ turns left as its mirror image turns right. */
    @Test
    void aMirroredCarTurnsTheOtherWayAlike() {
        Map<Quantity, Double> lossy = Map.of(
                Quantity.CAMBER_FRONT, -2.0,
                Quantity.INCLINATION_LOSS_Y_FRONT, 0.003,
                Quantity.CAMBER_SPLIT_FRONT, 1.5,
                Quantity.PRESSURE_LOSS, 1e-5,
                Quantity.PRESSURE_SPLIT_FRONT, 20.0);
        Map<Quantity, Double> mirrored = new EnumMap<>(lossy);
        mirrored.put(Quantity.CAMBER_SPLIT_FRONT, -1.5);
        mirrored.put(Quantity.PRESSURE_SPLIT_FRONT, -20.0);
        WheelPair one = pair(lossy);
        WheelPair other = pair(mirrored);
        carry(one, LOAD, 2000, 9000, true);
        carry(other, LOAD, 2000, 9000, false);
        assertThat(one.lateralPeak).isEqualTo(other.lateralPeak);
        carry(other, LOAD, 2000, 9000, true);
        assertThat(Math.abs(one.lateralPeak - other.lateralPeak)).isGreaterThan(1);
    }

    /** By hand: both wheels 10 kPa from the ideal between them, so each keeps 1 - 0.0003 · 10² of its friction, in a bend as on a straight. */
    @Test
    void pressuresApartCostBothWheelsThoughTheirMeanIsIdeal() {
        Map<Quantity, Double> apart = Map.of(
                Quantity.TOE_FRONT, 0.0,
                Quantity.HOT_PRESSURE_FRONT, 180.0,
                Quantity.IDEAL_PRESSURE_FRONT, 180.0,
                Quantity.PRESSURE_LOSS, 3e-4,
                Quantity.PRESSURE_SPLIT_FRONT, 20.0);
        WheelPair even = pair(Map.of(Quantity.TOE_FRONT, 0.0));
        WheelPair split = pair(apart);
        for (double transfer : new double[] {0, 2000}) {
            carry(even, LOAD, transfer, 0, true);
            carry(split, LOAD, transfer, 0, true);
            assertThat(split.lateralPeak).isCloseTo(0.97 * even.lateralPeak, within(1e-9 * even.lateralPeak));
            assertThat(split.brakeCapacity(0)).isCloseTo(0.97 * even.brakeCapacity(0), within(1e-9 * LOAD));
        }
    }

    /** Wheels without half shafts turn as they like, whatever a document says of locks: plain mechanics. */
    @Test
    void aLockOnAnAxleWithoutDriveIsNone() {
        LapSolver solver = LapSolver.on(TestTracks.circuit());
        Car rear = TestCars.winged(Map.of(Quantity.FRONT_DRIVE_SHARE, 0.0));
        Car locked = rear.with(Quantity.POWER_LOCK_FRONT, 100)
                .with(Quantity.COAST_LOCK_FRONT, 100)
                .with(Quantity.PRELOAD_FRONT, 80);
        assertThat(solver.lapTime(Vehicle.of(locked, Conditions.STANDARD)))
                .isEqualTo(solver.lapTime(Vehicle.of(rear, Conditions.STANDARD)));
        Car driven = locked.with(Quantity.FRONT_DRIVE_SHARE, 50);
        assertThat(solver.lapTime(Vehicle.of(driven, Conditions.STANDARD)))
                .isNotEqualTo(
                        solver.lapTime(Vehicle.of(rear.with(Quantity.FRONT_DRIVE_SHARE, 50), Conditions.STANDARD)));
    }

    /** Without what a lean costs, camber and its gain change nothing: documents from before lap as they did. */
    @Test
    void camberAloneChangesNothing() {
        LapSolver solver = LapSolver.on(TestTracks.circuit());
        Car car = TestCars.winged();
        Car cambered = car.with(Quantity.CAMBER_FRONT, -3)
                .with(Quantity.CAMBER_GAIN_REAR, 0.6)
                .with(Quantity.BEST_INCLINATION_REAR, 2);
        assertThat(solver.lapTime(Vehicle.of(cambered, Conditions.STANDARD)))
                .isEqualTo(solver.lapTime(Vehicle.of(car, Conditions.STANDARD)));
    }

    /**
     * Roll by hand: m ay (h - h_rolls) over the axles' roll stiffness for the body, and 2 ΔF / (k t) of each axle on its tyres; Milliken and
     * Milliken, Race Car Vehicle Dynamics (1995), chapter 16.
     */
    @Test
    void aWheelLeansWithBodyAndTyre() {
        Car car = TestCars.winged(Map.of(Quantity.CAMBER_GAIN_FRONT, 0.4));
        Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
        double tyre = 1000 * car.value(Quantity.VERTICAL_RATE_FRONT);
        double tyres = tyre * 1.65 * 1.65 / 2;
        double springs =
                180_000 * Math.pow(car.value(Quantity.MOTION_RATIO_FRONT), 2) * 1.65 * 1.65 / 2 + 1200 * 180 / Math.PI;
        double front = springs * tyres / (springs + tyres);
        double rearTyres = 1000 * car.value(Quantity.VERTICAL_RATE_REAR) * 1.62 * 1.62 / 2;
        double rearSprings =
                180_000 * Math.pow(car.value(Quantity.MOTION_RATIO_REAR), 2) * 1.62 * 1.62 / 2 + 500 * 180 / Math.PI;
        double rear = rearSprings * rearTyres / (rearSprings + rearTyres);
        double arm = 0.45 - 0.46 * 0.03 - 0.54 * 0.06;
        double roll = arm / (front + rear);
        double onSprings = roll * front / springs;
        double transfer = (0.46 * 0.03 + front / (front + rear) * arm) / 1.65;
        double onTyres = 2 * transfer / (tyre * 1.65);
        assertThat(vehicle.front.leanPerSide).isCloseTo(Math.toDegrees(0.6 * onSprings + onTyres), within(1e-12));
    }
}
