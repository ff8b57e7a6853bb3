package dev.lapwright.track;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class DoubtfulPlaceTest {
    /** An open run: curvatures (1/m) of bends of 60 m, linear to and from what lies between them over 20 m each. */
    private static Track run(double first, double between, double second, double deviation) {
        List<TrackPoint> points = new ArrayList<>();
        double[] s = {0, 100, 120, 180, 200, 230, 250, 310, 330, 430};
        double[] k = {0, 0, first, first, between, between, second, second, 0, 0};
        for (int i = 0; i < s.length; i++) {
            points.add(TrackPoint.flat(s[i], k[i]));
        }
        double[] sigma = new double[s.length];
        Arrays.fill(sigma, deviation);
        return Track.open("Run", 20, points).withCurvatureDeviation(sigma);
    }

    private static List<DoubtfulPlace> doubts(Track track) {
        return DoubtfulPlace.of(track.stations(StationSpacing.DEFAULT));
    }

    @Test
    void whereNothingIsKnownOfTheCurvaturesErrorsNothingIsInDoubt() {
        Track track = Track.open("Run", 20, run(0.02, 0, 0.02, 0).points());
        assertThat(doubts(track)).isEmpty();
    }

    @Test
    void clearCornersAreNotInDoubt() {
        assertThat(doubts(run(0.02, 0, 0.02, 0.0001))).isEmpty();
    }

    /** 1/300 per metre less 1.645 times 0.0008 is gentler than the 1/400 per metre from which on a bend is a corner. */
    @Test
    void aGentleBendMayBeNoCorner() {
        assertThat(doubts(run(1 / 300.0, 0, -0.02, 0.0008))).singleElement().satisfies(doubt -> {
            assertThat(doubt.kind()).isEqualTo(DoubtfulPlace.Kind.CORNER_OR_NONE);
            assertThat(doubt.corner().number()).isEqualTo(1);
        });
    }

    /** Between them 0 per metre and 1.645 times 0.001 more: tighter than the 1/800 per metre at which a corner ends. */
    @Test
    void twoBendsOneWayMayBeOne() {
        assertThat(doubts(run(0.02, 0, 0.02, 0.001))).singleElement().satisfies(doubt -> {
            assertThat(doubt.kind()).isEqualTo(DoubtfulPlace.Kind.ONE_OR_TWO);
            assertThat(doubt.s()).isBetween(200.0, 230.0);
        });
        assertThat(doubts(run(0.02, 0, -0.02, 0.001))).isEmpty();
    }

    /** A dip to 0.002 per metre, which 1.645 times 0.001 less is straight, and eighteen times as deep as that. */
    @Test
    void oneBendWithADipMayBeTwo() {
        assertThat(doubts(run(0.02, 0.002, 0.02, 0.001)))
                .singleElement()
                .satisfies(doubt -> assertThat(doubt.s()).isBetween(195.0, 235.0));
        assertThat(doubts(run(0.02, 0.012, 0.02, 0.001))).isEmpty();
    }
}
