package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.sun.management.ThreadMXBean;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.slip.SlipModel;
import dev.lapwright.slip.SlipState;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Laps by the fuller model: against what a lap is made of, and against the fast model where both are one. */
class SlipLapTest {
    private static final Stations CIRCUIT = TestTracks.circuit().stations(StationSpacing.DEFAULT);

    private static Vehicle vehicle(Car car) {
        return Vehicle.of(car, Conditions.STANDARD);
    }

    private static Vehicle winged() {
        return vehicle(TestCars.winged(Map.of(Quantity.SHIFT_TIME, 0.1)));
    }

    /** On a ring the lap is its length over the highest speed that is held: 2 π R/v, v from the equilibrium at the place. */
    @Test
    void aRingTakesItsLengthOverTheSpeedThatIsHeld() {
        Segment arc = Segment.arc(2 * Math.PI * 60, 60);
        Stations ring =
                new SegmentPath(List.of(arc), true, 1).closedTrack("ring", 1e-6).stations(StationSpacing.DEFAULT);
        SlipState state =
                SlipModel.of(winged()).fastest(Place.level(1.0 / 60), 80).orElseThrow();
        double lap = SlipModel.laps(ring).lapTime(winged());
        assertThat(lap).isCloseTo(2 * Math.PI * 60 / state.speed(), within(1e-5 * lap));
    }

    /**
     * A small car on stiff tyres, its centre of gravity in the road, is a point mass in both models: the friction circle is its limit. What is left
     * is the slip angle of the tyres, some 0.01 rad, and that wheels of a car have unlike ways, by length times width over the radius squared. The
     * fast lap is held to closed forms by the checks of toy laps.
     */
    @Test
    void aPointMassLapsAlikeInBothModels() {
        Vehicle point = vehicle(PlainCar.ofMass(1000)
                .stiffness(100)
                .with(Quantity.WHEELBASE, 1)
                .track(0.8)
                .car());
        double fast = new LapSolver(CIRCUIT).lapTime(point);
        double full = SlipModel.laps(CIRCUIT).lapTime(point);
        assertThat(full).isCloseTo(fast, within(0.001 * fast));
    }

    /** What a car gains of kinetic energy on the way round it loses: ∮ a ds = 0, by the trapezium rule to its error. */
    @Test
    void aClosedLapGainsNoEnergy() {
        Lap lap = SlipModel.laps(CIRCUIT).solve(winged());
        double gained = 0;
        double turned = 0;
        for (int i = 0; i + 1 < lap.count(); i++) {
            double ds = lap.value(Channel.DISTANCE, i + 1) - lap.value(Channel.DISTANCE, i);
            double mean = 0.5 * (lap.value(Channel.ACCELERATION, i) + lap.value(Channel.ACCELERATION, i + 1));
            gained += mean * ds;
            turned += Math.abs(mean) * ds;
        }
        assertThat(Math.abs(gained)).isLessThan(0.02 * turned);
    }

    @Test
    void aMirroredCircuitGivesTheSameLap() {
        Stations mirrored = TestTracks.circuit().mirrored().stations(StationSpacing.DEFAULT);
        assertThat(SlipModel.laps(mirrored).lapTime(winged()))
                .isCloseTo(SlipModel.laps(CIRCUIT).lapTime(winged()), within(1e-6));
    }

    @Test
    void theSameCarLapsTheSameWhateverWasSolvedBefore() {
        LapSolver solver = SlipModel.laps(CIRCUIT);
        double first = solver.lapTime(winged());
        solver.lapTime(vehicle(TestCars.winged(Map.of(Quantity.MASS, 900.0))));
        assertThat(solver.lapTime(winged())).isEqualTo(first);
    }

    /** A model that knows nothing leaves the fast answer, and says so everywhere. */
    @Test
    void whereNothingIsKnownTheFastAnswerStandsUnchecked() {
        LapSolver ignorant = LapSolver.asking(wheels -> new Ignorant(), CIRCUIT);
        Lap lap = ignorant.solve(winged());
        assertThat(lap.time()).isCloseTo(new LapSolver(CIRCUIT).lapTime(winged()), within(1e-6));
        for (int i = 0; i < lap.count(); i++) {
            assertThat(lap.isUnchecked(i)).isTrue();
        }
        Lap fast = new LapSolver(CIRCUIT).solve(winged());
        assertThat(fast.isUnchecked(3)).isFalse();
    }

    private static final class Ignorant implements StationLimits {
        @Override
        public double highest(double cap, double guess) {
            return Double.NaN;
        }

        @Override
        public double drive(double speed, double engine, double massFactor) {
            return Double.NaN;
        }

        @Override
        public double brake(double speed, double engineDrag, double massFactor) {
            return Double.NaN;
        }

        @Override
        public double engineForce() {
            return Double.NaN;
        }

        @Override
        public Limit limit() {
            return Limit.POWER;
        }
    }

    @Test
    void tyresOfAnotherExponentAreRefused() {
        Vehicle square = vehicle(TestCars.winged(Map.of(Quantity.FRICTION_EXPONENT, 4.0)));
        LapSolver solver = SlipModel.laps(CIRCUIT);
        assertThatThrownBy(() -> solver.lapTime(square))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("frictionExponent");
    }

    /** As counted by Java itself; an object at each station would be 16 bytes at least. */
    @Test
    @Tag("heavy")
    void noStationCostsMemory() {
        Stations fine = TestTracks.circuit().stations(StationSpacing.DEFAULT.scaled(0.5));
        int more = fine.count() - CIRCUIT.count();
        assertThat(more).isGreaterThan(300);
        long apart = least(SlipModel.laps(fine)) - least(SlipModel.laps(CIRCUIT));
        // Of a solver: none; of each lap a bit for each station.
        assertThat((double) apart / more).isLessThan(1);
    }

    private static long least(LapSolver solver) {
        return LongStream.range(0, 2).map(lap -> allocated(solver)).min().orElseThrow();
    }

    private static long allocated(LapSolver solver) {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long thread = Thread.currentThread().getId();
        Vehicle car = winged();
        long before = threads.getThreadAllocatedBytes(thread);
        solver.lapTime(car);
        return threads.getThreadAllocatedBytes(thread) - before;
    }
}
