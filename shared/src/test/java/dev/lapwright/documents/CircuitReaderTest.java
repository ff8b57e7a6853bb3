package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.files.DocumentSource;
import dev.lapwright.track.RoadDoubt;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class CircuitReaderTest {
    /** Rounding in sums of a few hundred metres. */
    private static final double ROUNDING = 1e-9;

    private static Track read(String body) {
        String text = "{ \"lapwright\": \"circuit/1\", \"name\": \"Test\", " + body + " }";
        return Documents.circuit(new DocumentSource("test", text));
    }

    @Test
    void anArcIsAsLongAsRadiusTimesAngle() {
        Track track = read("""
                "closed": false, "segments": [ { "type": "arc", "radiusM": 50, "angleDeg": 90, "turn": "right" } ]
                """);
        assertThat(track.length()).isCloseTo(50 * Math.PI / 2, within(ROUNDING));
    }

    @Test
    void aDocumentThatDoesNotSayItIsARoadIfItHasWidthsOrIsDrawn() {
        String stations = "\"closed\": false, \"stations\": [ { \"sM\": 0, \"curvaturePerM\": 0%s },"
                + " { \"sM\": 50, \"curvaturePerM\": 0 } ]";
        assertThat(read(stations.formatted("")).path()).isEqualTo(Track.Path.DRIVEN);
        assertThat(read(stations.formatted(", \"widthM\": 9")).path()).isEqualTo(Track.Path.ROAD);
        assertThat(read("\"path\": \"road\", " + stations.formatted("")).path()).isEqualTo(Track.Path.ROAD);
        assertThat(read("\"closed\": false, \"segments\": [ { \"type\": \"straight\", \"lengthM\": 50 } ]")
                        .path())
                .isEqualTo(Track.Path.ROAD);
    }

    @Test
    void whatIsNotKnownOfTheCurvatureComesBackFromADocument() {
        String stations = "\"closed\": false, \"stations\": [ { \"sM\": 0, \"curvaturePerM\": 0%s },"
                + " { \"sM\": 50, \"curvaturePerM\": 0%s } ]";
        String one = ", \"curvatureDeviationPerM\": 0.001";
        Track track = read(stations.formatted(one, ", \"curvatureDeviationPerM\": 0.002"));
        assertThat(track.curvatureDeviationAt(25)).isCloseTo(0.0015, within(ROUNDING));
        Track again = Documents.circuit(new DocumentSource("again", DocumentWriter.text(track)));
        assertThat(again.curvatureDeviation()).containsExactly(0.001, 0.002);
        assertThatThrownBy(() -> read(stations.formatted(one, "")))
                .hasMessageContaining("1 of 2 stations have it; give it to all stations or to none");
    }

    @Test
    void whatIsStatedOfDoubtComesBackFromADocument() {
        String stations = "%s\"closed\": false, \"stations\": [ { \"sM\": 0, \"curvaturePerM\": 0%s },"
                + " { \"sM\": 50, \"curvaturePerM\": 0%s } ]";
        String band = ", \"curvatureDeviationPerM\": 0.001";
        Track stated = read(stations.formatted("\"gripDoubtPercent\": 1.5, \"widthDoubtM\": 0.3, ", "", ""));
        assertThat(stated.doubt())
                .isEqualTo(new RoadDoubt(
                        OptionalDouble.empty(),
                        OptionalDouble.of(0.3),
                        OptionalDouble.of(1.5),
                        OptionalDouble.empty()));
        assertThat(Documents.circuit(new DocumentSource("again", DocumentWriter.text(stated)))
                        .doubt())
                .isEqualTo(stated.doubt());
        Track banded = read(stations.formatted("\"curvatureErrorLengthM\": 12, ", band, band));
        Track again = Documents.circuit(new DocumentSource("again", DocumentWriter.text(banded)));
        assertThat(again.curvatureErrorLength()).isEqualTo(12);
        assertThat(read(stations.formatted("", band, band)).curvatureErrorLength())
                .isEqualTo(RoadDoubt.USUAL_ERROR_LENGTH);
    }

    @Test
    void transitionsOfTwentyMetresAreLaidUnlessTheDocumentSaysOtherwise() {
        String body = "\"closed\": false, %s\"segments\": [ { \"type\": \"straight\", \"lengthM\": 50 },"
                + " { \"type\": \"arc\", \"radiusM\": 50, \"lengthM\": 60, \"turn\": \"left\" } ]";
        Track jumping = read(body.formatted("\"transitionLengthM\": 0, "));
        assertThat(jumping.pointAt(48).curvature()).isZero();
        assertThat(jumping.usualTransitions()).isZero();
        // Over 20 m about the joint at 50 m: at 48 m four tenths of 1/50 per metre.
        Track usual = read(body.formatted(""));
        assertThat(usual.pointAt(48).curvature()).isCloseTo(0.4 / 50, within(ROUNDING));
        assertThat(usual.usualTransitions()).isEqualTo(20);
        // Over 10 m: at 48 m three tenths.
        Track shorter = read(body.formatted("\"transitionLengthM\": 10, "));
        assertThat(shorter.pointAt(48).curvature()).isCloseTo(0.3 / 50, within(ROUNDING));
        assertThat(shorter.usualTransitions()).isZero();
    }

    /**
     * Straights along x alone: a quarter circle of 40 m and one of 60 m lead back as far across as half a circle of 50 m, but transitions
     * shift them by other amounts (L²/24R each), which no straight along x makes up for.
     */
    @Test
    void curvatureJumpsWhereNoStraightCanMakeUpForTransitions() {
        String body = "\"closed\": true, \"closureToleranceM\": %s, \"segments\": ["
                + " { \"type\": \"straight\", \"lengthM\": 120 },"
                + " { \"type\": \"arc\", \"radiusM\": 40, \"angleDeg\": 90, \"turn\": \"left\" },"
                + " { \"type\": \"arc\", \"radiusM\": 60, \"angleDeg\": 90, \"turn\": \"left\" },"
                + " { \"type\": \"straight\", \"lengthM\": 100 },"
                + " { \"type\": \"arc\", \"radiusM\": 50, \"angleDeg\": 180, \"turn\": \"left\" } ]";
        assertThat(read(body.formatted("1")).usualTransitions()).isEqualTo(20);
        body = body.formatted("0.001");
        assertThat(read(body).usualTransitions()).isZero();
    }

    @Test
    void aRightTurnHasNegativeCurvature() {
        Track track = Documents.circuit(TestDocuments.source("valid/circuit/clothoids.json"));
        assertThat(track.pointAt(55).curvature()).isEqualTo(-1.0 / 50);
    }

    @Test
    void aClothoidsCurvatureIsLinearInDistance() {
        // Definition of the clothoid.
        Track track = Documents.circuit(TestDocuments.source("valid/circuit/clothoids.json"));
        assertThat(track.pointAt(10).curvature()).isCloseTo(-1.0 / 50 / 4, within(1e-15));
        assertThat(track.pointAt(130).curvature()).isCloseTo((1.0 / 80 + 1.0 / 50) / 2, within(1e-15));
    }

    @Test
    void aStadiumIsTwoStraightsAndACircle() {
        Track track = Documents.circuit(TestDocuments.source("valid/circuit/segments.json"));
        assertThat(track.length()).isCloseTo(600 + 2 * Math.PI * 60, within(ROUNDING));
    }

    @Test
    void aStraightUphillClimbsItsLengthTimesTheSineOfItsSlope() {
        Track track = read("""
                "closed": false, "startAltitudeM": 100,
                "segments": [ { "type": "straight", "lengthM": 500, "slopePercent": 10 } ]
                """);
        double[] z = track.stations(StationSpacing.DEFAULT).z();
        // sin(atan(0.1)) = 0.1 / sqrt(1.01)
        assertThat(z[z.length - 1]).isCloseTo(100 + 500 * 0.1 / Math.sqrt(1.01), within(ROUNDING));
    }

    @Test
    void northIsUpAndEastIsRight() {
        Track track = read("""
                "closed": false, "startHeadingDeg": 0, "segments": [ { "type": "straight", "lengthM": 100 } ]
                """);
        Stations laid = track.stations(StationSpacing.DEFAULT);
        assertThat(laid.x()[laid.count() - 1]).isCloseTo(0, within(ROUNDING));
        assertThat(laid.y()[laid.count() - 1]).isCloseTo(100, within(ROUNDING));
    }

    @Test
    void aCompassTurnsClockwise() {
        Track track = read("""
                "closed": false, "startHeadingDeg": 90, "segments": [ { "type": "straight", "lengthM": 100 } ]
                """);
        Stations laid = track.stations(StationSpacing.DEFAULT);
        assertThat(laid.x()[laid.count() - 1]).isCloseTo(100, within(ROUNDING));
    }

    @Test
    void theSurfaceHoldsUntilItIsChangedButASpeedLimitDoesNot() {
        Track track = read("""
                "closed": false, "segments": [
                  { "type": "straight", "lengthM": 200, "grip": 0.9, "widthM": 8, "bankDeg": 2, "speedLimitKmh": 72 },
                  { "type": "straight", "lengthM": 200 } ]
                """);
        TrackPoint point = track.pointAt(300);
        assertThat(point.grip()).isEqualTo(0.9);
        assertThat(point.widthLeft()).isEqualTo(4);
        assertThat(point.widthRight()).isEqualTo(4);
        assertThat(Math.toDegrees(point.bank())).isCloseTo(2, within(1e-13));
        assertThat(point.speedLimit()).isInfinite();
        assertThat(track.pointAt(100).speedLimit()).isCloseTo(20, within(1e-13));
    }

    @Test
    void aNamedSegmentNamesItsCorner() {
        Track track = Documents.circuit(TestDocuments.source("valid/circuit/segments.json"));
        assertThat(track.stations(StationSpacing.DEFAULT).corners())
                .extracting(corner -> corner.name())
                .containsExactly("North bend", "South bend");
    }

    @Test
    void stationsVaryLinearlyBetween() {
        Track track = Documents.circuit(TestDocuments.source("valid/circuit/stations.json"));
        assertThat(track.pointAt(190).curvature()).isCloseTo(0.01, within(1e-15));
        assertThat(track.pointAt(350).grip()).isCloseTo(0.95, within(1e-15));
        assertThat(track.entrySpeed()).isCloseTo(20 * 0.44704, within(1e-14));
    }

    /** Slope linear in distance, so its change is the same everywhere, however uneven the stations. */
    @Test
    void aConstantChangeOfSlopeIsFoundExactly() {
        double change = 1e-4;
        List<Double> places = List.of(0.0, 10.0, 15.0, 40.0, 41.0, 100.0);
        List<TrackPoint> points = hill(places, s -> 0.01 + change * s).points();
        assertThat(points).allSatisfy(p -> assertThat(p.verticalCurvature()).isCloseTo(change, within(1e-15)));
    }

    /** Central differences weighted for uneven spacing are exact for a parabola, inside. */
    @Test
    void aQuadraticSlopeIsDifferentiatedExactlyInside() {
        List<Double> places = List.of(0.0, 10.0, 15.0, 40.0, 41.0, 100.0);
        List<TrackPoint> points = hill(places, s -> 1e-6 * s * s).points();
        for (TrackPoint p : points.subList(1, points.size() - 1)) {
            assertThat(p.verticalCurvature()).isCloseTo(2e-6 * p.s(), within(1e-15));
        }
    }

    @Test
    void aJumpInCurvatureDoesNotDisturbTheSlope() {
        Track track = read("""
                "closed": false, "stations": [
                  { "sM": 0, "curvaturePerM": 0, "slopeRad": 0 },
                  { "sM": 50, "curvaturePerM": 0, "slopeRad": 0.005 },
                  { "sM": 50, "curvaturePerM": 0.01 },
                  { "sM": 100, "curvaturePerM": 0.01, "slopeRad": 0.01 } ]
                """);
        assertThat(track.points())
                .allSatisfy(p -> assertThat(p.verticalCurvature()).isCloseTo(1e-4, within(1e-15)));
    }

    @Test
    void aClosedCircuitOfStationsTakesItsNeighboursAcrossTheLine() {
        // A circle of radius 100 m that rises and falls as a sine; at the line the slope passes through its greatest
        // value.
        double length = 2 * Math.PI * 100;
        int n = 64;
        StringBuilder text = new StringBuilder("\"closed\": true, \"stations\": [");
        for (int i = 0; i <= n; i++) {
            double slope = 0.02 * Math.cos(2 * Math.PI * i / n);
            text.append(i == 0 ? "" : ",")
                    .append("{\"sM\":" + length * i / n + ",\"curvaturePerM\":0.01,\"slopeRad\":" + slope + "}");
        }
        Track track = read(text + "]");
        // d(slope)/ds = -0.02 · 2π/length · sin: zero at the line by symmetry, so only rounding is left.
        assertThat(track.points().get(0).verticalCurvature()).isCloseTo(0, within(1e-12));
        assertThat(track.points().get(n).verticalCurvature()).isCloseTo(0, within(1e-12));
        // A quarter round the differences of the sine give the derivative times sin(h)/h, h = 2π/64: 0.16 % less.
        double h = 2 * Math.PI / n;
        double expected = -0.02 * 2 * Math.PI / length * Math.sin(h) / h;
        assertThat(track.points().get(n / 4).verticalCurvature()).isCloseTo(expected, within(1e-12));
    }

    private interface Slope {
        double at(double s);
    }

    private static Track hill(List<Double> places, Slope slope) {
        String stations = IntStream.range(0, places.size())
                .mapToObj(i -> "{ \"sM\": " + places.get(i) + ", \"curvaturePerM\": 0, \"slopeRad\": "
                        + slope.at(places.get(i)) + " }")
                .reduce((a, b) -> a + ", " + b)
                .orElseThrow();
        return read("\"closed\": false, \"stations\": [" + stations + "]");
    }
}
