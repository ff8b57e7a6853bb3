package examples;

import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.CornerFigures;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Locale;

/** A circuit of four pieces: two straights, and two half circles of 80 m radius to the left, the second one banked. */
public final class OwnTrack {
    private OwnTrack() {}

    public static void main(String[] arguments) {
        double halfCircle = Math.PI * 80;
        SegmentPath path = new SegmentPath(
                List.of(
                        Segment.straight(500),
                        Segment.arc(halfCircle, 80),
                        Segment.straight(500),
                        Segment.arc(halfCircle, 80).inclined(0, Math.toRadians(4))),
                true,
                20);
        Track oval = path.closedTrack("Oval", 0.1);

        Lap lap = LapSolver.lap(Documents.car("gt-talvex"), oval, Conditions.STANDARD);
        System.out.printf(Locale.ROOT, "%.1f m in %.3f s%n", oval.length(), lap.time());
        for (CornerFigures corner : lap.corners()) {
            System.out.printf(Locale.ROOT, "%s: %.1f m/s%n", corner.corner().label(), corner.minimumSpeed());
        }
    }
}
