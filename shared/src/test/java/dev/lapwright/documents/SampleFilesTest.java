package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.files.DocumentSource;
import dev.lapwright.surveys.SurveyFile;
import dev.lapwright.surveys.Surveys;
import dev.lapwright.track.survey.ImportChoices;
import dev.lapwright.track.survey.ImportReport;
import dev.lapwright.track.survey.Survey;
import dev.lapwright.track.survey.SurveyImport;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Real files that packages of others carry as test data; where they come from stands in {@code samples/README.md}. */
class SampleFilesTest {
    private static SurveyFile gpx(String name) throws IOException {
        try (InputStream in =
                new GZIPInputStream(SampleFilesTest.class.getResourceAsStream("/samples/" + name + ".gz"))) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return Surveys.readFile(new DocumentSource(name, text), List.of(), false);
        }
    }

    private static DocumentSource geoJson(String name) throws IOException {
        String file = name + ".geojson";
        try (InputStream in = SampleFilesTest.class.getResourceAsStream("/samples/geojson-fixtures/" + file)) {
            return new DocumentSource(file, new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
    }

    /**
     * The points are as many as the files have trkpt elements (counted with grep), the seconds those between the first and
     * the last time element.
     */
    @ParameterizedTest
    @CsvSource({"sample-ride.gpx, 850, 1338", "sample.gpx, 1919, 2347", "route-1.1.gpx, 7745, 7896"})
    void aGpxTrackIsReadWithAllItsPointsElevationsAndTimes(String name, int points, double seconds) throws IOException {
        SurveyFile file = gpx(name);
        assertThat(file.survey().points()).hasSize(points);
        assertThat(file.survey().hasElevation()).isTrue();
        assertThat(file.times()).hasSize(points);
        assertThat(file.times()[points - 1]).isEqualTo(seconds);
    }

    private static ImportReport openRun(String name) throws IOException {
        return SurveyImport.of(
                        name,
                        gpx(name).survey(),
                        new ImportChoices(
                                false,
                                OptionalDouble.of(60),
                                OptionalDouble.of(200),
                                OptionalDouble.empty(),
                                10,
                                false,
                                false,
                                OptionalInt.empty()))
                .report();
    }

    @Test
    void aGpxTrackBecomesAnOpenRun() throws IOException {
        ImportReport report = openRun("route-1.1.gpx");
        assertThat(report.shape().length()).isGreaterThan(1000);
        assertThat(report.shape().climb()).isGreaterThan(0);
    }

    /** Both riders turn about: within 24 m of path their heading changes by 179 degrees, which no road does. */
    @ParameterizedTest
    @CsvSource({"sample-ride.gpx", "sample.gpx"})
    void aTrackThatTurnsBackIsRefusedWithItsPlace(String name) {
        assertThatThrownBy(() -> openRun(name))
                .hasMessageContaining("m bends with a radius of")
                .hasMessageContaining("as no road does");
    }

    /** The file says of itself "5.77km"; whose way of measuring it was is not known, so 3 %, and smoothing cuts corners. */
    @Test
    void theDistanceIsThatWhichTheFileSaysOfItself() throws IOException {
        Survey survey = gpx("sample.gpx").survey();
        double length = 0;
        for (int i = 1; i < survey.points().size(); i++) {
            length += Math.hypot(
                    survey.points().get(i).x() - survey.points().get(i - 1).x(),
                    survey.points().get(i).y() - survey.points().get(i - 1).y());
        }
        assertThat(length).isCloseTo(5770, within(0.03 * 5770));
    }

    @ParameterizedTest
    @CsvSource({
        "geometry-linestring, 2, false",
        "geometry-linestring-xyz, 2, true",
        "geometry-polygon, 5, false",
        "geometry-geometrycollection, 2, false",
        "geometry-geometrycollection-xyz, 2, true",
        "feature-one, 5, false"
    })
    void aGeoJsonTextOfOneLineIsRead(String name, int points, boolean elevation) throws IOException {
        Survey survey = Surveys.read(geoJson(name));
        assertThat(survey.points()).hasSize(points);
        assertThat(survey.hasElevation()).isEqualTo(elevation);
    }

    @ParameterizedTest
    @CsvSource({"featurecollection-one, 2 lines", "geometry-point, no line"})
    void aGeoJsonTextOfMoreOrFewerLinesIsRefused(String name, String problem) throws IOException {
        DocumentSource source = geoJson(name);
        assertThatThrownBy(() -> Surveys.read(source)).hasMessageContaining(problem);
    }
}
