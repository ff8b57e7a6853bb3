package dev.lapwright.fit;

import java.util.List;

/**
 * Prior knowledge of the nuisances in a fit, each on the scale of its doubt: normal, of mean 0 and standard deviation 1, but for the
 * speed scale, of which the clock tells: the speed summed over time is the way driven, and that is the circuit's length but for a
 * doubt. Parameters that are fitted have none.
 *
 * <p>Unknowns stand in this order: the fitted parameters, the nuisances of car and line, speed scale, sensor lag.
 */
final class Priors {
    private static final double PERCENT = 100;
    /** No clock tells a speed's scale better than this share of its doubt. */
    private static final double LEAST_SHARE = 1e-3;

    final FitDoubts doubts;
    /** The fitted parameters. */
    final int parameters;
    /** The parameters and the nuisances of car and line. */
    final int directions;
    /** All unknowns that are not a lap's own. */
    final int shared;
    /** Mean of each, in its own scale. */
    final double[] mean;
    /** One over the variance of each; 0 where nothing is known. */
    final double[] precision;
    /**
     * What a squared residual of one doubt weighs against one of 1 m/s. Intervals are right for any value, estimates
     * best where it is the variance of what the laps tell, correlation and all.
     */
    double weight;

    /** Where the line stands among the unknowns; negative if it is known exactly. */
    final int lineAt;

    /** For these directions, of which so many are parameters. */
    Priors(FitDoubts doubts, int parameters, List<Direction> all) {
        this.doubts = doubts;
        this.parameters = parameters;
        directions = all.size();
        int line = -1;
        for (int j = parameters; j < directions; j++) {
            line = all.get(j).isOfTheLine() ? j : line;
        }
        lineAt = line;
        shared = directions + 2;
        mean = new double[shared];
        precision = new double[shared];
        for (int j = parameters; j < shared; j++) {
            precision[j] = 1;
        }
    }

    /** Logged over true speed at a z. */
    double gain(double z) {
        return 1 + z * gainDoubt();
    }

    /** Change of the gain with z. */
    double gainDoubt() {
        return doubts.of(FitNuisance.SPEED_SCALE) / PERCENT;
    }

    /** Lag (s) at a z, and its change with it. */
    double lag(double z) {
        return z * doubts.of(FitNuisance.SENSOR_LAG);
    }

    int gainAt() {
        return directions;
    }

    int lagAt() {
        return directions + 1;
    }

    /** Takes in what the clocks say of the speed's scale, the laps lying as they do at a point. */
    void hearClocks(List<LapCells> laps, double[] point) {
        double sum = 0;
        int told = 0;
        for (int k = 0; k < laps.size(); k++) {
            LapCells cells = laps.get(k);
            if (cells.lap.time().length > 0) {
                double way = cells.trackLength + point[shared + 2 * k + 1];
                sum += cells.wayBySpeed() / way - 1;
                told++;
            }
        }
        double doubt = gainDoubt();
        int at = gainAt();
        mean[at] = 0;
        precision[at] = 1;
        if (told > 0 && doubt > 0) {
            double share = Math.max(LEAST_SHARE, doubts.of(FitNuisance.WAY_LENGTH) / PERCENT / doubt);
            double clock = 1 / (share * share);
            precision[at] = 1 + clock;
            mean[at] = clock * (sum / told / doubt) / precision[at];
        }
    }

    /** Root of the weight of one unknown's prior, m/s for one doubt. */
    double root(int j) {
        return Math.sqrt(weight * precision[j]);
    }
}
