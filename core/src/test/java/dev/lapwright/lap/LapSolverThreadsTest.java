package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.car.Conditions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;

class LapSolverThreadsTest {
    private static final int LAPS = 40;

    private final Vehicle vehicle = Vehicle.of(TestCars.winged(), Conditions.STANDARD);
    private final LapSolver shared = LapSolver.on(TestTracks.circuit());

    @Test
    void aSecondThreadIsRefusedWhileTheFirstIsInside() {
        double alone = shared.lapTime(vehicle);
        shared.enter();
        assertThatThrownBy(() -> shared.lapTime(vehicle))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("give each thread its own");
        shared.leave();
        assertThat(shared.lapTime(vehicle)).isEqualTo(alone);
    }

    @Test
    void everyLapOfASharedSolverIsRightOrRefused() throws Exception {
        double alone = shared.lapTime(vehicle);
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            List<Future<Double>> laps = new ArrayList<>();
            for (int i = 0; i < LAPS; i++) {
                laps.add(threads.submit(() -> {
                    try {
                        return shared.lapTime(vehicle);
                    } catch (IllegalStateException refused) {
                        return alone;
                    }
                }));
            }
            for (Future<Double> lap : laps) {
                assertThat(lap.get()).isEqualTo(alone);
            }
        } finally {
            threads.shutdownNow();
        }
    }
}
