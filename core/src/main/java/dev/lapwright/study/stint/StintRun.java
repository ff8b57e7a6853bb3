package dev.lapwright.study.stint;

import java.util.List;

/**
 * A stint on one compound.
 *
 * @param compound what it is driven on
 * @param laps at least one
 * @param formationFuel kg, burnt before the first lap
 * @param raceFuel kg, burnt on the laps
 * @param reserveFuel kg, that must be left at the flag
 */
public record StintRun(
        Compound compound, List<StintLap> laps, double formationFuel, double raceFuel, double reserveFuel) {
    public StintRun {
        laps = List.copyOf(laps);
    }

    /** Fuel this stint needs before the formation lap, kg. */
    public double fuelNeeded() {
        return formationFuel + raceFuel + reserveFuel;
    }

    /** Time of all laps, s. */
    public double time() {
        return timeAfter(laps.size());
    }

    /** Time of the first so many laps, s. */
    public double timeAfter(int count) {
        return laps.subList(0, count).stream().mapToDouble(StintLap::time).sum();
    }

    /** Mean fuel of a lap, kg. */
    public double fuelPerLap() {
        return raceFuel / laps.size();
    }

    /** First lap that another compound drives faster, having been slower or as fast before; 0 if there is none. */
    public int fasterFrom(StintRun other) {
        int common = Math.min(laps.size(), other.laps.size());
        for (int i = 1; i < common; i++) {
            if (other.laps.get(i).time() < laps.get(i).time()
                    && other.laps.get(i - 1).time() >= laps.get(i - 1).time()) {
                return i + 1;
            }
        }
        return 0;
    }

    /** First lap after which another compound is ahead in all, having been behind or level before; 0 if there is none. */
    public int aheadFrom(StintRun other) {
        int common = Math.min(laps.size(), other.laps.size());
        double lead = 0;
        for (int i = 0; i < common; i++) {
            double before = lead;
            lead += laps.get(i).time() - other.laps.get(i).time();
            if (i > 0 && lead > 0 && before <= 0) {
                return i + 1;
            }
        }
        return 0;
    }
}
