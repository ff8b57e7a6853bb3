package dev.lapwright.study.ride;

import dev.lapwright.fault.Check;
import dev.lapwright.ride.Kerb;
import dev.lapwright.ride.RoadClass;
import java.util.Objects;

/**
 * Road that a wheel is driven over: a kerb and a rough surface.
 *
 * @param kerb on a flat road
 * @param road class of the rough surface
 * @param seed by which the surface is drawn
 * @param contactLength length of the tyre's contact patch, m
 */
public record RoadInput(Kerb kerb, RoadClass road, long seed, double contactLength) {
    /** A half sine of 40 mm on 1 m, class A, a patch of 100 mm: common practice, no source. */
    public static final RoadInput STANDARD =
            new RoadInput(new Kerb(Kerb.Shape.HALF_SINE, 0.04, 1, 1), RoadClass.A, 1, 0.1);

    public RoadInput {
        Objects.requireNonNull(kerb, "kerb");
        Objects.requireNonNull(road, "road");
        Check.inRange("contact length (m)", contactLength, 0.005, 1);
    }
}
