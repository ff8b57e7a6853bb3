package dev.lapwright.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Lines that are asked for where the car does not fit. */
class SqueezedLineTest {
    private static final PlainCar CAR =
            PlainCar.ofMass(1000).power(150_000, 5, 80).with(Quantity.WIDTH, 2);
    private static final LineChoices CLOSE = new LineChoices(0, 1);

    private static TrackPoint point(double s, double left) {
        return new TrackPoint(s, 0, 0, 0, 0, 1, left, 8, Double.POSITIVE_INFINITY);
    }

    /** A straight road with a post at its middle, that leaves the car 1 m less than the line of no offset. */
    private static Track post() {
        return Track.open(
                "Post", 30, List.of(point(0, 8), point(299.5, 8), point(300, 0), point(300.5, 8), point(600, 8)));
    }

    /**
     * An infinite beam on an elastic bed under a load at one point: w = w₀ e^(-βx) (cos βx + sin βx), β⁴ = k/4EI (S. Timoshenko,
     * Strength of Materials, part II; also R. J. Roark, Formulas for Stress and Strain, table of beams on elastic foundations; both from
     * memory). Here k/EI is 1/ℓ⁴, so that β is 1/(ℓ√2), with ℓ of 20 m.
     */
    @Test
    void aLineIsPushedAsideLikeABeamOnAnElasticBed() {
        Line line = LineSearch.of(post(), CAR.car(), CLOSE).at(new double[] {0, 600}, new double[] {0, 0});
        double beta = 1 / (20 * Math.sqrt(2));
        double[] offsets = line.offsets();
        for (int x = -200; x <= 200; x++) {
            double b = beta * Math.abs(x);
            // Second differences of nodes 1 m apart depart from the beam by terms of (h/ℓ)², 0.0025.
            assertThat(offsets[300 + x]).isCloseTo(-Math.exp(-b) * (Math.cos(b) + Math.sin(b)), within(0.003));
        }
        assertThat(line.moved()).isCloseTo(1, within(1e-6));
    }

    @Test
    void aLineThatHasRoomIsLeftAlone() {
        LineSearch search = LineSearch.of(DrawnRoads.of(1), CAR.car(), CLOSE);
        Line line = search.smoothest();
        Line again = search.at(line.distances(), line.offsets());
        assertThat(Arrays.equals(again.offsets(), line.offsets())).isTrue();
        assertThat(again.moved()).isZero();
    }

    /** Cut off at the edge, 25 mm too far cost most of a second on the demo circuits. */
    @Test
    void twoCentimetresTooFarCostHundredths() {
        Track road = DrawnRoads.of(2);
        Vehicle vehicle = CAR.vehicle();
        Line fastest = LineSearch.of(road, CAR.car(), LineChoices.DEFAULT).fastest(vehicle);
        LineSearch closer = LineSearch.of(
                road, CAR.car(), LineChoices.DEFAULT.withMargin(LineChoices.DEFAULT.marginLeft() + 0.025));
        Line squeezed = closer.at(fastest.distances(), fastest.offsets());
        double best = time(closer.from(squeezed).fastest(vehicle), vehicle);
        assertThat(squeezed.moved()).isBetween(0.025, 0.06);
        // As near to the best with that margin as two searches are to each other on a lap of a minute.
        assertThat(time(squeezed, vehicle)).isLessThan(best + 0.1);
    }

    @Test
    void whoeverListensMayStopASearch() {
        Track road = DrawnRoads.of(2);
        int[] steps = {0};
        LineSearch search = LineSearch.of(road, CAR.car(), LineChoices.DEFAULT).reporting((step, difference) -> {
            steps[0] = step;
            if (step == 2) {
                throw new IllegalStateException("enough");
            }
        });
        assertThatThrownBy(() -> search.fastest(CAR.vehicle())).hasMessage("enough");
        assertThat(steps[0]).isEqualTo(2);
    }

    private static double time(Line line, Vehicle vehicle) {
        return LapSolver.on(line.driven()).lapTime(vehicle);
    }
}
