package dev.lapwright.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A line along a road has the road's corners, whatever its own bends. */
class DrivenCornersTest {
    private static TrackPoint point(double s, double curvature) {
        return new TrackPoint(s, curvature, 0, 0, 0, 1, 8, 8, Double.POSITIVE_INFINITY);
    }

    /** A straight, a slight kink to the right of 7° that a line can straighten, a straight, a bend to the left. */
    private static Track road() {
        double kink = -1 / 200.0;
        double bend = 1 / 60.0;
        return Track.open(
                        "Kinked",
                        30,
                        List.of(
                                point(0, 0),
                                point(200, 0),
                                point(212, kink),
                                point(224, kink),
                                point(236, 0),
                                point(500, 0),
                                point(520, bend),
                                point(580, bend),
                                point(600, 0),
                                point(800, 0)))
                .withCornerNames(List.of(new Track.NamedPlace(550, "Long Left")));
    }

    private static final Car CAR = PlainCar.ofMass(1000).with(Quantity.WIDTH, 2).car();

    private static final List<Corner> OF_ROAD =
            road().stations(StationSpacing.DEFAULT).corners();

    private static Line smoothest() {
        return LineSearch.of(road(), CAR, LineChoices.DEFAULT).smoothest();
    }

    private static List<Corner> corners(Line line) {
        return line.driven().stations(StationSpacing.DEFAULT).corners();
    }

    @Test
    void aCornerThatTheLineStraightensKeepsItsNumber() {
        List<Corner> corners = corners(smoothest());
        assertThat(corners.stream().map(Corner::label)).containsExactly("T1", "T2 Long Left");
        // Straightened indeed: no longer what would be found as a corner, 400 m or less.
        assertThat(corners.get(0).minimumRadius()).isGreaterThan(400);
    }

    @Test
    void aCornerBeginsAndEndsAbreastOfTheRoads() {
        Line line = smoothest();
        for (int i = 0; i < OF_ROAD.size(); i++) {
            // At a node, and those are 2 m apart on the road; on the outside of the bend a little more.
            double half = 1.3;
            assertThat(corners(line).get(i).entry())
                    .isCloseTo(line.along(OF_ROAD.get(i).entry()), within(half));
            assertThat(corners(line).get(i).exit())
                    .isCloseTo(line.along(OF_ROAD.get(i).exit()), within(half));
        }
    }

    @Test
    void theRadiusIsTheLines() {
        assertThat(corners(smoothest()).get(1).minimumRadius())
                .isGreaterThan(OF_ROAD.get(1).minimumRadius() + 5);
    }

    @Test
    void aMirroredLineFindsItsOwnCorners() {
        Track mirrored = smoothest().driven().mirrored();
        assertThat(mirrored.stations(StationSpacing.DEFAULT).corners().stream().map(Corner::left))
                .containsExactly(false);
    }
}
