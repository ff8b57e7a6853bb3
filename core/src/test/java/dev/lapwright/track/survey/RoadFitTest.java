package dev.lapwright.track.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Roads recovered from points with errors: a circuit of two straights of 400 m and two turns of 180° with a radius of 40 m, each
 * with transitions of 50 m, which closes by its symmetry.
 */
class RoadFitTest {
    private static final double RADIUS = 40;
    private static final double TRANSITION = 50;
    private static final double STRAIGHT = 400;
    /** A transition turns by half of what as much of the arc does. */
    private static final double ARC = Math.PI * RADIUS - TRANSITION;

    private static final double HALF = STRAIGHT + 2 * TRANSITION + ARC;

    private static Track circuit() {
        return circuit(STRAIGHT);
    }

    /** Two turns as above between straights of another length, m. */
    static Track circuit(double straight) {
        double half = straight + 2 * TRANSITION + ARC;
        List<TrackPoint> points = new ArrayList<>();
        for (double from : new double[] {0, half}) {
            points.add(TrackPoint.flat(from, 0));
            points.add(TrackPoint.flat(from + straight, 0));
            points.add(TrackPoint.flat(from + straight + TRANSITION, 1 / RADIUS));
            points.add(TrackPoint.flat(from + straight + TRANSITION + ARC, 1 / RADIUS));
        }
        points.add(TrackPoint.flat(2 * half, 0));
        return Track.closed("drawn", points);
    }

    /** Points every so often that err on their own and, as an Ornstein and Uhlenbeck process over 100 m, together. */
    private static List<SurveyPoint> points(double step, double own, double together, long seed) {
        Stations stations = circuit().stations(StationSpacing.DEFAULT);
        Random random = new Random(seed);
        int count = (int) (2 * HALF / step);
        double kept = Math.exp(-2 * HALF / count / 100);
        double[] x = wander(count, kept, together, random);
        double[] y = wander(count, kept, together, random);
        List<SurveyPoint> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Stations.Place place = stations.placeAt(i * 2 * HALF / count);
            points.add(SurveyPoint.plan(
                    place.x() + x[i] + own * random.nextGaussian(), place.y() + y[i] + own * random.nextGaussian()));
        }
        return points;
    }

    /** What its end misses its start by is spread over it, as over a lap cut from a log. */
    private static double[] wander(int count, double kept, double deviation, Random random) {
        double[] w = new double[count + 1];
        w[0] = deviation * random.nextGaussian();
        for (int i = 1; i <= count; i++) {
            w[i] = kept * w[i - 1] + deviation * Math.sqrt(1 - kept * kept) * random.nextGaussian();
        }
        double gap = w[count] - w[0];
        for (int i = 0; i <= count; i++) {
            w[i] -= gap * i / count;
        }
        return w;
    }

    private static ImportedTrack imported(List<SurveyPoint> points) {
        return SurveyImport.of("drawn", Shapes.plan(points), ImportChoices.circuit());
    }

    /** The truth is known; the tolerance is three of the deviations that the import itself tells at the place. */
    @ParameterizedTest
    @CsvSource({"5,0.05,0", "8,0.3,0", "20,0.3,0", "4,0.2,0.5", "10,0.05,0.5"})
    void hasTwoCornersOfTheirRadiusAndNoOthers(double step, double own, double together) {
        for (long seed = 1; seed <= 2; seed++) {
            ImportedTrack found = imported(points(step, own, together, seed));
            assertThat(found.band().corners().stream().filter(c -> !c.isDoubtful()))
                    .as("seed %d", seed)
                    .hasSize(2);
            double[] deviation = found.band().deviation();
            int stations = deviation.length - 1;
            for (double turn : new double[] {STRAIGHT + TRANSITION + ARC / 2, HALF + STRAIGHT + TRANSITION + ARC / 2}) {
                int at = (int) Math.round(turn / (2 * HALF) * stations);
                assertThat(found.track().points().get(at).curvature())
                        .as("seed %d at %.0f m", seed, turn)
                        .isCloseTo(1 / RADIUS, within(3 * deviation[at]));
                assertThat(3 * deviation[at])
                        .as("a corner of another radius would be seen")
                        .isLessThan(0.3 / RADIUS);
            }
        }
    }

    /** The point stands twelve metres beside a road whose other points err by a tenth of one. */
    @Test
    void oneFarPointIsLeftOutAndSaid() {
        List<SurveyPoint> points = points(8, 0.1, 0, 1);
        SurveyPoint p = points.get(20);
        points.set(20, SurveyPoint.plan(p.x(), p.y() + 12));
        ImportedTrack found = imported(points);
        assertThat(found.report().pointsUsed()).isEqualTo(points.size() - 1);
        assertThat(found.report().warnings()).anyMatch(w -> w.contains("left out, by up to 12 m: point 21 ("));
        assertThat(found.track().stations(StationSpacing.DEFAULT).corners()).hasSize(2);
    }

    /** The lengths agree to five deviations of σ sqrt(h ∫κ² ds), 0.3 sqrt(8 · 0.12) = 0.3 m. */
    @Test
    void hasItsLength() {
        assertThat(imported(points(8, 0.3, 0, 4)).track().length()).isCloseTo(2 * HALF, within(1.5));
    }

    /** Twice the points' errors are stated: the errors told, their own and those in common, come nearer to that. */
    @Test
    void aStatedAccuracyIsBelieved() {
        List<SurveyPoint> points = points(8, 0.3, 0, 5);
        double own = whole(ImportChoices.circuit(), points);
        assertThat(own).isCloseTo(0.3, within(0.1));
        assertThat(whole(ImportChoices.circuit().withAccuracy(0.6), points)).isGreaterThan(1.2 * own);
    }

    private static double whole(ImportChoices choices, List<SurveyPoint> points) {
        ImportReport.SmoothingReport told =
                SurveyImport.of("drawn", Shapes.plan(points), choices).report().smoothing();
        return Math.hypot(told.noise(), told.wander());
    }
}
