package dev.lapwright.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackLimit;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** How near to the edges, or beyond them, a line may run: by elementary geometry. */
class TrackLimitTest {
    private static final PlainCar CAR = PlainCar.ofMass(1000).with(Quantity.WIDTH, 2);
    private static final double NONE = Double.NaN;

    /** Round a circle of 50 m to the left, 5 m of road on each side. */
    private static Track circle() {
        Segment arc = Segment.arc(2 * Math.PI * 50, 50).wide(5, 5);
        return new SegmentPath(List.of(arc), true, 1).closedTrack("circle", 1e-6);
    }

    private static TrackLimit limit(double from, double to, double left, double right) {
        return new TrackLimit(from, to, maybe(left), maybe(right));
    }

    private static OptionalDouble maybe(double value) {
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private static double[] offsets(Track road, LineChoices choices) {
        return LineSearch.of(road, CAR.car(), choices).smoothest().offsets();
    }

    /** The smoothest line round a circle is the widest: at the right edge, less half the car and the margin on that side. */
    @Test
    void eachSideHasAMarginOfItsOwn() {
        double[] right = offsets(circle(), LineChoices.DEFAULT.withMargins(3, 0.5));
        // The search stands still within a millimetre.
        assertThat(right[10]).isCloseTo(-(5 - 1 - 0.5), within(1e-3));
        double[] mirrored = offsets(circle().mirrored(), LineChoices.DEFAULT.withMargins(0.5, 3));
        assertThat(mirrored[10]).isCloseTo(5 - 1 - 0.5, within(1e-3));
    }

    @Test
    void aLimitStandsInPlaceOfTheMargin() {
        Track allowed = circle().withLimits(List.of(limit(0, circle().length(), NONE, 0.7)));
        assertThat(offsets(allowed, LineChoices.DEFAULT)[10]).isCloseTo(-(5 - 1 + 0.7), within(1e-3));
        Track kept = circle().withLimits(List.of(limit(0, circle().length(), NONE, -1.2)));
        assertThat(offsets(kept, LineChoices.DEFAULT)[10]).isCloseTo(-(5 - 1 - 1.2), within(1e-3));
        Track other = circle().withLimits(List.of(limit(0, circle().length(), 0.7, NONE)));
        assertThat(offsets(other, LineChoices.DEFAULT)[10]).isCloseTo(-(5 - 1 - 0.25), within(1e-3));
    }

    @Test
    void aLimitHoldsFromItsStartToItsEndOverTheStartLineToo() {
        Track road = circle();
        double length = road.length();
        LineSearch search = LineSearch.of(
                road.withLimits(List.of(limit(length - 30, 20, NONE, -3))), CAR.car(), LineChoices.DEFAULT);
        double[] s = search.nodes();
        double[] offsets = search.smoothest().offsets();
        for (int i = 0; i < s.length; i++) {
            double most = s[i] <= 20 || s[i] >= length - 30 ? 5 - 1 - 3 : 5 - 1 - 0.25;
            assertThat(offsets[i]).isGreaterThanOrEqualTo(-most - 1e-9);
        }
        assertThat(offsets[s.length / 2]).isLessThan(-3);
    }

    @Test
    void limitsGoWhereTheRoadGoes() {
        Track road = circle().withLimits(List.of(limit(100, 150, 0.5, -0.2)));
        assertThat(road.mirrored().limits()).containsExactly(limit(100, 150, -0.2, 0.5));
        TrackLimit moved = road.startingAt(120).limits().get(0);
        assertThat(moved.to()).isCloseTo(30, within(1e-9));
        assertThat(moved.from()).isCloseTo(road.length() - 20, within(1e-9));
    }

    @Test
    void whatIsNoLimitIsRefused() {
        assertThatThrownBy(() -> limit(0, 10, NONE, NONE)).isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> limit(0, 10, 21, NONE)).isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> limit(NONE, 10, 0, 0)).isInstanceOf(InvalidValueException.class);
        Track road = circle();
        assertThatThrownBy(() -> road.withLimits(List.of(limit(0, 400, 0, 0))))
                .isInstanceOf(InvalidValueException.class);
    }

    @Test
    void aRoadThatALimitLeavesTooNarrowIsRefusedWhereItIs() {
        Track road = circle().withLimits(List.of(limit(40, 60, -5, -5)));
        assertThatThrownBy(() -> LineSearch.of(road, CAR.car(), LineChoices.DEFAULT))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("4")
                .hasMessageContaining("the car with its margins 12 m");
    }
}
