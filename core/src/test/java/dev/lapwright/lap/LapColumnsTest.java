package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.PlainCar;
import dev.lapwright.study.StudyCars;
import org.junit.jupiter.api.Test;

/** What a lap tells at each station, against a point mass on four tyres of friction 1: Newton's second law and a circle of friction. */
class LapColumnsTest {
    private static final double G = PlainCar.GRAVITY;
    private static final double MASS = 1000;
    private static final double FORCE = 4000;
    private static final double RADIUS = 60;
    private static final double STRAIGHT = 300;
    /** The solver's own, relative. */
    private static final double SOLVED = 1e-6;
    /** The plain car's bends cost a little drag and grip; see its comment. */
    private static final double CORNERING = 1e-4;

    private static Lap lap(double topSpeed) {
        return LapSolver.on(StudyCars.oval(STRAIGHT, RADIUS))
                .solve(PlainCar.ofMass(MASS).force(FORCE).topSpeed(topSpeed).vehicle());
    }

    private static double at(Lap lap, Channel channel, int station) {
        return lap.column(channel)[station];
    }

    /** The station at a distance or the next. */
    private static int station(Lap lap, double distance) {
        double[] s = lap.column(Channel.DISTANCE);
        int i = 0;
        while (s[i] < distance) {
            i++;
        }
        return i;
    }

    @Test
    void drivenOnAStraightAllIsTheEnginesForce() {
        Lap lap = lap(140);
        int i = station(lap, 50);
        assertThat(lap.limit(i)).isEqualTo(Limit.POWER);
        assertThat(at(lap, Channel.LONGITUDINAL_ACCELERATION, i)).isCloseTo(FORCE / MASS, within(SOLVED * 4));
        assertThat(at(lap, Channel.DRIVE_FORCE, i)).isCloseTo(FORCE, within(SOLVED * FORCE));
        assertThat(at(lap, Channel.BRAKE_FORCE, i)).isZero();
        for (Channel channel : new Channel[] {Channel.UTILISATION_FRONT, Channel.UTILISATION_REAR}) {
            assertThat(at(lap, channel, i)).as(channel.label()).isCloseTo(FORCE / MASS / G, within(SOLVED));
        }
    }

    @Test
    void brakedOnAStraightAllIsTheTyresForce() {
        Lap lap = lap(140);
        int i = station(lap, STRAIGHT - 15);
        assertThat(lap.limit(i)).isEqualTo(Limit.BRAKES);
        assertThat(at(lap, Channel.LONGITUDINAL_ACCELERATION, i)).isCloseTo(-G, within(SOLVED * G));
        assertThat(at(lap, Channel.BRAKE_FORCE, i)).isCloseTo(MASS * G, within(SOLVED * MASS * G));
        assertThat(at(lap, Channel.DRIVE_FORCE, i)).isZero();
        assertThat(at(lap, Channel.UTILISATION_FRONT, i)).isCloseTo(1, within(SOLVED));
        assertThat(at(lap, Channel.UTILISATION_REAR, i)).isCloseTo(1, within(SOLVED));
    }

    /** v² = g R, all grip used across. */
    @Test
    void inABendAllGripIsUsedAcross() {
        Lap lap = lap(140);
        int i = station(lap, STRAIGHT + 0.5 * Math.PI * RADIUS);
        assertThat(lap.limit(i)).isIn(Limit.FRONT_GRIP, Limit.REAR_GRIP);
        assertThat(at(lap, Channel.SPEED, i)).isCloseTo(Math.sqrt(G * RADIUS), within(CORNERING * 24));
        assertThat(at(lap, Channel.SPEED_LIMIT, i)).isCloseTo(Math.sqrt(G * RADIUS), within(CORNERING * 24));
        assertThat(at(lap, Channel.LATERAL_ACCELERATION, i)).isCloseTo(G, within(CORNERING * G));
        assertThat(at(lap, Channel.LATERAL_UTILISATION_FRONT, i)).isCloseTo(1, within(CORNERING));
        assertThat(at(lap, Channel.LATERAL_UTILISATION_REAR, i)).isCloseTo(1, within(CORNERING));
        assertThat(at(lap, Channel.UTILISATION_FRONT, i)).isCloseTo(1, within(CORNERING));
    }

    /** With the centre of gravity in the road nothing moves between wheels, and without air nothing presses on springs. */
    @Test
    void aPointMassStandsOnItsFourWheelsAlike() {
        Lap lap = lap(140);
        for (double s : new double[] {50, STRAIGHT - 15, STRAIGHT + 90}) {
            int i = station(lap, s);
            for (Channel channel : new Channel[] {
                Channel.LOAD_FRONT_LEFT, Channel.LOAD_FRONT_RIGHT, Channel.LOAD_REAR_LEFT, Channel.LOAD_REAR_RIGHT
            }) {
                assertThat(at(lap, channel, i)).as(channel.label()).isCloseTo(MASS * G / 4, within(1e-9 * MASS * G));
            }
            assertThat(at(lap, Channel.RIDE_HEIGHT_FRONT, i)).isCloseTo(100, within(1e-9));
            assertThat(at(lap, Channel.RIDE_HEIGHT_REAR, i)).isCloseTo(100, within(1e-9));
            assertThat(at(lap, Channel.DRAG, i)).isZero();
            assertThat(at(lap, Channel.DOWNFORCE_FRONT, i)).isZero();
            assertThat(at(lap, Channel.DOWNFORCE_REAR, i)).isZero();
        }
    }

    /** A car that may go no faster than it can round the bend: the engine's end is its limit all the way round. */
    @Test
    void atTheEndOfTheEngineThatIsTheLimit() {
        Lap lap = lap(20);
        int i = station(lap, STRAIGHT / 2);
        assertThat(lap.limit(i)).isEqualTo(Limit.REV_LIMIT);
        assertThat(at(lap, Channel.SPEED, i)).isCloseTo(20, within(SOLVED * 20));
        assertThat(at(lap, Channel.LONGITUDINAL_ACCELERATION, i)).isCloseTo(0, within(SOLVED));
        assertThat(lap.time()).isCloseTo((2 * STRAIGHT + 2 * Math.PI * RADIUS) / 20, within(1e-6));
    }
}
