package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** States of several terms together that can be worked by hand: what axles can give, a wheel that lifts, grip that falls with load, four driven wheels. */
class ClosedFormsTest {
    private static final double G = 9.80665;
    /** Some ten operations on doubles. */
    private static final double ROUNDING = 1e-12;

    private static WheelForces turning(PlainCar car, double lateral, double acceleration) {
        WheelForces wheels = new WheelForces(car.vehicle());
        wheels.at(20, lateral / 400, 0, G, 0, 0, 1, 0);
        wheels.utilisation(acceleration, 1);
        return wheels;
    }

    /**
     * The most that an axle in a bend drives with, loads by hand: open, twice the lighter wheel; sliding plates, Fo = (1 + S)/(1 - S) Fi + D0/(1 - S);
     * none, both. Gadola and Chindamo (2018) for the law; the closed forms are derived.
     */
    @ParameterizedTest
    @CsvSource({"0, 0", "20, 0", "20, 60", "0, 80", "100, 0"})
    void anAxleDrivesWithWhatItsDifferentialLets(double lock, double preload) {
        double mu = 1.3;
        PlainCar car = PlainCar.ofMass(1000)
                .friction(mu)
                .frontDrive(0)
                .with(Quantity.CG_HEIGHT, 0.4)
                .with(Quantity.POWER_LOCK_REAR, lock)
                .with(Quantity.PRELOAD_REAR, preload);
        double transfer = 1000 * 7 * 0.4 / 1.5 / 2;
        double inner = mu * (1000 * G / 4 - transfer);
        double outer = mu * (1000 * G / 4 + transfer);
        double s = lock / 100;
        // The wheels' radius is 0.3 m, and a wrench at one wheel feels the preload of both.
        double most = lock == 100 ? outer : (1 + s) / (1 - s) * inner + 2 * preload / 0.3 / (1 - s);
        assertThat(most).as("what the outer wheel is left").isLessThanOrEqualTo(outer);
        assertThat(turning(car, 7, 0).rear.driveCapacity(false))
                .isCloseTo(inner + most, within(ROUNDING * (inner + most)));
    }

    /**
     * The inner front wheel leaves the road at ay = Z t/(2 m (b/L zf + kf h')), Z the axle's load, kf its share of roll stiffness; beyond, the
     * rear axle takes all the moment that is left. Derived from the moments about the roll axis.
     */
    @Test
    void aWheelLiftsAndTheOtherAxleTakesTheRest() {
        double height = 0.6;
        double rollCentre = 0.1;
        PlainCar car = PlainCar.ofMass(1000)
                .with(Quantity.CG_HEIGHT, height)
                .with(Quantity.ROLL_CENTRE_FRONT, rollCentre)
                .with(Quantity.ROLL_CENTRE_REAR, rollCentre)
                .with(Quantity.BAR_FRONT, 3000);
        double tyres = 200e3 * 1.5 * 1.5 / 2;
        double springs = 100e3 * 1.5 * 1.5 / 2;
        double barred = springs + 3000 * 180 / Math.PI;
        double front = barred * tyres / (barred + tyres);
        double rear = springs * tyres / (springs + tyres);
        double share = front / (front + rear);
        double axle = 500 * G;
        double arm = 0.5 * rollCentre + share * (height - rollCentre);
        double lifts = axle * 1.5 / (2 * 1000 * arm);
        WheelForces wheels = turning(car, lifts, 0);
        assertThat(0.5 * wheels.frontLoad - wheels.frontTransfer).isCloseTo(0, within(1e-9 * axle));
        double more = 1.1 * lifts;
        wheels = turning(car, more, 0);
        assertThat(wheels.frontTransfer).isCloseTo(axle / 2, within(ROUNDING * axle));
        assertThat(wheels.rearTransfer).isCloseTo(1000 * more * height / 1.5 - axle / 2, within(1e-9 * axle));
    }

