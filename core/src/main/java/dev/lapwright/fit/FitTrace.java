package dev.lapwright.fit;

/**
 * Speeds on the common grid, one value a cell. Copied in and out.
 *
 * @param distance of the cells' middles along the track, m
 * @param logged mean of the laps, m/s; NaN where no lap has samples
 * @param before by the car as given, m/s
 * @param after by the fitted car, m/s
 * @param weight 1 where all laps count in full, 0 where none does
 */
public record FitTrace(double[] distance, double[] logged, double[] before, double[] after, double[] weight) {
    public FitTrace {
        distance = distance.clone();
        logged = logged.clone();
        before = before.clone();
        after = after.clone();
        weight = weight.clone();
    }

    @Override
    public double[] distance() {
        return distance.clone();
    }

    @Override
    public double[] logged() {
        return logged.clone();
    }

    @Override
    public double[] before() {
        return before.clone();
    }

    @Override
    public double[] after() {
        return after.clone();
    }

    @Override
    public double[] weight() {
        return weight.clone();
    }

    /** Number of cells. */
    public int count() {
        return distance.length;
    }
}
