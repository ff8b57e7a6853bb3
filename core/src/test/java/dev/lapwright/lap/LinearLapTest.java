package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.PlainCar;
import dev.lapwright.study.StudyCars;
import org.junit.jupiter.api.Test;

/**
 * What bounds a lap, linearised, against derivatives by hand for a point mass: Newton's second law, a circle of friction, and v² = μ g R. Differences
 * of 1e-6 stand for derivatives: they are good to some 1e-6 of a slope, and rounding adds as much.
 */
class LinearLapTest {
    private static final double G = PlainCar.GRAVITY;
    private static final double MASS = 1000;
    private static final double FORCE = 4000;
    private static final double RADIUS = 60;
    /** Brings accelerations (m/s²) to the size of shares of grip. */
    private static final double SCALE = 10;

    private static final double STRAIGHT = 300;

    /** The plain car's bends cost a little drag (see its comment), some 1e-5 of the grip, which rises steeply near the limit. */
    private static final double CORNERING = 1e-3;

    private final Lap lap;
    private final LinearLap linear;
    private final double[] s;
    private final double[] e;

    LinearLapTest() {
        Vehicle car = PlainCar.ofMass(MASS).force(FORCE).topSpeed(140).vehicle();
        LapSolver solver = LapSolver.on(StudyCars.oval(STRAIGHT, RADIUS));
        lap = solver.solve(car);
        linear = solver.linearised(car);
        s = lap.column(Channel.DISTANCE);
        e = lap.column(Channel.SPEED);
        for (int i = 0; i < e.length; i++) {
            e[i] = 0.5 * e[i] * e[i];
        }
    }

    /** Whether a cell and those beside it lie on the first straight. */
    private boolean isOnStraight(int cell) {
        return s[cell] > 10 && s[cell + 1] < STRAIGHT - 10;
    }

    @Test
    void itIsOfTheLapThatIsSolved() {
        assertThat(linear.time()).isEqualTo(lap.time());
        assertThat(linear.cells()).isEqualTo(s.length - 1);
        double sum = 0;
        for (int i = 0; i < linear.cells(); i++) {
            sum += linear.cellTime(i);
        }
        assertThat(sum).isCloseTo(lap.time(), within(1e-9));
    }

    /** Driven, m (e₁ - e₀)/h ≤ F, told over 10 m: nothing is left of it. */
    @Test
    void underDriveTheForceBindsAndItsSlopesAreThoseOfNewtonsLaw() {
        int seen = 0;
        for (int i = 0; i < linear.cells(); i++) {
            double h = s[i + 1] - s[i];
            // Not the cell in which drive ends and braking begins.
            if (isOnStraight(i) && e[i + 1] > e[i] + 0.99 * FORCE / MASS * h) {
                seen++;
                LinearLap.Rows drive = linear.drive();
                assertThat(drive.slack(i)).isCloseTo(0, within(1e-9));
                assertThat(drive.perStart(i)).isCloseTo(-e[i] / h / SCALE, within(1e-5 * e[i] / h));
                assertThat(drive.perEnd(i)).isCloseTo(e[i + 1] / h / SCALE, within(1e-5 * e[i] / h));
                assertThat(drive.perLength(i)).isCloseTo(-FORCE / MASS / h / SCALE, within(1e-5 / h));
                assertThat(drive.perCurvatureStart(i)).isZero();
                // Tyres of friction 1 could do more: g, of which 4 m/s² are used.
                assertThat(linear.grip().slack(i)).isCloseTo(1 - FORCE / MASS / G, within(1e-6));
                assertThat(linear.grip().perEnd(i)).isCloseTo(e[i + 1] / h / G, within(1e-5 * e[i] / h));
            }
        }
        assertThat(seen).isGreaterThan(10);
    }

    /** Braked by all that tyres of friction 1 hold, (e₀ - e₁)/(h g) ≤ 1. */
    @Test
    void underBrakesTheTyresBind() {
        int seen = 0;
        for (int i = 0; i < linear.cells(); i++) {
            double h = s[i + 1] - s[i];
            if (isOnStraight(i) && e[i + 1] < e[i] - 0.9 * G * h) {
                seen++;
                LinearLap.Rows grip = linear.grip();
                assertThat(grip.slack(i)).isZero();
                assertThat(grip.perStart(i)).isCloseTo(e[i] / h / G, within(1e-5 * e[i] / h));
                assertThat(grip.perEnd(i)).isCloseTo(-e[i + 1] / h / G, within(1e-5 * e[i] / h));
                assertThat(grip.perLength(i)).isCloseTo(-1 / h, within(1e-5 / h));
                // The engine could push the other way: F over m and g more.
                assertThat(linear.drive().slack(i)).isCloseTo((G + FORCE / MASS) / SCALE, within(1e-5));
            }
        }
        assertThat(seen).isGreaterThan(3);
    }

    /** Round the half circle at its limit, v² = g R: 2 e κ/g = 1, and de/e = -dκ/κ. */
    @Test
    void roundABendTheLimitFallsAsTheCurvatureGrows() {
        int seen = 0;
        for (int i = 0; i < linear.cells(); i++) {
            boolean inBend = s[i] > STRAIGHT + 60 && s[i + 1] < STRAIGHT + Math.PI * RADIUS - 60;
            if (inBend) {
                seen++;
                assertThat(linear.limitSlack(i)).isCloseTo(0, within(1e-9));
                assertThat(linear.limitPerCurvature(i)).isCloseTo(-RADIUS, within(CORNERING * RADIUS));
                double bend = linear.grip().perCurvatureStart(i) + linear.grip().perCurvatureEnd(i);
                assertThat(bend).as("of the end looked at").isCloseTo(RADIUS, within(CORNERING * RADIUS));
            }
        }
        assertThat(seen).isGreaterThan(3);
    }

    /** On the straight there is no such limit: what the car could hold at the speed that it reaches is many times the energy. */
    @Test
    void onAStraightNoBendBinds() {
        for (int i = 0; i < linear.cells(); i++) {
            if (isOnStraight(i)) {
                assertThat(linear.limitSlack(i)).isPositive();
            }
        }
    }
}
