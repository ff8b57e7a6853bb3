package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Conditions;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Corner;
import dev.lapwright.track.Track;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Result of a fit: a car's parameters estimated from logged laps, with intervals, and how well the fitted car agrees with the
 * laps.
 *
 * @param car as given, set up as in the first run
 * @param fitted the car with the fitted values and what was found of its nuisances, with its settings; {@link #document} gives
 *     what to write
 * @param runs one for each setup driven, at least one; unmodifiable
 * @param laps how each entered the fit, in the order given, run by run
 * @param estimates one for each parameter asked for, in the order of {@link FitParameter}
 * @param confidence of the intervals, as 0.95
 * @param doubts what the estimates lean on, and what speaks against them
 * @param agreement of the fitted car with the laps of the first run
 * @param notes what was not used or looks odd, in plain sentences
 */
public record FitResult(
        Car car,
        Car fitted,
        List<RunFit> runs,
        List<LapFit> laps,
        List<Estimate> estimates,
        double confidence,
        Doubts doubts,
        Agreement agreement,
        List<String> notes) {
    public FitResult {
        runs = List.copyOf(runs);
        laps = List.copyOf(laps);
        estimates = List.copyOf(estimates);
        notes = List.copyOf(notes);
    }

    /**
     * Fit of one run: its laps' time, and the car's before and after.
     *
     * @param car as given, as set up in the run
     * @param before lap of the car as given
     * @param after lap of the fitted car on the line that was found: what stands in for it is no part of the car
     * @param loggedTime mean of the laps by their clocks, by their speeds where there is none, s
     */
    public record RunFit(Car car, Lap before, Lap after, double loggedTime) {}

    /** Lap of the car as given, in the first run. */
    public Lap before() {
        return runs.get(0).before();
    }

    /** Lap of the fitted car in the first run, on the line that was found. */
    public Lap after() {
        return runs.get(0).after();
    }

    /** Mean of the first run's laps, s. */
    public double loggedTime() {
        return runs.get(0).loggedTime();
    }

    /** Track driven on. */
    public Track track() {
        return after().track();
    }

    /** Conditions of the day. */
    public Conditions conditions() {
        return after().vehicle().conditions();
    }

    /** Estimate of a parameter that was asked for. */
    public Estimate estimate(FitParameter parameter) {
        return estimates.stream()
                .filter(e -> e.parameter() == parameter)
                .findFirst()
                .orElseThrow();
    }

    /**
     * Fitted car as its document describes it, without settings, with how well it is known: what to write. Its adjustments stand at their standard; set as
     * the given car was, it is {@link #fitted}.
     *
     * @param name of the car in its document
     * @param description of the car in its document: say here where the values come from
     */
    public Car document(String name, String description) {
        return FittedCar.named(fitted.document(), name, description).doubting(doubts.car());
    }

    /**
     * Doubts about the estimates: what they lean on, and what speaks against them.
     *
     * @param correlation of the estimates, in their order; NaN in the rows and columns of those held. Copied in and out
     * @param nuisances what was found of what is not fitted and in doubt
     * @param car how well the fitted car's quantities are known, those that moved together
     * @param words what was said of which axle gives up first, and what it moved
     * @param next what further runs would tell, the best first; empty if it was not asked
     * @param suspicions what is odd, the likeliest culprit first; empty if nothing is
     * @param collinearities parameters whose effects the laps do not tell apart; empty if all is well
     */
    public record Doubts(
            double[][] correlation,
            List<Nuisance> nuisances,
            CarDoubt car,
            List<Word> words,
            List<NextRun> next,
            List<Suspicion> suspicions,
            List<Collinearity> collinearities) {
        public Doubts {
            correlation = copy(correlation);
            nuisances = List.copyOf(nuisances);
            words = List.copyOf(words);
            next = List.copyOf(next);
            suspicions = List.copyOf(suspicions);
            collinearities = List.copyOf(collinearities);
        }

        private static double[][] copy(double[][] rows) {
            return Arrays.stream(rows).map(double[]::clone).toArray(double[][]::new);
        }

        @Override
        public double[][] correlation() {
            return copy(correlation);
        }
    }

    /**
     * Agreement of logged and modelled speed.
     *
     * @param trace on the common grid
     * @param parts corners and straights in driving order
     * @param residuals logged less modelled speed over the whole grid
     */
    public record Agreement(Trace trace, List<Part> parts, Residuals residuals) {
        public Agreement {
            parts = List.copyOf(parts);
        }
    }

    /**
     * Estimate of one parameter, with its interval. Values are in the parameter's unit.
     *
     * @param parameter which
     * @param before of the car as given
     * @param value fitted; {@code before} where it was held
     * @param standardError NaN where it was held
     * @param lower end of the interval, not below zero but for downforce; NaN where it was held
     * @param upper end of the interval; NaN where it was held
     * @param identifiability how well the laps tell it
     * @param leans nuisances whose doubt makes up a fifth of its variance or more, the greatest first
     * @param atBound whether the fit ended at the end of what was searched: then the interval says little
     */
    public record Estimate(
            FitParameter parameter,
            double before,
            double value,
            double standardError,
            double lower,
            double upper,
            Identifiability identifiability,
            List<FitNuisance> leans,
            boolean atBound) {
        public Estimate {
            leans = List.copyOf(leans);
        }

        /** Whether the laps tell it by itself. */
        public boolean determined() {
            return identifiability == Identifiability.DETERMINED && !atBound;
        }

        /** Value over that before, less one; NaN where that was zero. */
        public double change() {
            return before == 0 ? Double.NaN : value / before - 1;
        }
    }

    /** Identifiability of a parameter: how well the laps tell it. */
    public enum Identifiability {
        /** By itself. */
        DETERMINED("told by the laps"),
        /** Only as far as nuisances are known: their doubt makes up most of its error. */
        LEANING("leans on what is in doubt"),
        /** Only together with another, which was held at the car's own value: it is right as far as that is. */
        CONDITIONAL("told only if what was held is right"),
        /** Not at all, or not apart from another: held at the car's own value. */
        HELD("not told, kept as the car has it");

        private final String label;

        Identifiability(String label) {
            this.label = label;
        }

        /** For tables. */
        public String label() {
            return label;
        }
    }

    /**
     * Nuisance of a fit: what was known of it before, and what the laps make of it.
     *
     * @param nuisance which
     * @param run that it belongs to, counted from 1; 0 for all
     * @param doubt before, one standard deviation, in its unit
     * @param found difference from the car, the circuit or the log as given, in its unit
     * @param standardError after, in its unit
     */
    public record Nuisance(FitNuisance nuisance, int run, double doubt, double found, double standardError) {
        /** Whether the laps leave less than half of the doubt. */
        public boolean told() {
            return standardError < 0.5 * doubt;
        }
    }

    /**
     * Word on which axle gives up first, taken in after the laps.
     *
     * @param word as said
     * @param bySteering whether the steering angle in the log says so, and not a driver
     * @param before margin that the laps alone make of it: how much more of its grip the front axle uses than the rear
     * @param after the same with the word
     */
    public record Word(LimitWord word, boolean bySteering, double before, double after) {}

    /**
     * Setup in which a further run might be driven.
     *
     * @param name for people, as in "rear-wing=9"
     * @param car so set up
     */
    public record Candidate(String name, Car car) {}

    /**
     * Worth of a further run, as many laps as the first.
     *
     * @param candidate how the car would be set up
     * @param standardErrors of what is asked of it, expected after it, in each nuisance's unit; unmodifiable
     */
    public record NextRun(Candidate candidate, Map<FitNuisance, Double> standardErrors) {
        public NextRun {
            standardErrors = Collections.unmodifiableMap(new LinkedHashMap<>(standardErrors));
        }
    }

    /** Cause of what a fit finds, as far as it shows. */
    public enum Cause {
        /** Way that was driven. */
        LINE("the line"),
        /** Sensor of speed or distance. */
        SENSOR("the speed sensor"),
        /** Circuit's document. */
        CIRCUIT("the circuit"),
        /** Car's document. */
        CAR("the car");

        private final String label;

        Cause(String label) {
            this.label = label;
        }

        /** For sentences, with its article. */
        public String label() {
            return label;
        }
    }

    /** Sign by which a suspicion shows. */
    public enum Sign {
        /** What was found of a nuisance, in its unit. */
        NUISANCE,
        /** Change of a fitted parameter, in its unit. */
        PARAMETER,
        /** Scatter of the radii driven from corner to corner, percent. */
        CORNER_RADII,
        /** Scatter of the corners' places, m. */
        CORNER_PLACES
    }

    /**
     * Suspicion that something else than what was asked for is at fault.
     *
     * @param cause where
     * @param sign by which it shows
     * @param what the nuisance's or parameter's title, or the corners
     * @param value in the sign's unit
     * @param oddness in multiples of what is just odd, at least 1
     */
    public record Suspicion(Cause cause, Sign sign, String what, double value, double oddness) {}

    /**
     * Collinearity of parameters: a combination of changes that these laps cannot see.
     *
     * <p>Along {@code together} the fitted speeds hardly change: moving each parameter by its entry in the map leaves the
     * lap as it is. Entries are in the parameters' own units; where one was held the greatest is as large as is usually in
     * doubt (a tenth of the grip, a fifth of the drag), else each is one standard error.
     * What is known is any sum that such a move leaves alone: of two parameters with entries a and b, the sum x/a − y/b.
     *
     * @param together change of each parameter that the laps cannot see; at least one
     * @param held those of them that were held at the car's own value; empty if they are told apart well enough to fit all
     * @param correlation of the two estimates, −1 to 1, where two were both fitted; NaN otherwise
     */
    public record Collinearity(Map<FitParameter, Double> together, List<FitParameter> held, double correlation) {
        public Collinearity {
            together = Collections.unmodifiableMap(new LinkedHashMap<>(together));
            held = List.copyOf(held);
        }

        /** The parameters concerned, at least one; one alone is not told by these laps at all. */
        public List<FitParameter> parameters() {
            return List.copyOf(together.keySet());
        }
    }

    /**
     * Residuals, logged less modelled cell means of speed: their size and how far they depend on each other.
     *
     * @param rmsBefore root mean square for the car as given, m/s
     * @param rmsAfter root mean square for the fitted car, m/s
     * @param cell length of the grid's cells, m
     * @param autocorrelation correlation of the residuals of neighbouring cells; NaN where every parameter was held
     * @param correlationCells cells over which residuals were taken to be correlated; NaN where every parameter was held
     * @param effectiveSamples number of independent residuals that tell as much as these do; NaN where every parameter was held
     */
    public record Residuals(
            double rmsBefore,
            double rmsAfter,
            double cell,
            double autocorrelation,
            double correlationCells,
            double effectiveSamples) {}

    /**
     * Fit of one lap: where it lies along the track, how much of it counts and how well the fitted car agrees with it.
     *
     * @param lap as given
     * @param alignment where its distance lies along the track
     * @param loggedTime by its clock, stretched to the whole lap, s; NaN if it has none
     * @param speedTime by its speeds along its own distance, s
     * @param share of the lap that counts, 0 to 1: weights after the robust treatment
     * @param dropped share of the lap left out: gaps, lifts where the car could go flat out, stretches that no setting
     *     explains
     * @param lifted share of the lap where the driver was off the throttle and off the brake while the model is flat out;
     *     NaN if throttle was not logged
     * @param gearAgreement share of the lap in the gear that the fitted car is in; NaN if gears were not logged
     * @param accelerationRms root mean square of logged less fitted longitudinal acceleration, m/s²; NaN if it was not
     *     logged
     */
    public record LapFit(
            DrivenLap lap,
            Alignment alignment,
            double loggedTime,
            double speedTime,
            double share,
            double dropped,
            double lifted,
            double gearAgreement,
            double accelerationRms) {}

    /**
     * Alignment of a lap's own distance x with the track: place = scale · x + offset.
     *
     * @param scale m of track for a logged metre
     * @param offset m
     */
    public record Alignment(double scale, double offset) {}

    /**
     * Speeds on the common grid, one value a cell. Copied in and out.
     *
     * @param distance of the cells' middles along the track, m
     * @param logged mean of the laps, m/s; NaN where no lap has samples
     * @param before by the car as given, m/s
     * @param after by the fitted car, m/s
     * @param weight 1 where all laps count in full, 0 where none does
     */
    public record Trace(double[] distance, double[] logged, double[] before, double[] after, double[] weight) {
        public Trace {
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

    /**
     * Corner or straight, as driven and as modelled.
     *
     * @param corner empty on a straight
     * @param follows on a straight, the corner it follows; empty otherwise
     * @param start distance, m
     * @param end distance, m; may be below {@code start} where it spans the line
     * @param logged mean of the laps
     * @param before by the car as given
     * @param fitted by the fitted car
     */
    public record Part(
            Optional<Corner> corner,
            Optional<Corner> follows,
            double start,
            double end,
            Passage logged,
            Passage before,
            Passage fitted) {
        /** Whether it is a corner. */
        public boolean isCorner() {
            return corner.isPresent();
        }

        /** Label for tables: the corner's, or "after" the corner's, or "straight" where there is no corner at all. */
        public String label() {
            return corner.map(Corner::label)
                    .orElse(follows.map(c -> "after " + c.label()).orElse("straight"));
        }

        /** Difference of the laps to the fitted car here, s, by speed and by a longer way; minus where the laps are faster. */
        public double difference() {
            return logged.time() - fitted.time();
        }
    }

    /**
     * Time and speeds of one passage through a corner or along a straight.
     *
     * @param time s
     * @param entrySpeed m/s
     * @param leastSpeed m/s
     * @param mostSpeed m/s
     * @param exitSpeed m/s
     */
    public record Passage(double time, double entrySpeed, double leastSpeed, double mostSpeed, double exitSpeed) {}
}
