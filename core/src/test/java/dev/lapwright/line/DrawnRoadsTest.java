package dev.lapwright.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds of lines on any road, on thirty drawn at random. */
class DrawnRoadsTest {
    private static final PlainCar CAR =
            PlainCar.ofMass(1000).power(150_000, 5, 80).with(Quantity.WIDTH, 1.8);

    /** Of the thirty that are looked for the fastest line on, the first of each change; the others take longer than a change can wait. */
    private static final int SOON = 8;

    static IntStream seeds() {
        return IntStream.rangeClosed(1, DrawnRoads.COUNT);
    }

    static IntStream first() {
        return IntStream.rangeClosed(1, SOON);
    }

    static IntStream others() {
        return IntStream.rangeClosed(SOON + 1, DrawnRoads.COUNT);
    }

    private static double time(Line line, Vehicle vehicle) {
        return LapSolver.on(line.driven()).lapTime(vehicle);
    }

    @Tag("long")
    @ParameterizedTest
    @MethodSource("others")
    void theFastestLineIsFasterOnAllOthersToo(int seed) {
        theFastestLineIsFasterThanTheSmoothestAndStaysOnTheRoad(seed);
    }

    @ParameterizedTest
    @MethodSource("first")
    void theFastestLineIsFasterThanTheSmoothestAndStaysOnTheRoad(int seed) {
        Track road = DrawnRoads.of(seed);
        LineSearch search = LineSearch.of(road, CAR.car(), LineChoices.DEFAULT);
        Vehicle vehicle = CAR.vehicle();
        Line smoothest = search.smoothest();
        Line fastest = search.fastest(vehicle);
        // Ten times less than the model's lap times are good for (1 ms); no line that was merely kept passes.
        assertThat(time(fastest, vehicle)).isLessThan(time(smoothest, vehicle) - 1e-4);
        double half = 0.5 * CAR.car().value(Quantity.WIDTH) + LineChoices.DEFAULT.marginLeft();
        for (Line line : List.of(smoothest, fastest)) {
            double[] s = line.distances();
            double[] offsets = line.offsets();
            for (int i = 0; i < s.length; i++) {
                // Rounding alone: bounds are kept by clamping.
                assertThat(offsets[i])
                        .isBetween(
                                half - road.pointAt(s[i]).widthRight() - 1e-9,
                                road.pointAt(s[i]).widthLeft() - half + 1e-9);
            }
        }
    }

    /** A driver counts the road's corners, wherever he drives through them. */
    @ParameterizedTest
    @MethodSource("seeds")
    void everyLineHasTheRoadsCorners(int seed) {
        Track road = DrawnRoads.of(seed);
        LineSearch search = LineSearch.of(road, CAR.car(), LineChoices.DEFAULT);
        List<Corner> ofRoad = road.stations(StationSpacing.DEFAULT).corners();
        List<Corner> ofLine =
                search.smoothest().driven().stations(StationSpacing.DEFAULT).corners();
        assertThat(ofLine.stream().map(corner -> corner.label() + corner.left()))
                .containsExactlyElementsOf(ofRoad.stream()
                        .map(corner -> corner.label() + corner.left())
                        .toList());
    }

    /** A circuit of two equal halves has a line of two equal halves, as nothing tells them apart. */
    @ParameterizedTest
    @MethodSource("seeds")
    void theSmoothestLineOfACircuitOfTwoHalvesIsTheSameOnBoth(int seed) {
        Track road = DrawnRoads.of(seed);
        if (!road.isClosed() || isRounded(road)) {
            return;
        }
        double[] offsets =
                LineSearch.of(road, CAR.car(), LineChoices.DEFAULT).smoothest().offsets();
        int cells = offsets.length - 1;
        for (int i = 0; 2 * i < cells; i++) {
            // The search stands still within a millimetre.
            assertThat(offsets[i + cells / 2]).isCloseTo(offsets[i], within(0.01));
        }
    }

    /** With an odd number of cells no node lies abreast of another. */
    private static boolean isRounded(Track road) {
        return (int) Math.ceil(road.length() / LineChoices.DEFAULT.spacing() - 1e-9) % 2 != 0;
    }
}
