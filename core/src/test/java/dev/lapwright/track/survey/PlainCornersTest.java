package dev.lapwright.track.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.numerics.ArcLengthCurve;
import dev.lapwright.numerics.SplineKnots;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Roads of plain parts found where the points are of one, and only there: the circuit of {@link RoadFitTest}, with two arcs of 40 m between
 * transitions of 50 m, whose numbers are known.
 */
class PlainCornersTest {
    private static final double RADIUS = 40;
    private static final double TRANSITION = 50;
    private static final double STRAIGHT = 400;
    private static final double ARC = Math.PI * RADIUS - TRANSITION;

    private interface Place {
        /** x and y, m, after a share of the round. */
        double[] at(double share);
    }

    private static RoadFit fit(Place place, int count, double error, long seed) {
        Random random = new Random(seed);
        double[] x = new double[count];
        double[] y = new double[count];
        for (int i = 0; i < count; i++) {
            double[] p = place.at(i / (double) count);
            x[i] = p[0] + error * random.nextGaussian();
            y[i] = p[1] + error * random.nextGaussian();
        }
        double[] t = new double[count];
        for (int i = 1; i < count; i++) {
            t[i] = t[i - 1] + Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
        }
        SplineKnots knots = new SplineKnots(t, t[count - 1] + Math.hypot(x[0] - x[count - 1], y[0] - y[count - 1]));
        SplineKnots.Fit waves = knots.fit(knots.strengthOf(4 * knots.meanStep()));
        return RoadFit.chosen(
                new RoadFit.Points(x, y, new int[count], new double[count], true, LoggedSamples.NONE),
                new ArcLengthCurve(knots, waves.spline(x), waves.spline(y)),
                OptionalDouble.empty());
    }

    private static Place circuit() {
        Track track = RoadFitTest.circuit(STRAIGHT);
        Stations stations = track.stations(StationSpacing.DEFAULT);
        return share -> {
            Stations.Place p = stations.placeAt(share * track.length());
            return new double[] {p.x(), p.y()};
        };
    }

    /** The points are exact to the integration of the circuit that they are taken from, some millimetres. */
    @Test
    void exactPointsGiveTheTrueRoadBack() {
        RoadFit fit = fit(circuit(), 300, 0, 1);
        PlainRoad road = fit.plain().road();
        assertThat(road.corners()).isEqualTo(2);
        for (int i = 0; i < 2; i++) {
            PlainRoad.PlainCorner corner = road.corner(i);
            assertThat(corner.curvature()).isCloseTo(1 / RADIUS, within(1e-3 / RADIUS));
            assertThat(corner.turning()).isCloseTo(Math.PI, within(1e-3));
            // A transition's length shows by its shift L²/24R, of which a millimetre is 0.01 m of the length.
            assertThat(corner.transition()).isCloseTo(TRANSITION, within(0.3));
        }
    }

    /**
     * A circle alone, of unknown place and direction, told by N + 1 evenly spaced points over a length A errs in curvature by
     * σ/A² √(720/(N + 5)) (R. L. Gluckstern, Nuclear Instruments and Methods 24, 1963, from memory). The arc's own points do that much; whoever
     * knows the whole form does no worse (the bound of Cramér and Rao), and 24 arcs' root mean square of that is within 30 % (χ² of
     * 24, 98 of 100).
     */
    @Test
    void radiiErrByNoMoreThanThoseOfTheArcsOwnPoints() {
        double error = 0.05;
        int count = 200;
        double length = 2 * (STRAIGHT + 2 * TRANSITION + ARC);
        double points = ARC / (length / count);
        double bound = error / (ARC * ARC) * Math.sqrt(720 / (points + 4));
        double squares = 0;
        for (long seed = 1; seed <= 12; seed++) {
            RoadFit fit = fit(circuit(), count, error, seed);
            assertThat(fit.plain()).as("seed %d", seed).isNotNull();
            assertThat(fit.plain().road().corners()).isEqualTo(2);
            for (int i = 0; i < 2; i++) {
                squares += Math.pow(fit.plain().road().corner(i).curvature() - 1 / RADIUS, 2) / 24;
            }
        }
        assertThat(Math.sqrt(squares)).isLessThan(1.3 * bound);
    }

    /** A radius of 300 m with three waves of an eighth: its curvature has no straight, no arc and no joint. */
    @Test
    void aRoadOfWavesIsNotTakenForArcs() {
        Place waves = share -> {
            double a = 2 * Math.PI * share;
            double r = 300 * (1 + Math.cos(3 * a) / 8 + Math.sin(5 * a) / 20);
            return new double[] {1.3 * r * Math.cos(a), r * Math.sin(a)};
        };
        for (double error : new double[] {0.05, 0.3}) {
            assertThat(fit(waves, 280, error, 1).plain())
                    .as("error %s m", error)
                    .isNull();
        }
    }

    /** Moves of the road by its numbers are those of its own differences; the step's square is what is left, and nodes 2 m apart. */
    @Test
    void theRoadMovesByItsNumbersAsItsDifferencesSay() {
        PlainRoad road = fit(circuit(), 200, 0.05, 3).plain().road();
        double[] places = {30, 333, 700, 1000};
        double[][] moves = road.moves(places);
        for (int k = 0; k < road.numbers().length; k++) {
            double step = (k - PlainRoad.OWN) % PlainRoad.EACH == 2 && k >= PlainRoad.OWN ? 1e-7 : 1e-4;
            double[] more = road.numbers();
            more[k] += step;
            PlainRoad moved = new PlainRoad(more);
            for (int p = 0; p < places.length; p++) {
                double[] before = road.at(places[p]);
                double[] behind = moved.at(places[p]);
                double across =
                        (behind[1] - before[1]) * Math.cos(before[2]) - (behind[0] - before[0]) * Math.sin(before[2]);
                assertThat(moves[p][k])
                        .as("number %d, place %d", k, p)
                        .isCloseTo(across / step, within(0.01 * Math.abs(across / step) + 1e-2));
            }
        }
    }
}
