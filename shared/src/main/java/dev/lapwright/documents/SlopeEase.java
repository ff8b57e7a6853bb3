package dev.lapwright.documents;

import dev.lapwright.fault.Check;
import dev.lapwright.track.Segment;
import java.util.List;

/**
 * Whether the change of slope between neighbouring segments fits into the length over which it is eased. Eased, the
 * vertical curvature is a triangle whose peak is twice the change of slope over that length (see {@link
 * dev.lapwright.track.SegmentPath}).
 */
final class SlopeEase {
    /** What a point of a track takes, 1/m. */
    static final double MAX_VERTICAL_CURVATURE = 0.2;
    /** The radius of that, m. */
    static final String LEAST_RADIUS = Check.text(1 / MAX_VERTICAL_CURVATURE);

    private final boolean closed;
    private final double easeLength;
    private final Faults faults;

    SlopeEase(boolean closed, double easeLength, Faults faults) {
        this.closed = closed;
        this.easeLength = easeLength;
        this.faults = faults;
    }

    /** Reports each joint that bends too sharply, at the segment after it. */
    void check(List<Segment> segments, List<Fields> places) {
        for (int i = closed ? 0 : 1; i < segments.size(); i++) {
            Segment before = segments.get(Math.floorMod(i - 1, segments.size()));
            Segment after = segments.get(i);
            double length = Math.min(easeLength, Math.min(before.length(), after.length()));
            double change = Math.abs(after.road().slope() - before.road().slope());
            if (2 * change / length > MAX_VERTICAL_CURVATURE) {
                Fields fields = places.get(i);
                String field = fields.nameGiven(RoadFields.SLOPE);
                faults.meaning(
                        fields.place(field),
                        fields.path(field),
                        "the slope changes too fast from the segment before: by " + Check.text(Math.toDegrees(change))
                                + " deg within " + Check.text(length) + " m",
                        "give it " + Check.text(2 * change / MAX_VERTICAL_CURVATURE)
                                + " m at least, by easeLengthM and longer segments");
            }
        }
    }
}
