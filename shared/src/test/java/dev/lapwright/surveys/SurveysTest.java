package dev.lapwright.surveys;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.documents.Documents;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.track.Track;
import dev.lapwright.track.survey.ImportChoices;
import dev.lapwright.track.survey.Survey;
import dev.lapwright.track.survey.SurveyImport;
import dev.lapwright.track.survey.SurveyPoint;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SurveysTest {
    private static Survey read(String name, String text) {
        return Surveys.read(new DocumentSource(name, text));
    }

    private static String line(String positions) {
        return "{\"type\": \"LineString\", \"coordinates\": [" + positions + "]}";
    }

    private static void refuses(String name, String text, String problem) {
        assertThatThrownBy(() -> read(name, text))
                .isInstanceOf(DocumentException.class)
                .hasMessageContaining(problem);
    }

    /**
     * Radii of curvature of the WGS 84 ellipsoid (a = 6378137 m, f = 1/298.257223563, NIMA TR8350.2): along the meridian
     * a(1 - e²)/(1 - e² sin²φ)^1.5, across it a/sqrt(1 - e² sin²φ). Over 0.01° either way they change by less than 1e-5, and
     * a parallel bows from the geodesic by less than 0.1 m.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0, 45, -33, 68})
    void degreesBecomeMetresByTheEllipsoidsRadii(double latitude) {
        double d = 0.01;
        Survey survey = read(
                "a.geojson",
                line(String.format(
                        Locale.ROOT,
                        "[%1$.4f,%3$.4f],[%2$.4f,%3$.4f],[9,%4$.4f],[9,%5$.4f]",
                        9 - d,
                        9 + d,
                        latitude,
                        latitude - d,
                        latitude + d)));
        double f = 1 / 298.257223563;
        double e2 = f * (2 - f);
        double phi = Math.toRadians(latitude);
        double w = 1 - e2 * Math.sin(phi) * Math.sin(phi);
        double east = 6378137 / Math.sqrt(w) * Math.cos(phi) * Math.toRadians(2 * d);
        double north = 6378137 * (1 - e2) / Math.pow(w, 1.5) * Math.toRadians(2 * d);
        SurveyPoint[] p = survey.points().toArray(SurveyPoint[]::new);
        assertThat(p[1].x() - p[0].x()).isCloseTo(east, within(1e-5 * east));
        assertThat(p[3].y() - p[2].y()).isCloseTo(north, within(1e-5 * north));
        assertThat(p[0].y()).isCloseTo(0, within(0.3));
    }

    @Test
    void theDateLineMakesNoDifference() {
        Survey there = read("a.geojson", line("[179.99,10],[-179.99,10.01]"));
        Survey here = read("a.geojson", line("[8.99,10],[9.01,10.01]"));
        // Rounding of degrees: 1e-13 of the earth's girth.
        assertThat(there.points().get(1).x()).isCloseTo(here.points().get(1).x(), within(1e-5));
    }

    @Test
    void elevationIsTheThirdNumberOfAPosition() {
        assertThat(read("a.geojson", line("[9,45,120.5],[9.01,45,121]"))
                        .points()
                        .get(0)
                        .z())
                .isEqualTo(120.5);
        assertThat(read("a.geojson", line("[9,45],[9.01,45]")).hasElevation()).isFalse();
    }

    @Test
    void aFeatureCollectionMayHoldTheLineBesideMarks() {
        String text =
                "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":null,\"geometry\":"
                        + "{\"type\":\"Point\",\"coordinates\":[9,45]}},{\"type\":\"Feature\",\"properties\":{},\"geometry\":"
                        + "{\"type\":\"Polygon\",\"coordinates\":[[[9,45],[9.01,45],[9.01,45.01],[9,45]]]}}]}";
        assertThat(read("a.json", text).points()).hasSize(4);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"type\":\"FeatureCollection\",\"features\":[]} | it holds no line",
                "{\"type\":\"MultiLineString\",\"coordinates\":[]} | the type MultiLineString is no line",
                "{\"type\":\"LineString\",\"coordinates\":[[1]]} | is no position",
                "{\"type\":\"LineString\",\"coordinates\":[[500,200],[510,220]]} | is no longitude and latitude",
                "{\"type\":\"LineString\",\"coordinates\":[[45,120],[45.1,120.1]]} | it looks like latitude first",
                "{\"type\":\"LineString\",\"coordinates\":[[9,45,1],[9.1,45]]} | 1 of 2 points have no elevation",
                "{\"type\":\"LineString\",\"coordinates\":[[9,45,1],[9.1,45,1e308]]} | line 1: 1E+308 m is no elevation",
                "{\"type\":\"LineString\",\"coordinates\":[[9,45],[45,9]]} | more than 100 km from their middle",
                "{} | it has no type",
                "[] | give a GeoJSON object",
            })
    void faultyGeoJsonIsRefusedWithTheReason(String text, String problem) {
        refuses("a.geojson", text, problem);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "x,y,z,width_left,width_right\n1,2,3,4,5\n",
                "Y_m;X_m;Width_Right;Width_Left;Z\n2;1;5;4;3\n",
                "\"x (m)\", Y , elevation,left width,right width\r\n1, 2, 3, 4, 5\r\n\r\n",
                "# x_m\ty_m\tz_m\twidth_left_m\twidth_right_m\tremark\n1\t2\t3\t4\t5\tgate\n"
            })
    void columnsMayStandInAnyOrderAndCase(String text) {
        Survey survey = read("a.csv", text);
        assertThat(survey.points()).containsExactly(new SurveyPoint(1, 2, 3, 4, 5));
        assertThat(survey.hasElevation() && survey.hasWidths()).isTrue();
    }

    /** At 36 km/h, 10 m/s, a tenth of a second is a metre; an empty cell holds the value above it. g by definition 9.80665 m/s². */
    @Test
    void speedAndLateralAccelerationBesidePositionsAreTheCarsMotion() {
        Survey survey = read("a.csv", "time,x,y,speed (km/h),G Lat\n0,1,2,36,0.5\n0.1,2,2,36,-1\n0.2,3,2,,0\n");
        assertThat(survey.points()).extracting(p -> p.motion().way()).containsExactly(0.0, 1.0, 2.0);
        assertThat(survey.points().get(1).motion().lateralAcceleration()).isEqualTo(-9.80665);
        assertThat(survey.points().get(2).motion().speed()).isEqualTo(10);
    }

    @Test
    void aDistanceThatBeginsAnewAtTheLineGoesOn() {
        Survey survey = read(
                "a.csv", "distance,x,y,speed,lateral_acceleration\n50,0,0,9,0\n90,40,0,9,0\n5,45,0,9,0\n15,55,0,9,0\n");
        // What was gone between the last sample of one lap and the first of the next is not told.
        assertThat(survey.points()).extracting(p -> p.motion().way()).containsExactly(0.0, 40.0, 40.0, 50.0);
    }

    @Test
    void positionsWithSpeedAloneHaveNoMotion() {
        assertThat(read("a.csv", "time,x,y,speed\n0,1,2,36\n0.1,2,2,36\n").points())
                .allMatch(p -> p.motion() == null);
    }

    @Test
    void faultyValuesAreAllToldWithTheirLines() {
        assertThatThrownBy(() -> read("a.csv", "x,y\n1,2\n1,two\n,3\nNaN,1\n"))
                .isInstanceOf(DocumentException.class)
                .hasMessageContaining("line 3, y: 'two' is not a number")
                .hasMessageContaining("line 4, x: there is no value")
                .hasMessageContaining("line 5, x: 'NaN' is not a number");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1,2 | does not name the columns",
                "x,y,width_left | one side only",
                "x,X,y | two columns",
                "'' | it is empty"
            })
    void aHeaderThatDoesNotNameTheColumnsIsRefused(String header, String problem) {
        refuses("a.csv", header, problem);
    }

    private static String gpx(String body) {
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?><gpx version=\"1.1\" creator=\"test\""
                + " xmlns=\"http://www.topografix.com/GPX/1/1\">" + body + "</gpx>";
    }

    @Test
    void aGpxTrackOfTwoSegmentsIsOneLine() {
        Survey survey = read(
                "a.gpx",
                gpx("<trk><trkseg><trkpt lat=\"45\" lon=\"9\"><ele>100</ele></trkpt></trkseg>"
                        + "<trkseg><trkpt lat=\"45.001\" lon=\"9\"><ele>101</ele></trkpt></trkseg></trk>"));
        assertThat(survey.points()).extracting(SurveyPoint::z).containsExactly(100.0, 101.0);
        // 0.001° of the meridian at 45°: 111.13 m by the radius above, which four digits of the table repeat.
        assertThat(survey.points().get(1).y() - survey.points().get(0).y()).isCloseTo(111.13, within(0.01));
    }

    @Test
    void faultyGpxIsRefusedWithTheReason() {
        refuses("a.gpx", "<gpx", "it cannot be read as GPX");
        refuses("a.gpx", gpx(""), "it holds no track or route");
        refuses("a.gpx", "<!DOCTYPE gpx [<!ENTITY a SYSTEM \"file:///\">]>" + gpx(""), "document type");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "<trk><trkseg>#<trkpt lat=\"51,5\" lon=\"9\"/></trkseg></trk> | line 2, lat: '51,5' is not a number",
                "<trk><trkseg>##<trkpt lat=\"95\" lon=\"9\"/></trkseg></trk> | line 3: 9, 95 is no longitude and latitude",
                "<trk><trkseg>#<trkpt lat=\"45\" lon=\"9\">#<ele>high</ele></trkpt></trkseg></trk> | line 3, ele: 'high'",
                "<trk><trkseg><trkpt lat=\"45\" lon=\"9\">#<time>noon</time></trkpt></trkseg></trk> | line 2, time: 'noon'",
                "<trk><trkseg>#<trkpt lon=\"9\"/></trkseg></trk> | line 2, lat: there is no value",
                "<trk>#<trkseg>#<trkpt lat=\"45\" lon=\"9\"> | cannot be read as GPX",
            })
    void faultsOfGpxAreToldWithTheirLineAndValue(String body, String problem) {
        refuses("a.gpx", gpx(body.replace('#', '\n')), problem);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "x_m;y_m;w_tr_right_m;w_tr_left_m;banking (%);grip\n1,5;2;5;4;10;0,9\n",
                "x (m),y (m),width_left,width_right,bank (rad),grip (%)\n1.5,2,4,5,0.0996686524911620,90\n",
                "\"x\",\"y\",\"track width left\",\"track width right\",bank (deg),grip\n\"1,5\",2,4,5,\"5,710593137\",\"0,9\"\n"
            })
    void widthsBankAndGripAreReadInTheirUnits(String text) {
        SurveyPoint point = read("a.csv", text).points().get(0);
        // Ten percent are an angle of atan 0.1 = 0.0996686524911620 rad = 5.710593137 deg.
        assertThat(point.bank()).isCloseTo(Math.atan(0.1), within(1e-10));
        assertThat(point.grip()).isCloseTo(0.9, within(1e-12));
        assertThat(point.x()).isEqualTo(1.5);
        assertThat(point.widthLeft()).isEqualTo(4);
        assertThat(point.widthRight()).isEqualTo(5);
    }

    @Test
    void aWholeWidthIsHalvedAndAGripNotGivenIsThatOfTheReference() {
        SurveyPoint point = read("a.csv", "x,y,width\n1,2,12\n").points().get(0);
        assertThat(point.widthLeft()).isEqualTo(6);
        assertThat(point.widthRight()).isEqualTo(6);
        assertThat(point.grip()).isEqualTo(1);
    }

    @Test
    void whatIsNotReadIsNamed() {
        SurveyFile file = Surveys.readFile(
                new DocumentSource("a.csv", "x,y,Satellites,bank,Remark\n1,2,9,0,gate\n"), List.of(), false);
        assertThat(file.passedOver()).containsExactly("Satellites", "Remark");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "x (furlong),y/1,2 | line 1, x: 'furlong' is no unit that is known for it; use one of: m, km, ft",
                "x,y/m,cubit/1,2 | line 2, y: 'cubit' is no unit",
                "x,y,bank (gon)/1,2,3 | line 1, bank: 'gon' is no unit",
                "x,y/1,5,2,5/2,5,3,5 | there are 4 values under 2 headings",
                "x,y,width,width_left,width_right/1,2,3,4,5 | the width is given twice"
            })
    void whatCannotBeUnderstoodIsRefusedWithTheWayOut(String rows, String problem) {
        refuses("a.csv", rows.replace('/', '\n') + "\n", problem);
    }

    @Test
    void aNoteInBracketsIsNoUnit() {
        assertThat(read("a.csv", "x (GPS),y (raw)\n1,2\n").points()).hasSize(1);
    }

    @Test
    void altitudesOfAnotherFileAreJoinedByDistanceOrByPosition() {
        // A square of 100 m; half way along its sides and at its corners altitude is a tenth of the way.
        SurveyFile square =
                Surveys.readFile(new DocumentSource("a.csv", "x,y\n0,0\n100,0\n100,100\n0,100\n"), List.of(), false);
        Survey byDistance = Surveys.elevation(new DocumentSource("z.csv", "distance,z\n0,0\n250,25\n400,40\n"), square)
                .joined(square.survey(), true);
        assertThat(byDistance.points()).extracting(SurveyPoint::z).containsExactly(0.0, 10.0, 20.0, 30.0);
        Survey byPosition = Surveys.elevation(
                        new DocumentSource("z.csv", "x,y,z\n-5,-5,3\n105,-5,14\n105,105,25\n-5,105,36\n"), square)
                .joined(square.survey(), true);
        // Corner (0, 0) lies 5 m along the side from (-5, -5) with 3 m to (105, -5) with 14 m: 3.5 m.
        assertThat(byPosition.points().get(0).z()).isCloseTo(3.5, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "distance,z/0,0/250,25 | span 250 m of road, where the survey is 400 m long",
                "x,y,z/0,0,0/10,0,0 | point 2 of the survey lies 90 m from all positions",
                "longitude,latitude,z/9,45,0/9.1,45,1 | one is in degrees, the other in metres",
                "x,y/0,0/1,1 | its points have no elevation",
                "x,z/0,0/1,1 | it names no altitudes along the road"
            })
    void altitudesOfAnotherRoadAreRefused(String rows, String problem) {
        SurveyFile square =
                Surveys.readFile(new DocumentSource("a.csv", "x,y\n0,0\n100,0\n100,100\n0,100\n"), List.of(), false);
        assertThatThrownBy(() -> Surveys.elevation(new DocumentSource("z.csv", rows.replace('/', '\n') + "\n"), square)
                        .joined(square.survey(), true))
                .hasMessageContaining(problem);
    }

    @Test
    void altitudesInDegreesAreLaidOnTheSurveysPlane() {
        SurveyFile plan = Surveys.readFile(
                new DocumentSource("a.geojson", line("[9,45],[9.001,45],[9.001,45.001]")), List.of(), false);
        Survey raised = Surveys.elevation(
                        new DocumentSource("z.geojson", line("[9,45,5],[9.001,45,6],[9.001,45.001,7],[9.02,45.03,8]")),
                        plan)
                .joined(plan.survey(), false);
        for (int i = 0; i < 3; i++) {
            assertThat(raised.points().get(i).z()).isCloseTo(5 + i, within(1e-6));
        }
    }

    @Test
    void anUnknownEndingIsRefused() {
        refuses("a.xyz", "x,y", "kind is not known by its name");
    }

    @Test
    void anImportedTrackComesBackFromItsDocument() {
        StringBuilder csv = new StringBuilder("x,y,z\n");
        for (int i = 0; i < 300; i++) {
            double a = 2 * Math.PI * i / 300;
            csv.append(String.format(
                    Locale.ROOT, "%.3f,%.3f,%.3f%n", 300 * Math.cos(a), 150 * Math.sin(a), 50 + 8 * Math.sin(2 * a)));
        }
        Track track = SurveyImport.of("Ring", read("a.csv", csv.toString()), ImportChoices.circuit())
                .track();
        assertThat(track.path()).isEqualTo(Track.Path.ROAD);
        Track again = Documents.circuit(new DocumentSource("ring.json", DocumentWriter.text(track)));
        assertThat(again.points()).hasSameSizeAs(track.points());
        for (int i = 0; i < track.points().size(); i++) {
            // Degrees and percent in the document cost some rounding.
            assertThat(again.points().get(i).curvature())
                    .isCloseTo(track.points().get(i).curvature(), within(1e-12));
            assertThat(again.points().get(i).slope())
                    .isCloseTo(track.points().get(i).slope(), within(1e-12));
        }
    }
}
