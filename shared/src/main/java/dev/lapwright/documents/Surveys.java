package dev.lapwright.documents;

import dev.lapwright.track.survey.Survey;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * Reads the points of a centre line: GeoJSON (RFC 7946) and GPX 1.1 in degrees on WGS 84, which are put on a plane about
 * their middle, and comma-separated values in metres.
 */
public final class Surveys {
    private Surveys() {}

    /** The demo surveys on the class path; empty if the module that holds them is not there. */
    public static List<DemoSurvey> demos() {
        return DemoIndex.load().surveys();
    }

    /**
     * The text of a survey, unchecked: an existing file, or else the demo survey of that name.
     *
     * @throws DocumentException if there is neither
     */
    public static DocumentSource find(String nameOrFile) {
        Path file = SafeFile.path(nameOrFile);
        if (!Files.exists(file)) {
            for (DemoSurvey demo : demos()) {
                if (demo.fileName().equals(nameOrFile)) {
                    return new DocumentSource(nameOrFile, demoText(demo));
                }
            }
        }
        return DocumentSource.ofFile(file);
    }

    /** The text of a demo survey, to copy. */
    public static String demoText(DemoSurvey demo) {
        return ClassPathText.required(ClassPathText.DEMOS + "surveys/" + demo.fileName());
    }

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
