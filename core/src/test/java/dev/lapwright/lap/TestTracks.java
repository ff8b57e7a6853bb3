package dev.lapwright.lap;

import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;

/** Tracks for tests of the solver. */
public final class TestTracks {
    private static final double STRAIGHT = Double.POSITIVE_INFINITY;

    private TestTracks() {}

    /** Some 4.4 km: fast and slow corners, S-bends, a climb and a descent. Two like halves, so it closes by symmetry. */
    public static Track circuit() {
        List<Segment> path = new ArrayList<>();
        for (int half = 0; half < 2; half++) {
            path.add(Segment.straight(900).inclined(half == 0 ? 0.03 : -0.03, 0));
            bend(path, 60, 80, Math.PI / 2, 0.03);
            path.add(Segment.straight(500));
            bend(path, 20, 30, Math.PI / 2, 0);
            path.add(Segment.straight(150));
            bend(path, 30, 90, 0.7, 0);
            bend(path, 30, -120, -0.7, 0);
            bend(path, 25, -75, -0.6, 0);
            bend(path, 30, 140, 0.6, 0);
        }
        return new SegmentPath(path, true, 40).closedTrack("test circuit", 1e-3);
    }

    /** Clothoid, arc, clothoid; radius and turn (rad) positive to the left. */
    static void bend(List<Segment> path, double clothoid, double radius, double turn, double bank) {
        path.add(Segment.clothoid(clothoid, STRAIGHT, radius).inclined(0, bank));
        path.add(Segment.arc(radius * (turn - clothoid / radius), radius).inclined(0, bank));
        path.add(Segment.clothoid(clothoid, radius, STRAIGHT).inclined(0, bank));
    }

    /** An open run up a hill, from rest: a bend that opens, banked, and a straight over a crest. */
    static Track opening(double entrySpeed) {
        List<Segment> path = new ArrayList<>();
        path.add(Segment.arc(60, 40).inclined(0.02, 0.02));
        path.add(Segment.clothoid(120, 40, STRAIGHT).inclined(0.02, 0.04));
        path.add(Segment.straight(300).inclined(0.05, 0));
        path.add(Segment.straight(300).inclined(-0.02, 0));
        return new SegmentPath(path, false, 60).openTrack("opening bend", entrySpeed);
    }
}
