package dev.lapwright.evidence;

import org.apache.commons.math3.distribution.TDistribution;

/**
 * Linear trend of lap times over the laps: one least-squares slope for all groups of clean laps, the groups being the runs or, for a trend through the session, the setups. Fuel, tyres, driver and road go into it together.
 *
 * @param kind over what it runs
 * @param slope s a lap; 0 if none is taken out
 * @param error standard error of the slope, s a lap; 0 if none is taken out
 * @param freedom degrees of freedom of the residuals
 * @param reference the lap to whose trend all times are brought: the mean of the clean ones
 * @param groups how many levels were fitted beside the slope
 */
public record Trend(Kind kind, double slope, double error, int freedom, double reference, int groups) {
    /** The trend of the clean laps; none where there are too few to tell. */
    public static Trend of(CleanLaps laps, Kind kind) {
        int[] clean = laps.clean();
        double reference = 0;
        double level = 0;
        for (int i : clean) {
            reference += x(laps.log(), i, kind) / clean.length;
            level += laps.log().laps().get(i).time() / clean.length;
        }
        CommonSlope fit = new CommonSlope(groupCount(laps.log(), kind));
        for (int i : clean) {
            fit.add(
                    group(laps.log(), i, kind),
                    x(laps.log(), i, kind) - reference,
                    laps.log().laps().get(i).time() - level);
        }
        int freedom = fit.points() - fit.groups() - 1;
        if (kind == Kind.NONE || freedom < 1 || !fit.hasSlope()) {
            return new Trend(kind, 0, 0, fit.points() - fit.groups(), reference, fit.groups());
        }
        double error = Math.sqrt(fit.residual() / freedom / fit.spreadOfX());
        return new Trend(kind, fit.slope(), error, freedom, reference, fit.groups());
    }

    /** What a lap is counted by in a trend. */
    static double x(TimingLog log, int lap, Kind kind) {
        return kind == Kind.SESSION ? log.sessionLap(lap) : log.runLap(lap);
    }

    /** The group whose level a lap shares. */
    static int group(TimingLog log, int lap, Kind kind) {
        return kind == Kind.RUN
                ? log.run(lap)
                : log.setups().indexOf(log.laps().get(lap).setup());
    }

    static int groupCount(TimingLog log, Kind kind) {
        return kind == Kind.RUN ? log.runs() : log.setups().size();
    }

    /** Whether one is taken out. */
    public boolean isTaken() {
        return error > 0 || slope != 0;
    }

    /** Half the 95 % interval of the slope, s a lap; 0 if none is taken out. */
    public double halfInterval() {
        return isTaken() ? new TDistribution(null, freedom).inverseCumulativeProbability(0.975) * error : 0;
    }

    /** What to take from the time of a lap, counted from 0, s. */
    public double share(TimingLog log, int lap) {
        return slope * (x(log, lap, kind) - reference);
    }

    /** Time of a lap without the trend, s; the lap counted from 0. */
    public double without(TimingLog log, int lap) {
        return log.laps().get(lap).time() - share(log, lap);
    }

    /** By how much variances about the groups' means are to be raised for the slope fitted. */
    double inflation() {
        return isTaken() ? (freedom + 1.0) / freedom : 1;
    }

    /** Variable over which the trend runs. */
    public enum Kind {
        /** The lap of the run: fuel and tyres, where each run starts alike. */
        RUN("within each run"),
        /** The lap of the session: driver and road, or one tank and one set of tyres for all runs. */
        SESSION("through the session"),
        /** No trend. */
        NONE("none taken out");

        private final String label;

        Kind(String label) {
            this.label = label;
        }

        /** For people. */
        public String label() {
            return label;
        }
    }
}
