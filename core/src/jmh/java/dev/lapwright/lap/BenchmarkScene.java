package dev.lapwright.lap;

import dev.lapwright.car.Car;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;

/** What the benchmarks drive: an invented winged car round an invented circuit of about five kilometres. */
public final class BenchmarkScene {
    private static final double STRAIGHT = Double.POSITIVE_INFINITY;
    private static final double EASE = 60;

    private BenchmarkScene() {}

    /** Rear drive, a wing, a ride-height map, load-sensitive tyres, six gears, a limited-slip differential. */
    public static Car car() {
        return TestCars.winged();
    }

    /** Twelve corners from 24 to 220 m radius, two of them banked, a climb and a descent; two like halves, so it closes. */
    public static Track circuit() {
        List<Segment> path = new ArrayList<>();
        for (int half = 0; half < 2; half++) {
            double climb = half == 0 ? 0.03 : -0.03;
            path.add(Segment.straight(918).inclined(climb, 0));
            bend(path, 30, 24, 2.4, 0);
            path.add(Segment.straight(330).inclined(climb / 2, 0));
            bend(path, 50, -220, -0.8, 0);
            path.add(Segment.straight(120));
            bend(path, 50, 70, 1.3, 0.05);
            path.add(Segment.straight(210).inclined(-climb / 3, 0));
            bend(path, 35, -95, -0.9, 0);
            bend(path, 35, 85, 0.6, 0);
            path.add(Segment.straight(140));
            bend(path, 40, 150, Math.PI - 2.6, 0);
        }
        return new SegmentPath(path, true, EASE).closedTrack("benchmark circuit", 1e-3);
    }

    private static void bend(List<Segment> path, double clothoid, double radius, double turn, double bank) {
        path.add(Segment.clothoid(clothoid, STRAIGHT, radius).inclined(0, bank));
        path.add(Segment.arc(radius * turn - clothoid, radius).inclined(0, bank));
        path.add(Segment.clothoid(clothoid, radius, STRAIGHT).inclined(0, bank));
    }
}
