package dev.lapwright.surveys;

import dev.lapwright.files.DocumentSource;
import dev.lapwright.track.Track;
import dev.lapwright.track.survey.ElevationProfile;
import dev.lapwright.track.survey.EventLaps;
import dev.lapwright.track.survey.ImportChoices;
import dev.lapwright.track.survey.ImportedTrack;
import dev.lapwright.track.survey.LapPick;
import dev.lapwright.track.survey.LoggedLap;
import dev.lapwright.track.survey.LoggedLapImport;
import dev.lapwright.track.survey.Survey;
import dev.lapwright.track.survey.SurveyImport;
import java.util.OptionalInt;

/**
 * Part of a file that is imported: points or a logged lap, and which lap of several.
 *
 * @param file as read
 * @param survey null if it is a log
 * @param log null if it is a survey
 * @param pick null if there was but one lap and no choice
 * @param drift that was spread over the lap picked, m
 * @param elevation from another file; null if there is none
 */
public record ImportSource(
        SurveyFile file, Survey survey, LoggedLap log, LapPick pick, double drift, ElevationProfile elevation) {
    /** The one lap of a closed circuit, the one asked for or the fastest of several, or the whole of an open run. */
    public static ImportSource of(SurveyFile file, ImportChoices choices, OptionalInt lap) {
        if (file.isLog()) {
            LapPick.OfLog found = LapPick.ofLog(file.laps(), lap);
            boolean several = file.laps().size() > 1;
            return new ImportSource(file, null, found.log(), several ? found.pick() : null, 0, null);
        }
        if (!choices.closed()) {
            return new ImportSource(file, file.survey(), null, null, 0, null);
        }
        EventLaps.OfSurvey found = EventLaps.pick(file.survey(), file.times(), lap);
        return new ImportSource(file, found.survey(), null, found.pick(), found.drift(), null);
    }

    /** The same with altitudes from another file. */
    public ImportSource withElevation(DocumentSource from) {
        return new ImportSource(file, survey, log, pick, drift, Surveys.elevation(from, file));
    }

    /** Whether widths came with the points. */
    public boolean hasWidths() {
        return survey != null && survey.hasWidths();
    }

    /** Whether speed and lateral acceleration came with the points. */
    public boolean hasMotion() {
        return survey != null && survey.points().stream().anyMatch(point -> point.motion() != null);
    }

    /** What the line is, as far as the file tells: with speeds or times it was driven. */
    public Track.Path path() {
        return log != null || file.times().length > 0 ? Track.Path.DRIVEN : Track.Path.ROAD;
    }

    /** The same, of a log that counts a right turn's lateral acceleration as positive. */
    public ImportSource mirrored() {
        if (log == null) {
            // Positions tell which way a bend turns.
            return this;
        }
        return new ImportSource(file, survey, log.mirrored(), pick, drift, elevation);
    }

    /** The circuit made of it. */
    public ImportedTrack imported(String name, ImportChoices choices) {
        if (log == null) {
            Survey raised = elevation == null ? survey : elevation.joined(survey, choices.closed());
            return SurveyImport.of(name, raised, choices).withPath(path());
        }
        return elevation == null
                ? LoggedLapImport.of(name, log, choices)
                : LoggedLapImport.of(name, log, choices, elevation);
    }
}
