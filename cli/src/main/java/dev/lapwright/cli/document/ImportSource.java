package dev.lapwright.cli.document;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.surveys.SurveyFile;
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
 * @param survey null if it is a log
 * @param log null if it is a survey
 * @param pick null if there was but one lap and no choice
 * @param drift that was spread over the lap picked, m
 * @param columns which heading was taken for what; empty if the file has none
 */
public record ImportSource(Survey survey, LoggedLap log, LapPick pick, double drift, String columns) {
    public static ImportSource of(SurveyFile file, ImportChoices choices, OptionalInt lap) {
        if (file.isLog()) {
            LapPick.OfLog found = LapPick.ofLog(file.laps(), lap);
            boolean several = file.laps().size() > 1;
            return new ImportSource(null, found.log(), several ? found.pick() : null, 0, file.columns());
        }
        if (!choices.closed()) {
            return new ImportSource(file.survey(), null, null, 0, file.columns());
        }
        EventLaps.OfSurvey found = EventLaps.pick(file.survey(), file.times(), lap);
        return new ImportSource(found.survey(), null, found.pick(), found.drift(), file.columns());
    }

    public ImportedTrack imported(String name, ImportChoices choices, boolean rightPositive) {
        if (log == null) {
            if (rightPositive) {
                throw new InvalidValueException("--right-positive", "the file is no log", "leave it out, or add --log");
            }
            return SurveyImport.of(name, survey, choices);
        }
        return LoggedLapImport.of(name, rightPositive ? log.mirrored() : log, choices);
    }
}
