package dev.lapwright.results;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;

class CornerTableTest {
    private static final double NO_LIMIT = Double.POSITIVE_INFINITY;

    /** A bend of 60 m radius and 90 degrees, banked so that its left side is lower, on a surface of grip 0.9. */
    private static Stations bend(int side) {
        double quarter = 60 * Math.PI / 2;
        Track track = new SegmentPath(
                        List.of(segment(100, 0), segment(quarter, side / 60.0), segment(100, 0)), false, 1)
                .openTrack("Bend", 10);
        return track.stations(StationSpacing.DEFAULT);
    }

    private static Segment segment(double length, double curvature) {
        return new Segment(length, curvature, curvature, new Segment.Road(0.02, 0.05, 0.9, 5, 5, NO_LIMIT), "");
    }

    private static CornerTable.Row row(int side) {
        List<CornerTable.Row> rows = CornerTable.rows(bend(side));
        assertThat(rows).hasSize(1);
        return rows.get(0);
    }

    @Test
    void bankThatLowersTheInsideHelps() {
        // The document's bank lowers the left side: it helps a left turn only.
        assertThat(row(1).helpingBank()).isCloseTo(0.05, within(1e-12));
        assertThat(row(-1).helpingBank()).isCloseTo(-0.05, within(1e-12));
    }

    @Test
    void turningIsPositiveToTheLeft() {
        // A quarter turn; where the corner begins and ends is found to a metre or so of an arc of 94 m.
        assertThat(row(1).turning()).isCloseTo(Math.PI / 2, within(0.03));
        assertThat(row(-1).turning()).isCloseTo(-Math.PI / 2, within(0.03));
    }

    @Test
    void slopeAndGripAreThoseOfTheRoadAtTheApex() {
        assertThat(row(1).slope()).isCloseTo(0.02, within(1e-12));
        assertThat(row(1).grip()).isEqualTo(0.9);
    }

    @Test
    void aStraightRunHasNamesAndNoRows() throws IOException {
        Track straight = new SegmentPath(List.of(segment(500, 0)), false, 1).openTrack("Strip", 10);
        StringBuilder csv = new StringBuilder();
        CircuitReport.of(straight.stations(StationSpacing.DEFAULT)).csv(CircuitReport.CORNERS, csv);
        assertThat(csv.toString().lines()).hasSize(1);
    }
}
