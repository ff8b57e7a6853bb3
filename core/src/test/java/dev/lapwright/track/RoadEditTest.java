package dev.lapwright.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RoadEditTest {
    /** Four straights joined by quarter circles of 50 m with transitions of 20 m; the first straight is half before the line. */
    private static Track square() {
        double arc = 50 * Math.PI / 2 - 20;
        List<Segment> corner = List.of(
                Segment.clothoid(20, Double.POSITIVE_INFINITY, 50),
                Segment.arc(arc, 50),
                Segment.clothoid(20, 50, Double.POSITIVE_INFINITY));
        List<Segment> segments = new ArrayList<>();
        segments.add(Segment.straight(150));
        for (int i = 0; i < 4; i++) {
            segments.addAll(corner);
            segments.add(Segment.straight(i == 3 ? 150 : 300));
        }
        return new SegmentPath(segments, true, 40).closedTrack("Square", 0.01);
    }

    private static List<Corner> corners(Track track) {
        return track.stations(StationSpacing.DEFAULT).corners();
    }

    @Test
    void aCornersRadiusIsWhatItWasSetToAndTheRestKeepsItsOwn() {
        Track before = square();
        RoadEdit.Result found =
                RoadEdit.of(before).radius(corners(before).get(1), 40).edited();
        List<Corner> after = corners(found.track());
        assertThat(after).hasSize(4);
        // Set exactly; only the rounding of headings, spread over the lap, changes it.
        assertThat(after.get(1).minimumRadius()).isCloseTo(40, within(0.01));
        for (int other : new int[] {0, 2, 3}) {
            // Closing moves corners by a fiftieth of what it moves straights.
            assertThat(after.get(other).minimumRadius()).isCloseTo(50, within(0.05));
        }
        Stations laid = found.track().stations(StationSpacing.DEFAULT);
        assertThat(laid.planeGap()).isLessThan(0.01);
        assertThat(laid.totalTurning())
                .isCloseTo(before.stations(StationSpacing.DEFAULT).totalTurning(), within(1e-9));
    }

    /** Of transitions linear in curvature no flank may become tighter than the apex that was asked for, however much gentler it is. */
    @Test
    void aCornersRadiusMayBeMoreThanDoubled() {
        Track before = square();
        RoadEdit.Result found =
                RoadEdit.of(before).radius(corners(before).get(1), 140).edited();
        assertThat(corners(found.track()).get(1).minimumRadius()).isCloseTo(140, within(0.5));
    }

    /**
     * A quarter turn whose arc and transitions all shrink by a share 1 − f has tangents shorter by as much (similar figures), so
     * that the circuit lacks (1 − f) T in each direction, with T = (R + p) tan 45° + q, p = L²/(24 R), q = L/2 (clothoid, any
     * survey textbook), 60.3 m. The least change takes half of it from the straight across. Here the ends shrink less than the
     * apex, so that it is less than that and more than half.
     */
    @Test
    void theStraightsBesideATighterCornerGrowByWhatItsTangentsShrink() {
        Track before = square();
        Track after =
                RoadEdit.of(before).radius(corners(before).get(1), 40).edited().track();
        double grown = straight(after, 1, 2) - straight(before, 1, 2);
        double tangent = 50 + 20.0 * 20 / (24 * 50) + 10;
        assertThat(grown).isBetween(0.25 * 0.2 * tangent, 0.5 * 0.2 * tangent);
    }

    private static double straight(Track track, int from, int to) {
        return corners(track).get(to).entry() - corners(track).get(from).exit();
    }

    @Test
    void aStraightHasTheLengthThatItWasSetToAndItsOppositeFollows() {
        Track before = square();
        double now = straight(before, 0, 1);
        Track after = RoadEdit.of(before)
                .straightBefore(corners(before).get(1), now + 50)
                .edited()
                .track();
        // Beside a corner stations stand up to 2.5 m apart, at either end of a straight.
        assertThat(straight(after, 0, 1)).isCloseTo(now + 50, within(5.0));
        // A square becomes a rectangle: the straight across grows by as much.
        assertThat(straight(after, 2, 3)).isCloseTo(now + 50, within(5.0));
        assertThat(straight(after, 1, 2)).isCloseTo(now, within(5.0));
    }

    @Test
    void bankHelpsTheCornerWhicheverWayItTurns() {
        for (Track track : List.of(square(), square().mirrored())) {
            Corner corner = corners(track).get(2);
            Track after = RoadEdit.of(track).bank(corner, 0.1).edited().track();
            double side = corner.left() ? 1 : -1;
            assertThat(after.pointAt(corner.apex()).bank()).isCloseTo(side * 0.1, within(1e-12));
            assertThat(after.pointAt(corners(track).get(1).apex()).bank()).isZero();
            assertThat(after.length()).isCloseTo(track.length(), within(1e-6));
        }
    }

    @Test
    void aWidthHoldsInItsCornerAndEasesBesideIt() {
        Track track = square();
        Corner corner = corners(track).get(0);
        Track after = RoadEdit.of(track).width(corner, 14).edited().track();
        assertThat(after.pointAt(corner.apex()).widthLeft()).isEqualTo(7);
        assertThat(after.pointAt(corner.entry()).widthRight()).isCloseTo(7, within(1e-9));
        assertThat(after.pointAt(corner.exit() + 30).widthLeft()).isEqualTo(5);
    }

    @Test
    void aHillyCircuitStillClosesInAltitude() {
        Track flat = square();
        List<TrackPoint> points = new ArrayList<>();
        double length = flat.length();
        Stations stations = flat.stations(StationSpacing.DEFAULT);
        double[] s = stations.s();
        double[] k = stations.curvature();
        for (int i = 0; i < s.length; i++) {
            double phase = 2 * Math.PI * s[i] / length;
            points.add(new TrackPoint(
                    s[i],
                    k[i],
                    0.03 * Math.sin(phase),
                    0,
                    0.03 * 2 * Math.PI / length * Math.cos(phase),
                    1,
                    5,
                    5,
                    Double.POSITIVE_INFINITY));
        }
        Track hilly = Track.closed("Hilly", points);
        Track after =
                RoadEdit.of(hilly).radius(corners(hilly).get(0), 35).edited().track();
        // The document's own tolerance is 1 m; the closing stops at 1e-4 m.
        assertThat(Math.abs(after.stations(StationSpacing.DEFAULT).altitudeGap()))
                .isLessThan(0.01);
    }

    @Test
    void aChangeThatTheRestCannotTakeIsRefused() {
        Track track = square();
        assertThatThrownBy(() -> RoadEdit.of(track)
                        .straightBefore(corners(track).get(1), 3000)
                        .edited())
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("change less at a time");
    }

    /** The square's second corner and third become one, from where the second began to where the third ended; the road stays. */
    @Test
    void cornersThatBendToOneSideAreMergedAndPutBack() {
        Track before = square();
        List<Corner> were = corners(before);
        RoadEdit.Result found = RoadEdit.of(before).merged(were.get(1)).edited();
        List<Corner> are = corners(found.track());
        assertThat(are).hasSize(3);
        assertThat(are.get(1).entry()).isEqualTo(were.get(1).entry());
        assertThat(are.get(1).exit()).isEqualTo(were.get(2).exit());
        assertThat(found.track().points()).isEqualTo(before.points());
        // The last one and the first meet over the start line.
        List<Corner> round =
                corners(RoadEdit.of(before).merged(were.get(3)).edited().track());
        assertThat(round).hasSize(3);
        assertThat(round).anyMatch(corner -> corner.entry() > corner.exit());
        // A road that is corrected as well takes the mark along.
        Track tighter = RoadEdit.of(before)
                .merged(were.get(1))
                .radius(were.get(3), 45)
                .edited()
                .track();
        assertThat(corners(tighter)).hasSize(3);
    }

    @Test
    void aCornerIsSplitAndPutTogetherAgain() {
        Track before = square();
        Corner first = corners(before).get(0);
        double place = first.entry() + 0.4 * (first.exit() - first.entry());
        Track split = RoadEdit.of(before).split(first, place).edited().track();
        List<Corner> two = corners(split);
        assertThat(two).hasSize(5);
        assertThat(two.get(0).entry()).isEqualTo(first.entry());
        assertThat(two.get(0).exit()).isEqualTo(place);
        assertThat(two.get(1).entry()).isEqualTo(place);
        assertThat(two.get(1).exit()).isEqualTo(first.exit());
        // The arc between the transitions has 50 m on both sides of the place.
        assertThat(two.get(0).minimumRadius()).isCloseTo(50, within(1e-6));
        assertThat(two.get(1).minimumRadius()).isCloseTo(50, within(1e-6));
        Track again = RoadEdit.of(split).merged(two.get(0)).edited().track();
        assertThat(corners(again)).isEqualTo(corners(before));
        assertThat(again.cornerNames()).isEmpty();
        // The other way round the start line.
        assertThat(corners(split.startingAt(100))).hasSize(5);
        assertThat(corners(split.mirrored())).hasSize(5);
    }

    @Test
    void whatIsNoOneCornerIsNotMergedAndNoPlaceOutsideSplits() {
        List<Segment> chicane = List.of(
                Segment.straight(100),
                Segment.arc(60, 50),
                Segment.straight(50),
                Segment.arc(60, -50),
                Segment.straight(100));
        Track track = new SegmentPath(chicane, false, 20).openTrack("Chicane", 30);
        List<Corner> corners = corners(track);
        RoadEdit edit = RoadEdit.of(track);
        assertThatThrownBy(() -> edit.merged(corners.get(0)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("bend to one side");
        assertThatThrownBy(() -> edit.merged(corners.get(1))).hasMessageContaining("no corner behind it");
        assertThatThrownBy(() -> edit.split(corners.get(0), 20)).hasMessageContaining("no place inside it");
    }
}
