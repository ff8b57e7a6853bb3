package dev.lapwright.documents;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.Locale;

/** Whether a circuit given by stations ends where it starts. */
final class Closure {
    /** A heading that misses by more bends the map visibly; the same bound as for circuits made of segments. */
    private static final double HEADING_TOLERANCE_DEG = 0.5;

    private Closure() {}

    /** Throws if the end of a closed track misses its start by more than {@code tolerance}, m, or half a degree. */
    static void check(Track track, double tolerance) {
        Stations laid = track.stations(StationSpacing.DEFAULT);
        double turns = Math.rint(laid.totalTurning() / (2 * Math.PI));
        double headingMiss = Math.toDegrees(laid.totalTurning() - 2 * Math.PI * turns);
        boolean closes = laid.planeGap() <= tolerance
                && Math.abs(laid.altitudeGap()) <= tolerance
                && Math.abs(headingMiss) <= HEADING_TOLERANCE_DEG;
        if (!closes) {
            throw new InvalidValueException(
                    "stations",
                    String.format(
                            Locale.ROOT,
                            "the circuit does not close: its end misses its start by %.2f m on the plane, %.2f m in"
                                    + " altitude and %.2f° in heading",
                            laid.planeGap(),
                            laid.altitudeGap(),
                            headingMiss),
                    "change curvatures, slopes or distances, or allow it with closureToleranceM (now "
                            + Check.text(tolerance) + " m; 0.5° in heading)");
        }
    }
}
