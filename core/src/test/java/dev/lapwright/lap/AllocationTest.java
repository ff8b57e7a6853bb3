package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.track.StationSpacing;
import java.lang.management.ManagementFactory;
import java.util.Map;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** A lap allocates as much at many stations as at few, as counted by Java itself. */
class AllocationTest {
    /** An object at each station would be 16 bytes each at least (two words of head); a few more or less make less than one. */
    private static final double BYTES_A_STATION = 1;

    private static final int LAPS = 8;

    private final ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    private final Vehicle vehicle = Vehicle.of(TestCars.winged(Map.of(Quantity.SHIFT_TIME, 0.1)), Conditions.STANDARD);

    private long least(LapSolver solver) {
        // The first laps load classes.
        return LongStream.range(0, LAPS).map(lap -> allocated(solver)).min().orElseThrow();
    }

    private long allocated(LapSolver solver) {
        long thread = Thread.currentThread().getId();
        long before = threads.getThreadAllocatedBytes(thread);
        solver.lapTime(vehicle);
        return threads.getThreadAllocatedBytes(thread) - before;
    }

    @Test
    void noStationCostsMemory() {
        LapSolver few = new LapSolver(TestTracks.circuit().stations(StationSpacing.DEFAULT));
        LapSolver many = new LapSolver(TestTracks.circuit().stations(StationSpacing.DEFAULT.scaled(0.25)));
        int more = many.stations().count() - few.stations().count();
        assertThat(more).isGreaterThan(1000);
        assertThat((double) (least(many) - least(few)) / more).isLessThan(BYTES_A_STATION);
    }
}
