package dev.lapwright.line;

import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;

/**
 * The shape of a line in short.
 *
 * @param length along the road's surface, m
 * @param leastRadius m; positive infinity if it is straight
 * @param leastRadiusAt where, by distance along the line, m
 * @param largestOffset from the road's own path, m, positive to the left: the one farthest from 0
 * @param largestOffsetAt where, by distance along the road, m
 */
public record LineFigures(
        double length, double leastRadius, double leastRadiusAt, double largestOffset, double largestOffsetAt) {

    /** Of a line. */
    public static LineFigures of(Line line) {
        double[] s = line.distances();
        double[] offsets = line.offsets();
        int far = 0;
        for (int i = 1; i < offsets.length; i++) {
            if (Math.abs(offsets[i]) > Math.abs(offsets[far])) {
                far = i;
            }
        }
        return of(line.driven(), offsets[far], s[far]);
    }

    /** Of a road's own path. */
    public static LineFigures of(Track road) {
        return of(road, 0, 0);
    }

    private static LineFigures of(Track path, double offset, double at) {
        double most = 0;
        double place = 0;
        for (TrackPoint point : path.points()) {
            if (Math.abs(point.curvature()) > most) {
                most = Math.abs(point.curvature());
                place = point.s();
            }
        }
        return new LineFigures(path.length(), 1 / most, place, offset, at);
    }
}
