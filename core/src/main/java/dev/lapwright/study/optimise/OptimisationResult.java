package dev.lapwright.study.optimise;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Best setup found, and what lies about it.
 *
 * @param task what it was asked
 * @param search what it looked at
 * @param before the setup that was there before, which need not stand on legal steps
 * @param best the best legal setup; where none was found that keeps the limits, the one that misses them least
 * @param misses limits that it misses; empty where it keeps all
 * @param nearOptimal setups that are as good as the best, to a driver; empty where limits are missed
 * @param sectors where the best is faster, for each circuit
 */
public record OptimisationResult(
        Task task,
        Search search,
        Candidate before,
        Candidate best,
        List<Miss> misses,
        NearOptimal nearOptimal,
        List<SectorTimes> sectors) {
    public OptimisationResult {
        misses = List.copyOf(misses);
        sectors = List.copyOf(sectors);
    }

    /**
     * Question that an optimisation answers.
     *
     * @param car as it was set up before
     * @param circuits that the setup is to serve
     * @param days air, wind and grip it is to serve
     * @param forTheWorstDay whether the day on which it makes the lap least faster counts, not the mean
     * @param limits it had to keep
     * @param seed of the random numbers
     */
    public record Task(
            Car car,
            List<Optimisation.Circuit> circuits,
            List<Conditions> days,
            boolean forTheWorstDay,
            OptimisationLimits limits,
            long seed) {
        public Task {
            circuits = List.copyOf(circuits);
            days = List.copyOf(days);
        }
    }

    /**
     * Extent of a search: what it turned, what it left alone, and what it drove.
     *
     * @param axes adjustments searched
     * @param leftAlone adjustments that were not
     * @param between the best setup found between the legal steps; of a rough search the middle of all ranges
     * @param met all legal setups driven that keep the limits, the least cost first
     * @param driven number of setups driven, between the steps and on them
     */
    public record Search(
            List<Axis> axes, List<LeftAlone> leftAlone, Candidate between, List<Candidate> met, int driven) {
        public Search {
            axes = List.copyOf(axes);
            leftAlone = List.copyOf(leftAlone);
            met = List.copyOf(met);
        }
    }

    /** Whether the best setup keeps all limits. */
    public boolean isMet() {
        return misses.isEmpty();
    }

    /** Limits that the setup that was there before misses. */
    public List<Miss> missesBefore() {
        return task.limits().misses(before);
    }

    /** Difference of a setup to the one that was there before, s, minus where faster. */
    public double difference(Candidate point) {
        return point.lapTime() - before.lapTime();
    }

    /** A setup found, as a setup: what had been set on the car, and the settings searched. */
    public Setup setup(String name, Candidate point) {
        Map<String, Double> settings = new LinkedHashMap<>(task.car().settings());
        for (int i = 0; i < search.axes().size(); i++) {
            settings.put(search.axes().get(i).name(), point.settings().get(i));
        }
        return new Setup(name, settings);
    }

    /**
     * Adjustment that is searched.
     *
     * @param name of the adjustment
     * @param settings legal settings in its unit, rising, at least two
     */
    public record Axis(String name, List<Double> settings) {
        public Axis {
            settings = List.copyOf(settings);
        }

        /** The setting so many steps from the first; between two of them in proportion. */
        double at(double steps) {
            int below = (int) Math.min(Math.floor(steps), settings.size() - 1.0);
            double share = steps - below;
            return share == 0
                    ? settings.get(below)
                    : (1 - share) * settings.get(below) + share * settings.get(below + 1);
        }

        /** Steps to the legal setting nearest to a setting. */
        int nearest(double setting) {
            int nearest = 0;
            for (int i = 1; i < settings.size(); i++) {
                if (Math.abs(settings.get(i) - setting) < Math.abs(settings.get(nearest) - setting)) {
                    nearest = i;
                }
            }
            return nearest;
        }
    }

    /**
     * Adjustment that the search leaves alone.
     *
     * @param name of the adjustment
     * @param reason why, in a few words
     */
    public record LeftAlone(String name, String reason) {}

    /**
     * Setup that was driven on all circuits and days, and what it gives.
     *
     * @param settings of the adjustments searched, in their order and units
     * @param cost what the search makes small, s: the lap time, or where the worst day counts the lap time of the setup that was
     *     there before plus the greatest difference to it on any day
     * @param lapTime mean over the circuits by weight and over the days, s; NaN where there is no lap
     * @param circuitTimes mean lap time over the days for each circuit, s
     * @param limited what limits may be set for
     * @param failure why there is no lap; empty where there is one
     */
    public record Candidate(
            List<Double> settings,
            double cost,
            double lapTime,
            List<Double> circuitTimes,
            Limited limited,
            String failure) {
        public Candidate {
            settings = List.copyOf(settings);
            circuitTimes = List.copyOf(circuitTimes);
        }

        static Candidate withoutLap(List<Double> settings, String failure) {
            double none = Double.NaN;
            return new Candidate(settings, none, none, List.of(), Limited.NONE, failure);
        }

        /** The least top speed of all circuits and days, m/s. */
        public double topSpeed() {
            return limited.topSpeed();
        }

        /** Whether every circuit has a lap on every day. */
        public boolean hasLap() {
            return failure.isEmpty();
        }
    }

    /**
     * Figures for which limits may be set: the worst of all circuits and days.
     *
     * @param topSpeed the least, m/s
     * @param rideHeightMm least ride height of either axle at the top speed, platform settled
     * @param balanceLeastPercent least limit balance, percent; NaN where it was not asked for or no corner is taken at the
     *     limit
     * @param balanceMostPercent the greatest
     * @param upshiftsInCorners upshifts while leaning on the tyres, all together; -1 where it was not asked for
     */
    public record Limited(
            double topSpeed,
            double rideHeightMm,
            double balanceLeastPercent,
            double balanceMostPercent,
            int upshiftsInCorners) {
        static final Limited NONE = new Limited(Double.NaN, Double.NaN, Double.NaN, Double.NaN, -1);
    }

    /**
     * Limit that a setup does not keep.
     *
     * @param limit what is limited
     * @param unit of the three numbers
     * @param wanted at least or at most, whichever it misses
     * @param reached by the setup
     * @param bestAlone what the best setup found for this limit alone reaches, all others forgotten; NaN if that was not asked
     */
    public record Miss(Limit limit, String unit, double wanted, double reached, double bestAlone) {
        /** Kinds of limit. */
        public enum Limit {
            TOP_SPEED("top speed"),
            BALANCE_LEAST("limit balance, lower end"),
            BALANCE_MOST("limit balance, upper end"),
            RIDE_HEIGHT("ride height at top speed"),
            UPSHIFTS("upshifts in corners"),
            LAP("a lap on every circuit and day");

            private final String label;

            Limit(String label) {
                this.label = label;
            }

            /** Whether more of it is better. */
            boolean isAtLeast() {
                return this == TOP_SPEED || this == BALANCE_LEAST || this == RIDE_HEIGHT;
            }

            /** For tables and messages. */
            public String label() {
                return label;
            }
        }

        /** By how much it misses, in its unit; above 0. */
        public double shortfall() {
            return Math.abs(wanted - reached);
        }

        /** Whether some setup found keeps this limit when all others are forgotten. */
        public boolean isKeptAlone() {
            return limit.isAtLeast() ? bestAlone >= wanted : bestAlone <= wanted;
        }

        /** The figure of a setup that is limited, in the limit's unit. */
        static double figure(Limit limit, Candidate point) {
            return switch (limit) {
                case TOP_SPEED -> OptimisationLimits.KMH * point.topSpeed();
                case RIDE_HEIGHT -> point.limited().rideHeightMm();
                case BALANCE_LEAST -> point.limited().balanceLeastPercent();
                case BALANCE_MOST -> point.limited().balanceMostPercent();
                case UPSHIFTS -> point.limited().upshiftsInCorners();
                case LAP -> point.hasLap() ? 0 : OptimisationLimits.NO_LAP;
            };
        }

        Miss alone(double best) {
            return new Miss(limit, unit, wanted, reached, best);
        }
    }

    /**
     * Range in which one adjustment can be moved without harm. Bounds are legal settings in the adjustment's unit; between
     * them every legal setting is within the band of {@link LapTimeDifference#COUNTS} and keeps the limits.
     *
     * @param name of the adjustment
     * @param before setting of the setup that was there before
     * @param best setting of the best setup
     * @param aloneLeast least setting, all others at their best
     * @param aloneMost greatest setting, all others at their best
     * @param togetherLeast least setting in any of the equally good setups found
     * @param togetherMost the greatest
     * @param range between its best and its worst legal setting, all others at their best, s
     * @param putBack difference when this one alone goes back to the legal setting nearest to where it was, s, above zero; 0 where it has not
     *     moved, NaN where a limit is then missed
     */
    public record Range(
            String name,
            double before,
            double best,
            double aloneLeast,
            double aloneMost,
            double togetherLeast,
            double togetherMost,
            double range,
            double putBack) {
        /** Whether the model sees the adjustment at all. */
        public boolean matters() {
            return !LapTimeDifference.isNone(range);
        }

        /** Whether the best setup has it elsewhere than it was. */
        public boolean isMoved() {
            return Math.abs(best - before) > 1e-9 * Math.max(1, Math.abs(before));
        }
    }

    /**
     * Legal setups near the optimum: no slower than the best by more than {@link LapTimeDifference#COUNTS}, limits kept.
     *
     * @param setups those found, the best first
     * @param complete whether these are all that single steps lead to from the best without leaving them; if not, the
     *     search was ended with more to be found
     * @param ranges one for each adjustment searched
     * @param fewest the setup with few changes: as many adjustments as possible back where they were
     * @param front of all setups found, not only these, those that no other beats both in lap time and in top speed, the
     *     fastest lap first
     */
    public record NearOptimal(
            List<Candidate> setups, boolean complete, List<Range> ranges, Candidate fewest, List<Candidate> front) {
        public NearOptimal {
            setups = List.copyOf(setups);
            ranges = List.copyOf(ranges);
            front = List.copyOf(front);
        }
    }

    /**
     * Sector times of a circuit before and after.
     *
     * @param track where
     * @param before time in each sector with the setup that was there before, mean over the days, s
     * @param after with the best setup
     */
    public record SectorTimes(Track track, List<Double> before, List<Double> after) {
        public SectorTimes {
            before = List.copyOf(before);
            after = List.copyOf(after);
        }

        /** Difference in each sector, s, minus where faster. */
        public List<Double> differences() {
            List<Double> differences = new ArrayList<>();
            for (int i = 0; i < before.size(); i++) {
                differences.add(after.get(i) - before.get(i));
            }
            return differences;
        }
    }
}
