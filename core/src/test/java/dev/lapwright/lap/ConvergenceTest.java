package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Conditions;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

/**
 * The order of convergence, measured: the slope of the straight line through log error over log spacing. The steps are of
 * third order (Kutta's rule: Hairer, Nørsett & Wanner, Solving Ordinary Differential Equations I, section II.1).
 */
class ConvergenceTest {
    /** Nothing of second order reaches this; half an order is left for coarse steps not yet in the limit. */
    private static final double SMOOTH = 2.5;

    /**
     * The full car's slope has kinks over distance and speed (grip to power, a wheel that lifts, gears), each worth one step
     * of second order at a place that falls anywhere in a cell. The chance in that averages to a few tenths of an order over
     * a dozen bends; even stations would give 1.5, less than this.
     */
    private static final double KINKED = 1.8;

    private static final double[] FACTORS = {4, 2, 1, 0.5, 0.25, 0.125};
    private static final StationSpacing FINEST = StationSpacing.DEFAULT.scaled(1 / 64.0);
    private static final double FREE = Double.POSITIVE_INFINITY;

    /** An error at a factor on the default spacing. */
    record Sample(double factor, double error) {}

    @Test
    void speedUnderConstantPowerConvergesWithThirdOrder() {
        assertThat(order(constantPower())).isGreaterThan(SMOOTH);
    }

    @Test
    void speedUnderBrakingConvergesWithThirdOrder() {
        assertThat(order(braking())).isGreaterThan(SMOOTH);
    }

    @Test
    void leavingTheCorneringLimitOfABendKeepsThirdOrder() {
        assertThat(order(openingBend(pointMass()))).isGreaterThan(SMOOTH);
    }

    @Test
    void theFullCarConvergesWithSecondOrderOutOfABend() {
        assertThat(order(openingBend(fullCar()))).isGreaterThan(KINKED);
    }

    /** Slope of log error over log spacing. */
    static double order(List<Sample> samples) {
        SimpleRegression line = new SimpleRegression();
        for (Sample sample : samples) {
            line.addData(Math.log(sample.factor()), Math.log(sample.error()));
        }
        return line.getSlope();
    }

    /** Errors at each spacing, from coarse to fine. */
    static List<Sample> samples(ToDoubleFunction<StationSpacing> error) {
        List<Sample> list = new ArrayList<>();
        for (double factor : FACTORS) {
            list.add(new Sample(factor, error.applyAsDouble(StationSpacing.DEFAULT.scaled(factor))));
        }
        return list;
    }

    /**
     * Greatest relative error of speed on a kilometre of straight from 30 m/s, 1000 kg, 200 kW, drag of 0.6 kg/m, against the
     * closed form of m v² dv/dx = P - k v³: v³ = vT³ - (vT³ - v0³) exp(-3 k x / m), vT³ = P/k (any mechanics text).
     */
    static List<Sample> constantPower() {
        double mass = 1000;
        double k = 0.6;
        double terminal = 200_000 / k;
        double entry = 30;
        Vehicle car =
                PlainCar.ofMass(mass).friction(4).drag(k).power(200_000, 5, 100).vehicle();
        Track road = Track.open("straight", entry, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(1000, 0)));
        return samples(spacing -> {
            Lap lap = new LapSolver(road.stations(spacing)).solve(car);
            double worst = 0;
            for (int i = 0; i < lap.count(); i++) {
                double fading = Math.exp(-3 * k * lap.value(Channel.DISTANCE, i) / mass);
                double exact = Math.cbrt(terminal - (terminal - entry * entry * entry) * fading);
                worst = Math.max(worst, Math.abs(lap.value(Channel.SPEED, i) / exact - 1));
            }
            return worst;
        });
    }

    /**
     * Greatest relative error of speed while braking to 20 m/s, 620 kg, friction 1.6, downforce of 2.15 and drag of 0.72 kg/m,
     * against the closed form of m v dv/dx = -(A + B v²): v² = (v1² + A/B) exp(2 B y / m) - A/B at y before the end, A = µ m g,
     * B = µ kz + kx (any mechanics text).
     */
    static List<Sample> braking() {
        double mass = 620;
        double friction = 1.6;
        double slow = 20;
        double length = 600;
        Vehicle car = PlainCar.ofMass(mass)
                .friction(friction)
                .drag(0.72)
                .downforce(2.15)
                .vehicle();
        double b = friction * 2.15 + 0.72;
        double ratio = friction * mass * PlainCar.GRAVITY / b;
        Track road = Track.open(
                "straight to a limit",
                slow,
                List.of(
                        TrackPoint.flat(0, 0),
                        TrackPoint.flat(length, 0),
                        new TrackPoint(length, 0, 0, 0, 0, 1, 5, 5, slow),
                        new TrackPoint(length + 10, 0, 0, 0, 0, 1, 5, 5, slow)));
        return samples(spacing -> {
            Lap lap = new LapSolver(road.stations(spacing)).solve(car);
            double worst = 0;
            int braked = 0;
            for (int i = 0; i < lap.count(); i++) {
                if (lap.limit(i) == Limit.BRAKES) {
                    double before = length - lap.value(Channel.DISTANCE, i);
                    double square = (slow * slow + ratio) * Math.exp(2 * b * before / mass) - ratio;
                    worst = Math.max(worst, Math.abs(lap.value(Channel.SPEED, i) / Math.sqrt(square) - 1));
                    braked++;
                }
            }
            // At four times the default spacing some ten stations are left.
            assertThat(braked).as("stations under braking").isGreaterThan(5);
            return worst;
        });
    }

    /**
     * Relative error of speed at the end of flat clothoids of 120 m out of arcs of a dozen radii, against the finest spacing:
     * root of the mean square over the bends. The car leaves its cornering limit where the clothoid begins.
     */
    static List<Sample> openingBend(Vehicle car) {
        List<Track> bends = new ArrayList<>();
        List<Double> exact = new ArrayList<>();
        for (double radius = 45; radius < 75; radius += 2.61) {
            Track bend = bend(radius);
            bends.add(bend);
            exact.add(exitSpeed(bend, FINEST, car));
        }
        return samples(spacing -> {
            double sum = 0;
            for (int i = 0; i < bends.size(); i++) {
                double error = exitSpeed(bends.get(i), spacing, car) / exact.get(i) - 1;
                sum += error * error;
            }
            return Math.sqrt(sum / bends.size());
        });
    }

    private static double exitSpeed(Track bend, StationSpacing spacing, Vehicle car) {
        return new LapSolver(bend.stations(spacing)).solve(car).speedAt(180);
    }

    private static Track bend(double radius) {
        List<Segment> path =
                List.of(Segment.arc(60, radius), Segment.clothoid(120, radius, FREE), Segment.straight(100));
        return new SegmentPath(path, false, 1).openTrack("opening bend", 15);
    }

    /** With drag and downforce, and power to spare: grip alone sets the pace. */
    static Vehicle pointMass() {
        return PlainCar.ofMass(1000).friction(1.5).drag(0.6).downforce(1.5).vehicle();
    }

    /** All of the model: load transfer, ride heights, gears and shifts. */
    static Vehicle fullCar() {
        return Vehicle.of(TestCars.winged(), Conditions.STANDARD);
    }
}
