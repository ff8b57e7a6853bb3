package dev.lapwright.line;

import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Roads drawn at random: narrow and wide, open runs and circuits, with chicanes, banks and hills. The seed tells all. */
final class DrawnRoads {
    static final int COUNT = 30;

    private final Random random;
    private final double side;
    private final List<Segment> segments = new ArrayList<>();
    private double turned;

    private DrawnRoads(int seed) {
        random = new Random(seed);
        // Every third is narrow: 5 to 6 m of road, the others up to 16 m.
        side = seed % 3 == 0 ? between(2.5, 3) : between(3.5, 8);
    }

    /** The road of a seed: every other one is a circuit. */
    static Track of(int seed) {
        DrawnRoads drawn = new DrawnRoads(seed);
        return seed % 2 == 0 ? drawn.circuit(seed) : drawn.run(seed);
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private void straight(double length) {
        segments.add(Segment.straight(length).wide(side, side * between(0.8, 1.2)));
    }

    /** Turns through an angle, rad, to the left if positive. */
    private void bend(double radius, double angle) {
        double signed = Math.copySign(radius, angle);
        segments.add(Segment.arc(radius * Math.abs(angle), signed)
                .inclined(0, Math.copySign(between(0, 0.05), angle))
                .wide(side, side));
        turned += angle;
    }

    private void chicane() {
        double way = random.nextBoolean() ? 1 : -1;
        double radius = between(20, 40);
        double angle = between(0.4, 0.9);
        bend(radius, way * angle);
        bend(radius, -2 * way * angle);
        bend(radius, way * angle);
    }

    private void somewhere() {
        straight(between(40, 250));
        if (random.nextInt(3) == 0) {
            chicane();
        } else {
            bend(between(15, 120), (random.nextInt(4) == 0 ? -1 : 1) * between(0.3, 1.6));
        }
    }

    private Track run(int seed) {
        for (int i = 0; i < 6; i++) {
            somewhere();
        }
        straight(100);
        return new SegmentPath(segments, false, 1).openTrack("run " + seed, between(5, 30));
    }

    /** A path that turns by half a turn, driven twice, ends where it began, whatever it is. */
    private Track circuit(int seed) {
        for (int i = 0; i < 4; i++) {
            somewhere();
        }
        straight(60);
        double left = Math.PI - turned;
        bend(between(25, 60), left);
        straight(150);
        List<Segment> round = new ArrayList<>(segments);
        round.addAll(segments);
        return new SegmentPath(round, true, 1).closedTrack("circuit " + seed, 1e-3);
    }
}
