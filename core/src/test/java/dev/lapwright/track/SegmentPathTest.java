package dev.lapwright.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import java.util.List;
import org.junit.jupiter.api.Test;

class SegmentPathTest {
    /** Curvature linear over the joint turns by the mean of both sides, as the jump did; the arc's middle keeps its radius. */
    @Test
    void aTransitionTurnsAsTheJumpDidAndTheCircuitStillCloses() {
        SegmentPath jumps = new SegmentPath(
                List.of(
                        Segment.straight(200),
                        Segment.arc(50 * Math.PI, 50),
                        Segment.straight(200),
                        Segment.arc(50 * Math.PI, 50)),
                true,
                40);
        assertThat(jumps.hasJumps()).isTrue();
        Track bent = jumps.withTransitions(20).closedTrack("Stadium", 0.001);
        Stations laid = bent.stations(StationSpacing.DEFAULT);
        assertThat(laid.totalTurning()).isCloseTo(2 * Math.PI, within(1e-9));
        assertThat(bent.pointAt(200 + 25 * Math.PI).curvature()).isCloseTo(1 / 50.0, within(1e-12));
        double joint = laid.corners().get(0).entry();
        // Half way through the transition curvature is the mean of both sides.
        assertThat(bent.pointAt(200).curvature()).isCloseTo(0.5 / 50, within(2e-4));
        assertThat(joint).isBetween(189.0, 195.0);
        for (int i = 1; i < bent.points().size(); i++) {
            assertThat(bent.points().get(i).s())
                    .as("no jump is left")
                    .isGreaterThan(bent.points().get(i - 1).s());
        }
    }

    private static Stations over(double ease) {
        Track track = new SegmentPath(
                        List.of(
                                Segment.straight(200),
                                Segment.straight(200).inclined(0.05, 0.1),
                                Segment.straight(200)),
                        false,
                        ease)
                .openTrack("hump", 10);
        return track.stations(StationSpacing.DEFAULT.scaled(0.05));
    }

    @Test
    void verticalCurvatureAddsUpToTheChangeOfSlope() {
        Stations stations = over(40);
        double[] s = stations.s();
        double[] curvature = stations.verticalCurvature();
        double turned = 0;
        for (int i = 0; i + 1 < s.length && s[i] < 300; i++) {
            turned += 0.5 * (curvature[i] + curvature[i + 1]) * (s[i + 1] - s[i]);
        }
        // A triangle is integrated exactly by trapezoids whose corners are stations.
        assertThat(turned).isCloseTo(0.05, within(1e-12));
    }

    @Test
    void easeIsSharedAlikeByBothNeighbours() {
        // Half of a symmetric transition lies before the joint, so the slope there is the mean.
        assertThat(new SegmentPath(
                                List.of(
                                        Segment.straight(200),
                                        Segment.straight(200).inclined(0.05, 0.1)),
                                false,
                                40)
                        .openTrack("ramp", 10)
                        .pointAt(200)
                        .slope())
                .isCloseTo(0.025, within(1e-15));
    }

    @Test
    void climbIsThatOfTheSlopesWhateverTheEase() {
        // The transitions are symmetric about the joints: what one loses the other gains. 200 m · sin 0.05, but for the
        // curvature of the sine over the transition, below 0.05³ · 40 m / 6 = 0.8 mm.
        assertThat(over(40).altitudeGap()).isCloseTo(200 * Math.sin(0.05), within(1e-3));
        assertThat(over(10).altitudeGap()).isCloseTo(200 * Math.sin(0.05), within(1e-3));
    }

    @Test
    void circuitThatMissesItsStartIsRefusedWithTheGap() {
        // Half a circle of radius 50 m ends 100 m from its start, heading back.
        SegmentPath half = new SegmentPath(List.of(Segment.arc(Math.PI * 50, 50)), true, 40);
        assertThatThrownBy(() -> half.closedTrack("half", 1))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("misses its start by 100.00 m")
                .hasMessageContaining("closureToleranceM");
    }
}
