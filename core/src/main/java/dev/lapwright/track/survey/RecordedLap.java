package dev.lapwright.track.survey;

/**
 * One of several laps in a log.
 *
 * @param log its samples
 * @param duration s; NaN if it is not known
 */
public record RecordedLap(LoggedLap log, double duration) {
    double length() {
        double[] distance = log.distance();
        return distance.length == 0 ? 0 : distance[distance.length - 1] - distance[0];
    }
}
