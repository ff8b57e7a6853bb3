package dev.lapwright.surveys;

import dev.lapwright.track.survey.LapPick;
import dev.lapwright.track.survey.Survey;
import java.util.List;

/**
 * Content of a file of points or of a logged lap: a survey or else laps.
 *
 * @param survey the points; null if the file is a log
 * @param times of the points, s, as many; empty if they are not known; cloned in and out
 * @param laps of a log, in order; empty if the file is a survey; unmodifiable
 * @param columns which heading was taken for what; empty unless the file has headings
 */
public record SurveyFile(Survey survey, double[] times, List<LapPick.RecordedLap> laps, String columns) {
    public SurveyFile {
        times = times.clone();
        laps = List.copyOf(laps);
    }

    static SurveyFile ofPoints(Survey survey, double[] times) {
        return new SurveyFile(survey, times, List.of(), "");
    }

    @Override
    public double[] times() {
        return times.clone();
    }

    public boolean isLog() {
        return survey == null;
    }
}
