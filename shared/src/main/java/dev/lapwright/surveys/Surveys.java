package dev.lapwright.surveys;

import dev.lapwright.documents.Demos;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.ColumnChoice;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.files.SafeFile;
import dev.lapwright.samples.SampleColumn;
import dev.lapwright.track.survey.ElevationProfile;
import dev.lapwright.track.survey.Survey;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Entrance to surveys of a centre line: GeoJSON (RFC 7946) and GPX 1.1 in degrees on WGS 84, which are put on a plane about
 * their middle, and comma-separated values: points, or a logged lap.
 */
public final class Surveys {
    private Surveys() {}

    /** The demo surveys on the class path; empty if the module that holds them is not there. */
    public static List<Demos.Survey> demos() {
        return Demos.load().surveys();
    }

    /**
     * The text of a survey, unchecked: an existing file, or else the demo survey of that name.
     *
     * @throws DocumentException if there is neither
     */
    public static DocumentSource find(String nameOrFile) {
        Path file = SafeFile.path(nameOrFile);
        if (!Files.exists(file)) {
            for (Demos.Survey demo : demos()) {
                if (demo.fileName().equals(nameOrFile)) {
                    return new DocumentSource(nameOrFile, demo.text());
                }
            }
        }
        return DocumentSource.ofFile(file);
    }

    /**
     * The survey in a text, in the form that the end of its name tells: {@code .geojson}, {@code .json}, {@code .gpx} or
     * {@code .csv}.
     *
     * @throws DocumentException with all that is wrong with it, or if it is a log and no survey
     * @throws dev.lapwright.fault.InvalidValueException if a number is out of its range
     */
    public static Survey read(DocumentSource source) {
        SurveyFile file = readFile(source, List.of(), false);
        if (file.isLog()) {
            throw new DocumentException(source.name(), "it is a logged lap and has no positions", "read it as a file");
        }
        return file.survey();
    }

    /**
     * The survey or the logged laps in a text.
     *
     * @param columns which column of comma-separated values holds what, where the headings do not tell
     * @param asLog whether to read speed and lateral acceleration though there are positions
     * @throws DocumentException with all that is wrong with it
     * @throws dev.lapwright.fault.InvalidValueException if a number is out of its range
     */
    public static SurveyFile readFile(DocumentSource source, List<ColumnChoice> columns, boolean asLog) {
        return readFile(source, columns, asLog, null);
    }

    private static SurveyFile readFile(
            DocumentSource source, List<ColumnChoice> columns, boolean asLog, LocalPlane.Origin about) {
        String name = source.name().toLowerCase(Locale.ROOT);
        if (name.endsWith(".csv")) {
            return CsvSurveyReader.read(source, columns, asLog, about);
        }
        if (asLog || !columns.isEmpty()) {
            throw new DocumentException(
                    source.name(), "this file has no columns of a log", "give a logged lap as .csv, with headings");
        }
        if (name.endsWith(".gpx")) {
            return GpxSurveyReader.read(source, about);
        } else if (name.endsWith(".json") || name.endsWith(".geojson")) {
            return SurveyFile.ofPoints(GeoJsonSurveyReader.read(source, about), new double[0]);
        }
        throw new DocumentException(
                source.name(),
                "the file's kind is not known by its name",
                "end the name in .geojson, .gpx or .csv, as the points in it are written");
    }

    /**
     * The altitudes in a text, for a survey: by distance where it has a column of distances and no positions, or else at
     * positions.
     *
     * @param of the file they are to be joined to: positions in degrees are put on its plane
     * @throws DocumentException with all that is wrong with it, or if its positions are of another kind than the survey's
     * @throws InvalidValueException if a number is out of its range
     */
    public static ElevationProfile elevation(DocumentSource source, SurveyFile of) {
        if (source.name().toLowerCase(Locale.ROOT).endsWith(".csv")) {
            Optional<ElevationProfile> profile = CsvSurveyReader.profile(source, List.of());
            if (profile.isPresent()) {
                return profile.get();
            }
        }
        double[] plane = of.plane();
        SurveyFile file = readFile(
                source, List.of(), false, plane.length == 0 ? null : new LocalPlane.Origin(plane[0], plane[1]));
        if (file.isLog() || !file.survey().hasElevation()) {
            throw new DocumentException(
                    source.name(), "its points have no elevation", "give a third number or a column z");
        }
        if (of.isLog() || (file.plane().length == 0) != (plane.length == 0)) {
            throw new DocumentException(
                    source.name(),
                    "its positions cannot be laid over "
                            + (of.isLog()
                                    ? "a log, which has none"
                                    : "the survey's: one is in" + " degrees, the other in metres"),
                    "give altitudes by distance, under distance,z");
        }
        return ElevationProfile.at(file.survey().points());
    }

    /**
     * The column that a person chooses by {@code speed=GPS Geschw.} or {@code speed=GPS Geschw.:km/h}.
     *
     * @throws InvalidValueException if there is no equals sign, the column or the unit is not known
     */
    public static ColumnChoice column(String text) {
        return SampleColumn.choice(text);
    }
}
