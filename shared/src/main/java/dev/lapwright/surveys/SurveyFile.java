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
 * @param passedOver headings of the columns that were not read; unmodifiable
 * @param plane where the points' plane touches the earth: longitude and latitude, degrees; empty where the file is on a plane of
 *     its own; cloned in and out
 */
public record SurveyFile(
        Survey survey,
        double[] times,
        List<LapPick.RecordedLap> laps,
        String columns,
        List<String> passedOver,
        double[] plane) {
    public SurveyFile {
        times = times.clone();
        laps = List.copyOf(laps);
        passedOver = List.copyOf(passedOver);
        plane = plane.clone();
    }

    static SurveyFile ofPoints(LocalPlane.Placed placed, double[] times) {
        return new SurveyFile(placed.survey(), times, List.of(), "", List.of(), plane(placed.origin()));
    }

    static double[] plane(LocalPlane.Origin origin) {
        return origin == null ? new double[0] : new double[] {origin.longitude(), origin.latitude()};
    }

    @Override
    public double[] times() {
        return times.clone();
    }

    @Override
    public double[] plane() {
        return plane.clone();
    }

    public boolean isLog() {
        return survey == null;
    }
}
