package dev.lapwright.cli;

import dev.lapwright.lap.Lap;
import dev.lapwright.results.ChosenLine;
import dev.lapwright.results.Subject;
import java.util.List;

/**
 * A lap and those it is compared with.
 *
 * @param subject what was driven
 * @param line on which line
 * @param lap how
 * @param others in the order they were asked for
 */
record LapResult(Subject subject, ChosenLine line, Lap lap, List<Other> others) {

    /** A lap to compare. */
    record Other(String name, Subject subject, Lap lap) {
        /** Seconds this lap takes longer than the reference in each sector. */
        double[] slowerBySector(Lap reference) {
            double[] own = lap.sectorTimes();
            double[] theirs = reference.sectorTimes();
            double[] slower = new double[own.length];
            for (int i = 0; i < own.length; i++) {
                slower[i] = own[i] - theirs[i];
            }
            return slower;
        }

        /** Seconds this lap takes longer than the reference. */
        double slower(Lap reference) {
            return lap.time() - reference.time();
        }
    }
}