    /** The same at the other end, on tracks of two widths: what the rear cannot take, m ay h - Z tr/2, the front takes on its own width. */
    @Test
    void aRearWheelLiftsAndTheFrontTakesTheRest() {
        double height = 0.6;
        PlainCar car = PlainCar.ofMass(1000)
                .with(Quantity.CG_HEIGHT, height)
                .with(Quantity.TRACK_REAR, 1.3)
                .with(Quantity.BAR_REAR, 9000);
        double axle = 500 * G;
        double lateral = 10;
        double front = (1000 * lateral * height - axle / 2 * 1.3) / 1.5;
        assertThat(front).as("what the front can take").isLessThan(axle / 2);
        WheelForces wheels = turning(car, lateral, 0);
        assertThat(wheels.rearTransfer).isCloseTo(axle / 2, within(ROUNDING * axle));
        assertThat(wheels.frontTransfer).isCloseTo(front, within(1e-9 * axle));
    }

    /**
     * Loads apart by m ay h/(2 t) on each axle, tyres with μ (1 - k (F/F0 - 1)): of four wheels Σ μF (1 + k) - μ k F²/F0 = m ay, a
     * quadratic for ay, worked by hand. The stiffness falls with load as friction does, so that all wheels peak at one slip angle.
     */
    @ParameterizedTest
    @CsvSource({"0.1, 0.4", "0.2, 0.5", "0.3, 0.3"})
    void loadTransferCostsASensitiveCarItsLimit(double k, double height) {
        double mu = 1.2;
        double reference = 2000;
        PlainCar car = PlainCar.ofMass(1000)
                .friction(mu)
                .with(Quantity.CG_HEIGHT, height)
                .with(Quantity.SENSITIVITY_Y_FRONT, k)
                .with(Quantity.SENSITIVITY_Y_REAR, k)
                .with(Quantity.STIFFNESS_SENSITIVITY_FRONT, k)
                .with(Quantity.STIFFNESS_SENSITIVITY_REAR, k)
                .with(Quantity.REFERENCE_LOAD_FRONT, reference)
                .with(Quantity.REFERENCE_LOAD_REAR, reference);
        double wheel = 1000 * G / 4;
        double apart = 1000 * height / 1.5 / 2;
        // 4 wheels: 4 μ w (1 + k) - 4 μ k (w² + (apart ay)²)/F0 = m ay.
        double a = 4 * mu * k * apart * apart / reference;
        double c = -4 * mu * wheel * (1 + k - k * wheel / reference);
        double lateral = (-1000 + Math.sqrt(1e6 - 4 * a * c)) / (2 * a);
        double radius = 60;
        double speed = SlipTable.fastLimit(car.car(), radius);
        // The drag of cornering of tyres as stiff as the model takes them costs (1.8 μ/500)²/2 of the grip, 1e-5, and
        // moves as much load; ten
        // times that.
        assertThat(speed * speed / radius).isCloseTo(lateral, within(1e-4 * lateral));
        assertThat(lateral).isLessThan(0.99 * mu * G);
    }

    /**
     * Four driven wheels on the straight, share s at the front: the axle that gives up first sets a = min(μ Zf/s, μ Zr/(1 - s))/m, loads
     * moved by m a h/L; without a centre differential μ g. Gillespie, chapter 2, from memory, with both axles driven.
     */
    @ParameterizedTest
    @CsvSource({"30, 0", "50, 0", "40, 0", "50, 100", "30, 100"})
    void fourDrivenWheelsGiveUpAxleByAxle(double percent, double centre) {
        double mu = 0.9;
        double height = 0.5 / 2.5;
        PlainCar car = PlainCar.ofMass(1000)
                .friction(mu)
                .frontDrive(percent / 100)
                .with(Quantity.CG_HEIGHT, 0.5)
                .with(Quantity.CENTRE_LOCK, centre);
        double s = percent / 100;
        // Front: s a = μ (g/2 - a h/L); rear: (1 - s) a = μ (g/2 + a h/L).
        double byFront = mu * G / 2 / (s + mu * height);
        double byRear = mu * G / 2 / (1 - s - mu * height);
        double expected = centre == 100 ? mu * G : Math.min(byFront, byRear > 0 ? byRear : byFront);
        // As good as straight: v²/R is a thousandth of a m/s², its square in the ellipse nothing.
        double driven = SlipTable.fastDrive(car.car(), 5000, 2);
        assertThat(driven).isCloseTo(expected, within(1e-4 * expected));
    }
}
