package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** A lap finds only the limits that it comes near; nowhere is it faster than any limit, found each by itself. */
class CornerLimitTest {
    @Test
    void noLapIsFasterThanALimitThatItDidNotLookFor() {
        Random random = new Random(7);
        Track track = TestTracks.circuit();
        Stations stations = track.stations(StationSpacing.DEFAULT);
        for (int i = 0; i < 20; i++) {
            Map<Quantity, Double> q = new TreeMap<>();
            q.put(Quantity.MASS, 600 + 900 * random.nextDouble());
            q.put(Quantity.CG_HEIGHT, 0.25 + 0.35 * random.nextDouble());
            q.put(Quantity.POWER_SCALE, 0.3 + 1.5 * random.nextDouble());
            Car car = TestCars.winged(q);
            Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
            Road road = new Road(stations, vehicle.wind);
            Kernel kernel = new Kernel(road, null);
            kernel.solve(vehicle);
            double[] limit = new double[road.cells + 1];
            CornerLimit limits = new CornerLimit(vehicle, new WheelForces(vehicle));
            limits.begin(road, limit, new double[limit.length]);
            limits.all();
            boolean reached = false;
            for (int s = 0; s <= road.cells; s++) {
                // Limits are found to rounding.
                assertThat(kernel.energy[s]).as("car %d, station %d", i, s).isLessThanOrEqualTo(limit[s] * (1 + 1e-9));
                reached |= kernel.energy[s] >= limit[s] * (1 - 1e-9);
            }
            assertThat(reached).as("a bend at the limit").isTrue();
        }
    }
}
