package dev.lapwright.documents;

import dev.lapwright.track.survey.Survey;
import java.util.Locale;

/**
 * Reads the points of a centre line: GeoJSON (RFC 7946) and GPX 1.1 in degrees on WGS 84, which are put on a plane about
 * their middle, and comma-separated values in metres.
 */
public final class Surveys {
    private Surveys() {}

    /**
     * The survey in a text, in the form that the end of its name tells: {@code .geojson}, {@code .json}, {@code .gpx} or
     * {@code .csv}.
     *
     * @throws DocumentException with all that is wrong with it
     * @throws dev.lapwright.fault.InvalidValueException if a number is out of its range
     */
    public static Survey read(DocumentSource source) {
        String name = source.name().toLowerCase(Locale.ROOT);
        if (name.endsWith(".csv")) {
            return CsvSurvey.read(source);
        } else if (name.endsWith(".gpx")) {
            return GpxSurvey.read(source);
        } else if (name.endsWith(".json") || name.endsWith(".geojson")) {
            return GeoJsonSurvey.read(source);
        }
        throw new DocumentException(
                source.name(),
                "the file's kind is not known by its name",
                "end the name in .geojson, .gpx or .csv, as the points in it are written");
    }
}
