package dev.lapwright.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** How far corners turn. */
class TurningTest {
    private static final double QUARTER = Math.PI / 2;
    /** Rounding of a few hundred sums of angles. */
    private static final double ROUNDING = 1e-9;

    /** A rectangle with rounded ends of arcs and clothoids: four quarter turns to the left. */
    private static Track oblong() {
        List<Segment> segments = new ArrayList<>();
        for (int side = 0; side < 4; side++) {
            segments.add(Segment.straight(side % 2 == 0 ? 400 : 150));
            segments.add(Segment.clothoid(20, Double.POSITIVE_INFINITY, 40));
            // Each clothoid turns half its length over the radius, the arc the rest.
            segments.add(Segment.arc(40 * (QUARTER - 20.0 / 40), 40));
            segments.add(Segment.clothoid(20, 40, Double.POSITIVE_INFINITY));
        }
        return new SegmentPath(segments, true, 10).closedTrack("Oblong", 1);
    }

    private static Stations stations(Track track) {
        return track.stations(StationSpacing.DEFAULT);
    }

    private static double sum(Stations stations) {
        return stations.corners().stream().mapToDouble(stations::turning).sum();
    }

    @Test
    void aQuarterTurnTurnsByNearlyAQuarter() {
        Stations stations = stations(oblong());
        assertThat(stations.corners()).hasSize(4);
        for (Corner corner : stations.corners()) {
            // A corner begins where the bend is worth calling one: the ends of its clothoids, nearly straight, are left
            // out.
            assertThat(stations.turning(corner)).isBetween(0.95 * QUARTER, QUARTER + ROUNDING);
        }
    }

    @Test
    void aMirroredCornerTurnsTheOtherWay() {
        assertThat(sum(stations(oblong().mirrored()))).isCloseTo(-sum(stations(oblong())), within(ROUNDING));
    }

    @Test
    void aCornerAcrossTheStartLineTurnsAsBefore() {
        Track track = oblong();
        Corner first = stations(track).corners().get(0);
        Stations moved = stations(track.startingAt(first.apex()));
        Corner across = moved.corners().stream()
                .filter(corner -> corner.entry() > corner.exit())
                .findFirst()
                .orElseThrow();
        // Entry and exit are found between stations, which now lie elsewhere: within a hundredth of the turn.
        assertThat(moved.turning(across)).isCloseTo(stations(track).turning(first), within(0.01 * QUARTER));
    }
}
