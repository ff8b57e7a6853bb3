package dev.lapwright.ride;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;

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
        RidePass.Trace trace = PassSolver.over(road, 10).trace(car);
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

    @ParameterizedTest(name = "{0}")
    @CheckFile("base-excitation.csv")
    void theBodyMovesAsTheTextbookSays(CheckRow row) {
        double zeta = row.number("damping_ratio");
        row.verify(
                switch (row.quantity()) {
                    case "amplitude of the car on a rough road" -> {
                        double omega = 2 * Math.PI * (20 / 3.6) / 6;
                        yield 0.05 * bodyOverRoad(1200, 400e3, 2 * zeta * Math.sqrt(400e3 * 1200), omega);
                    }
                    case "body over road at sqrt(2) of its frequency" -> bodyOverRoad(zeta, Math.sqrt(2));
                    case "peak of body over road" ->
                        bodyOverRoad(zeta, Math.sqrt(Math.sqrt(1 + 8 * zeta * zeta) - 1) / (2 * zeta));
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    /** Of 400 kg on 40 kN/m, 10 rad/s, at a multiple of that. */
    private static double bodyOverRoad(double zeta, double multiple) {
        return bodyOverRoad(400, 40e3, 2 * zeta * Math.sqrt(40e3 * 400), 10 * multiple);
    }

    /** What is looked at is over the road's speed, for waves of 1 mm. */
    @ParameterizedTest(name = "{0}")
    @CheckFile("ride-invariants.csv")
    void noSpringAndNoDamperChangesWhatTheTyreSets(CheckRow row) {
        boolean hop = row.quantity().startsWith("body acceleration");
        double omega = Math.sqrt(160e3 / (hop ? 45 : 295));
        Damper damper = Damper.linear(row.number("damping_nspm"));
        QuarterCar car = new QuarterCar(250, 45, row.number("spring_npm"), 160e3, 0, damper, 1, 0);
        RidePass pass = PassSolver.over(SineRoad.at10(1e-3, omega, 20, 10), 10).drive(car);
        row.verify((hop ? pass.peakBodyAcceleration() : pass.stroke().bumpTravel()) / (1e-3 * omega));
    }

    @Test
    void withoutDampingTheCarAnswersAHalfWaveAsTheSumOfItsModes() {
        QuarterCar car = new QuarterCar(300, 40, 60e3, 250e3, 0, Damper.linear(0), 1, 0);
        double h = 5e-3;
        double speed = 20;
        double length = 1;
        // A patch of 5 mm takes (π 0.005/2)²/6 = 1e-5 off the wave; the rest is the integrator's.
        RidePass.Trace trace = PassSolver.over(new Kerb(Kerb.Shape.HALF_SINE, h, length, 1).felt(0.005), speed)
                .trace(car);
        double tau = length / speed;
        double p = Math.PI / tau;
        double[] time = trace.time();
        double[] body = trace.body();
        QuarterCar.Modes modes = car.modes();
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
