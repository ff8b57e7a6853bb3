package dev.lapwright.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The integrated motion on sine waves against closed forms. */
class BaseExcitationTest {
    /** Steady amplitude of the body over that of the road, tyre and wheel as good as rigid and without mass. */
    private static double bodyOverRoad(double mass, double spring, double damping, double omega) {
        // A tyre 5000 times as stiff as the spring shifts the amplitude by some 2e-4.
        QuarterCar car = new QuarterCar(mass, 1, spring, 5000 * spring, 0, Damper.linear(damping), 1, 0);
        double natural = Math.sqrt(spring / mass);
        double ratio = damping / (2 * Math.sqrt(spring * mass));
        // Transients fall to e^-9 before counting begins.
        double runUp = 9 / (ratio * natural);
        double seconds = runUp + Math.max(2 * 2 * Math.PI / omega, 0.5);
        SineRoad road = SineRoad.at10(1e-3, omega, seconds, Math.min(runUp, seconds / 2));
        RideTrace trace = PassSolver.over(road, 10).trace(car);
        double[] body = trace.body();
        double[] time = trace.time();
        double last = time[time.length - 1];
        double peak = 0;
        for (int i = 0; i < body.length; i++) {
            if (time[i] > last - 2 * Math.PI / omega) {
                peak = Math.max(peak, Math.abs(body[i]));
            }
        }
        return peak / 1e-3;
    }

    @Test
    void theCarOnAWavyRoadMovesAsInRao() {
        // Rao, Mechanical Vibrations, example of a vehicle on a rough road: 1200 kg, 400 kN/m, damping ratio 0.5, 20
        // km/h,
        // waves of 6 m and 0.05 m: 0.0550 m (as printed there, to half of its last digit).
        double omega = 2 * Math.PI * (20 / 3.6) / 6;
        double ratio = bodyOverRoad(1200, 400e3, 2 * 0.5 * Math.sqrt(400e3 * 1200), omega);
        assertThat(0.05 * ratio).isCloseTo(0.0550, within(5e-5));
    }

    @ParameterizedTest
    @CsvSource({"0.1", "0.3", "0.7"})
    void atRootTwoOfItsFrequencyTheBodyMovesAsTheRoad(double zeta) {
        // T = 1 at r = √2 whatever the damping (any text on vibration). 0.1 %: the tyre's 2e-4 times the steepness
        // there.
        double ratio = bodyOverRoad(400, 40e3, 2 * zeta * Math.sqrt(40e3 * 400), Math.sqrt(2) * 10);
        assertThat(ratio).isCloseTo(1, within(1.5e-3));
    }

    @ParameterizedTest
    @CsvSource({"0.2, 2.7339", "0.3, 1.9946", "0.5, 1.4679", "0.7, 1.2764"})
    void thePeakOfTransmissionIsThatOfTheClosedForm(double zeta, double peak) {
        // At r² = (√(1 + 8 ζ²) - 1)/(4 ζ²): from the derivative of the textbook's T(r). Tolerance as above.
        double r = Math.sqrt(Math.sqrt(1 + 8 * zeta * zeta) - 1) / (2 * zeta);
        double ratio = bodyOverRoad(400, 40e3, 2 * zeta * Math.sqrt(40e3 * 400), r * 10);
        assertThat(ratio).isCloseTo(peak, Percentage.withPercentage(0.1));
    }

    @ParameterizedTest
    @CsvSource({"10000, 800", "16000, 1500", "25000, 2500", "40000, 4000"})
    void bodyAccelerationAtWheelHopIsTheSameForAnySpringAndDamper(double spring, double damping) {
        // Hedrick and Butsuen (1990); Rajamani, Vehicle Dynamics and Control, chapter 10 (from memory): over the road's
        // speed √(kt mu)/ms at ω = √(kt/mu). ms 250, mu 45, kt 160000: 10.733126 1/s at 59.6285 rad/s. Peaks are seen
        // every
        // 0.5 ms: cos(59.6 · 0.00025) is 1.1e-4 short of one.
        double omega = Math.sqrt(160e3 / 45);
        QuarterCar car = new QuarterCar(250, 45, spring, 160e3, 0, Damper.linear(damping), 1, 0);
        SineRoad road = SineRoad.at10(1e-3, omega, 20, 10);
        RidePass pass = PassSolver.over(road, 10).drive(car);
        assertThat(pass.peakBodyAcceleration() / (1e-3 * omega)).isCloseTo(10.733126, Percentage.withPercentage(0.03));
    }

    @ParameterizedTest
    @CsvSource({"10000, 800", "16000, 1500", "25000, 2500", "40000, 4000"})
    void suspensionTravelAtTheTyresFrequencyIsTheSameForAnySpringAndDamper(double spring, double damping) {
        // The same sources: ((ms + mu)/ms) √((ms + mu)/kt) at ω = √(kt/(ms + mu)): 0.05066791 s at 23.2889 rad/s.
        double omega = Math.sqrt(160e3 / 295);
        QuarterCar car = new QuarterCar(250, 45, spring, 160e3, 0, Damper.linear(damping), 1, 0);
        SineRoad road = SineRoad.at10(1e-3, omega, 20, 10);
        RidePass pass = PassSolver.over(road, 10).drive(car);
        assertThat(pass.bumpTravel() / (1e-3 * omega)).isCloseTo(0.05066791, Percentage.withPercentage(0.03));
    }

    @Test
    void withoutDampingTheCarAnswersAHalfWaveAsTheSumOfItsModes() {
        QuarterCar car = new QuarterCar(300, 40, 60e3, 250e3, 0, Damper.linear(0), 1, 0);
        double h = 5e-3;
        double speed = 20;
        double length = 1;
        // A patch of 5 mm takes (π 0.005/2)²/6 = 1e-5 off the wave; the rest is the integrator's.
        RideTrace trace = PassSolver.over(new Kerb(KerbShape.HALF_SINE, h, length, 1).felt(0.005), speed)
                .trace(car);
        double tau = length / speed;
        double p = Math.PI / tau;
        double[] time = trace.time();
        double[] body = trace.body();
        RideModes modes = car.modes();
        double worst = 0;
        double greatest = Arrays.stream(body).map(Math::abs).max().orElseThrow();
        for (int i = 0; i < time.length; i++) {
            // The kerb begins half a patch after the pass.
            double t = time[i] - 0.0025 / speed;
            if (t <= tau + 0.001) {
                continue;
            }
            double sum = residual(car, modes.bodyFrequency(), 1, modes.bodyShape(), h, p, tau, t)
                    + residual(car, modes.wheelFrequency(), modes.wheelShape(), 1, h, p, tau, t);
            worst = Math.max(worst, Math.abs(sum - body[i]));
        }
        assertThat(worst).isLessThan(2e-4 * greatest);
    }

    /**
     * The body's share in one mode after a half wave of road, by Duhamel's integral: q'' + ω² q = φ kt h sin(p t)/m, and ∫ sin(p
     * s) sin(ω (t - s)) ds over the half wave = p (sin ωt + sin ω(t - τ))/(p² - ω²).
     */
    private static double residual(
            QuarterCar car, double hertz, double body, double wheel, double h, double p, double tau, double t) {
        double w = 2 * Math.PI * hertz;
        double modal = car.sprungMass() * body * body + car.unsprungMass() * wheel * wheel;
        double integral = p / (p * p - w * w) * (Math.sin(w * t) + Math.sin(w * (t - tau)));
        return body * wheel * car.tyreRate() * h / (modal * w) * integral;
    }
}
