package dev.lapwright.track.survey;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.numerics.ArcLengthCurve;
import dev.lapwright.track.survey.RoadPosterior.Errors;
import dev.lapwright.track.survey.RoadPosterior.Placed;
import dev.lapwright.track.survey.RoadPosterior.Solution;
import dev.lapwright.track.survey.RoadPosterior.Turning;
import dev.lapwright.track.survey.RoadPosterior.WanderKind;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.Random;
import org.apache.commons.math3.exception.TooManyEvaluationsException;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.SimplexOptimizer;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;

/**
 * The road most probable from surveyed points, whose smoothness and errors the points tell themselves: Gauss and Newton's steps
 * with {@link RoadPosterior}, each about the line found before. First the points are taken to err independently, and the weight
 * of the roughness follows the road (expectation and maximisation); then errors that neighbours have in common are tried, and
 * kept if they are clearly likelier. At last the road is taken to be straight where it seems to be, and its curvature to change
 * its course at few places: roughness is averaged over ever shorter lengths.
 */
final class RoadFit {
    /** Length of corners times the curvature's root mean square: 0.13 to 0.35 on circuits drawn at random. */
    static final double CORNER_SHARE = 0.22;
    /** Decimal logarithm of the roughness's density over the seventh power of the curvature's root mean square, likewise. */
    static final double USUAL_ROUGHNESS = 6.6;

    static final double ROUGHNESS_SPREAD = 0.7;
    /** Wanders far beyond it are not those of a survey, m. */
    private static final double LARGE_WANDER = 3;

    private static final double LONGEST_WANDER = 300;
    /** Beyond it the precision of a smoothed wander drowns in rounding, in steps. */
    private static final double LONGEST_SMOOTHED = 14;
    /** By how much −2 log likelihood must fall for a wander to be believed: its three numbers by Akaike's criterion. */
    private static final double CLEARLY = 6;
    /** What is known of a stated accuracy: a fifth either way. */
    private static final double ACCURACY_SPREAD = 0.2;

    private static final int FIRST_STEPS = 4;
    private static final int FIRST_ROUNDS = 3;
    private static final int ROUNDS = 12;
    /** In more rounds the road follows the errors of accelerations, and laps come out slower. */
    private static final int ROUNDS_WITH_ACCELERATIONS = 1;

    private static final int SHARPENED = 15;
    /** Roughness is averaged over this at first, m, then over less and less. */
    private static final double FIRST_AVERAGE = 20;

    private static final double SHORTER = 0.8;
    private static final double LEAST_AVERAGE = 5;
    /** Curvatures are averaged over this where they tell whether the road is straight, m. */
    private static final double CURVATURE_AVERAGE = 3;
    /** Once jointed, the road has no corner's length: its curvature is taken for piecewise linear. Over this it fades, m. */
    private static final double FADES_OVER = 500;
    /** No place is smoother than this share of the roughest. */
    private static final double SMOOTHEST = 1e-7;

    /** Length over which a road shows once how rough it is, m. */
    private static final double SHOWN_ONCE = 20;
    /** Of the square of a normal number, lest a drawn road be without any shape. */
    private static final double LEAST_SHOWN = 0.05;

    private static final int STRETCH_STEPS = 2;
    static final double LEAST_ROUGHNESS = 1e-3;
    /** A step that moves the line farther is shortened, m. */
    private static final double LONGEST_MOVE = 15;
    /** A line this much longer than the first has lost its way. */
    private static final double LOST = 1.5;

    private static final double REFUSED = 1e9;
    /** How far along the line a point of another lap is looked for from where its chord leads, m. */
    private static final double REACH_OF_ANOTHER_LAP = 20;
    /** Where the search for the accelerations' error begins: a logger's in a racing car, m/s². */
    private static final double USUAL_ACCELERATION_ERROR = 0.5;

    private static final double LEAST_ACCELERATION_ERROR = 0.02;
    private static final double MOST_ACCELERATION_ERROR = 5;
    /** Deviations beyond which an acceleration is a knock, not an error. */
    private static final double KNOCK = 5;
    /** Correlation below which accelerations are not those of the line: of a car that slides, or of another log. */
    static final double LEAST_AGREEMENT = 0.7;
    /** Of a normal distribution over its median size. */
    private static final double DEVIATION_OF_MEDIAN = 1.4826;
    /** Logarithm of the longest wave, m: a kilometre. */
    private static final double HIGHEST = 7;

    private final Points on;
    private final double[] x;
    private final double[] y;
    private LoggedSamples samples;
    private final OptionalDouble accuracy;
    private final double scale;
    private final double reach;
    private final double longest;
    /** Logarithm of the shortest wave that the points can show, m. */
    private final double lowest;

    private ReferenceLine line;
    private double[] foot;
    private double rate;
    private double rootMeanSquare;
    private RoadPosterior posterior;
    private Errors errors = Errors.OWN;
    private Turning turning = Turning.NONE;
    /** Correlation of the accelerations with those of the line that positions alone give. */
    private double agreement = Double.NaN;

    private boolean mirrored;
    private double wave;
    /** The wave that the points chose, m. */
    private double chosen;

    private double[] roughness = {1};
    /** Precision of the curvature's being 0, at even steps along the line: see {@link RoadPosterior#straighten}. */
    private double[] straight = {0};
    /** Of the jointed road, over that of its wave; 1 of a smooth one. */
    private double stiffer = 1;

    private Solution solution;
    /** The road of plain parts, where it was taken in place of the smooth one. */
    private PlainCorners plain;

    private PlainCorners.Doubt plainDoubt;

    private RoadFit(Points points, ArcLengthCurve first, OptionalDouble accuracy, double step) {
        on = points;
        samples = points.samples();
        x = points.x();
        y = points.y();
        this.accuracy = accuracy;
        line = ReferenceLine.sampled(first, points.closed(), step);
        scale = points.closed() ? Math.max(15, Math.min(80, line.length() / 50)) : 60;
        reach = Math.max(6, 0.75 * line.length() / x.length);
        longest = line.length();
        lowest = Math.log(Math.max(4 * line.step(), 2 * line.length() / x.length));
        foot = new double[x.length];
        double[] arcs = first.knotArcs();
        for (int i = 0; i < x.length; i++) {
            if (i < arcs.length) {
                foot[i] = line.foot(x[i], y[i], arcs[i], reach);
            } else if (points.lap()[i] != points.lap()[i - 1]) {
                foot[i] = line.foot(x[i], y[i], 0, longest / 2);
            } else {
                double on = foot[i - 1] + Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
                foot[i] = line.foot(x[i], y[i], on, REACH_OF_ANOTHER_LAP);
            }
        }
        // Across gaps a line without a corner's length would go on bending as it did.
        rate = 1 / scale;
        build();
        for (int i = 0; i < FIRST_STEPS; i++) {
            move(posterior.solve(posterior.strength(scale), Errors.OWN));
        }
    }

    /**
     * Points on the plane, and what was logged with them.
     *
     * @param x m
     * @param y m
     * @param lap of each, from 0, rising; those of the first have a knot each in the line that the search begins with
     * @param way of each, gone in its lap, m; zeros where there are no samples
     * @param closed whether the last joins the first
     * @param samples none, or those of the same laps
     */
    record Points(double[] x, double[] y, int[] lap, double[] way, boolean closed, LoggedSamples samples) {}

    /**
     * The road whose smoothness the points tell.
     *
     * @param first a line near the points, with a knot for each
     * @param accuracy standard deviation of the points' errors across the line where it is known, m
     */
    static RoadFit chosen(Points points, ArcLengthCurve first, OptionalDouble accuracy) {
        RoadFit fit = new RoadFit(points, first, accuracy, stepFor(first.length()));
        fit.choose();
        return fit;
    }

    /** The road for a smoothing set by hand: the length of waves that lose half their height, m. */
    static RoadFit byHand(Points points, ArcLengthCurve first, double wave) {
        double step = Math.min(stepFor(first.length()), Math.max(0.25, wave / 6));
        RoadFit fit = new RoadFit(points, first, OptionalDouble.empty(), step);
        fit.wave = wave;
        fit.rate = 0;
        fit.build();
        for (int i = 0; i < FIRST_STEPS; i++) {
            fit.move(fit.posterior.solve(fit.posterior.strength(wave), Errors.OWN));
        }
        fit.solution = fit.posterior.solve(fit.posterior.strength(wave), Errors.OWN);
        return fit;
    }

    private static double stepFor(double length) {
        return Math.max(length / 4000, Math.max(1, Math.min(3, length / 600)));
    }

    private void choose() {
        double squares = 0;
        for (int i = 0; i < line.count(); i++) {
            squares += line.curvature(i) * line.curvature(i) / line.count();
        }
        rootMeanSquare = Math.sqrt(Math.max(squares, 1e-10));
        rate = rootMeanSquare / CORNER_SHARE;
        build();
        ReferenceLine stiff = line;
        double[] stiffFoot = foot;
        chooseWave(lowest, Math.max(lowest + 1, Math.log(400)));
        if (samples.count() > 0 && agree()) {
            takeAccelerations();
        }
        chooseWave(Math.max(lowest, Math.log(wave) - 0.3), Math.log(wave) + 0.3);
        adapt(samples.count() > 0 ? ROUNDS_WITH_ACCELERATIONS : FIRST_ROUNDS);
        dropKnocks();
        use(numbers(Math.log(wave)), WanderKind.NONE);
        ReferenceLine white = line;
        double[] whiteFoot = foot;
        Errors own = errors;
        double deviation = Math.sqrt(solution.variance());
        line = stiff;
        foot = stiffFoot;
        build();
        for (int i = 0; i < 2; i++) {
            move(posterior.solve(posterior.strength(scale), Errors.OWN));
        }
        if (!wanders(deviation)) {
            line = white;
            foot = whiteFoot;
            errors = own;
            build();
            use(numbers(Math.log(wave)), WanderKind.NONE);
        }
        adapt(samples.count() > 0 ? ROUNDS_WITH_ACCELERATIONS : ROUNDS);
        chosen = wave;
        move(solution);
        solution = posterior.solve(posterior.strength(wave), errors);
        sharpen();
        if (line.closed() && samples.count() == 0) {
            choosePlain();
        }
    }

    /** Takes the road of plain parts that the points ask for, if Akaike's corrected criterion prefers it to the smooth one. */
    private void choosePlain() {
        Placed placed = new Placed(x, y, on.lap(), foot);
        PlainCorners found = PlainCorners.of(line, placed, errors, solution.variance());
        double smooth =
                PlainCorners.criterion(PlainCorners.squares(line, placed, errors), solution.freedom(), x.length);
        if (found == null || !(found.criterion() < smooth)) {
            return;
        }
        plain = found;
        plainDoubt = found.new Doubt();
        double[] near = found.feet();
        line = found.line(line.step());
        for (int i = 0; i < foot.length; i++) {
            foot[i] =
                    line.foot(x[i], y[i], near[i] * line.length() / found.road().length(), line.step());
        }
        build();
    }

    /**
     * Takes the road for straights and bends whose curvature changes its course at few places. By expectation and maximisation the
     * variance of the roughness becomes its expected square, averaged over less and less, and what seems straight is held so.
     */
    private void sharpen() {
        double own = solution.variance();
        rate = 1 / FADES_OVER;
        Solution smooth = solution;
        build();
        RoadPosterior.Expected expected = smooth.expected(posterior, own);
        Straights straights = new Straights(line.closed(), line.step(), rootMeanSquare);
        double over = FIRST_AVERAGE;
        // Averaged over less, the road follows the errors of accelerations.
        double least = samples.count() > 0 ? FIRST_AVERAGE : LEAST_AVERAGE;
        for (int round = 1; round <= SHARPENED; round++) {
            straight = Arrays.stream(straights.precisions(averaged(expected.curvature(), CURVATURE_AVERAGE)))
                    .map(p -> p * own)
                    .toArray();
            roughness = averaged(expected.roughness(), Math.max(least, over));
            double most = Arrays.stream(roughness).max().orElse(1);
            double mean = Arrays.stream(roughness).average().orElse(1);
            for (int i = 0; i < roughness.length; i++) {
                roughness[i] = Math.max(SMOOTHEST * most, roughness[i]) / mean;
            }
            over *= SHORTER;
            build();
            stiffer = 1 / (mean * line.step() * posterior.strength(wave));
            solution = posterior.solve(strength(), errors);
            if (SHARPENED - round == 3 || SHARPENED - round == 1 || round == SHARPENED) {
                move(solution);
                solution = posterior.solve(strength(), errors);
            }
            expected = solution.expected(posterior, own);
        }
    }

    private double strength() {
        return stiffer * posterior.strength(wave);
    }

    /** Whether the accelerations go with the line that positions alone give; turned about where they count right as positive. */
    private boolean agree() {
        int n = samples.count();
        double[] wanted = new double[n];
        for (int i = 0; i < n; i++) {
            double node = turning.place()[i] / line.step();
            int at = Math.min(line.count() - 1, (int) node);
            wanted[i] = samples.speed()[i] * samples.speed()[i] * line.curvature(at);
        }
        agreement = n < 2 ? 0 : new PearsonsCorrelation().correlation(wanted, samples.acceleration());
        mirrored = agreement < 0;
        agreement = Math.abs(agreement);
        samples = agreement >= LEAST_AGREEMENT ? (mirrored ? samples.mirrored() : samples) : LoggedSamples.NONE;
        build();
        return samples.count() > 0;
    }

    /** Lets the accelerations speak, whose error is looked for about what loggers usually have. */
    private void takeAccelerations() {
        double error = USUAL_ACCELERATION_ERROR;
        for (int round = 0; round < 2; round++) {
            errors = new Errors(solution.variance() / (error * error));
            use(numbers(Math.log(wave)), WanderKind.NONE);
            double least = Double.POSITIVE_INFINITY;
            double[] best = numbers(Math.log(wave));
            for (int k = -8; k <= 4; k++) {
                for (int m = -4; m <= 4; m++) {
                    double[] tried = numbers(Math.max(lowest, Math.log(wave) + 0.25 * m));
                    tried[1] += 0.7 * k;
                    double score = score(tried, WanderKind.NONE);
                    if (score < least) {
                        least = score;
                        best = tried;
                    }
                }
            }
            use(best, WanderKind.NONE);
            error = solution.accelerationDeviation();
        }
    }

    /** Leaves out accelerations far from that of the road: kerbs, and samples that a logger lost. */
    private void dropKnocks() {
        if (samples.count() == 0) {
            return;
        }
        double[] left = solution.accelerationResiduals(turning);
        double[] sizes = Arrays.stream(left).map(Math::abs).sorted().toArray();
        double limit = KNOCK * DEVIATION_OF_MEDIAN * sizes[sizes.length / 2];
        boolean[] kept = new boolean[left.length];
        for (int i = 0; i < left.length; i++) {
            kept[i] = Math.abs(left[i]) <= limit;
        }
        samples = samples.kept(kept);
        build();
    }

    /** The numbers that are searched, without a wander: the wave's logarithm, and that of the accelerations' precision. */
    private double[] numbers(double logWave) {
        return errors.precision() > 0 ? new double[] {logWave, Math.log(errors.precision())} : new double[] {logWave};
    }

    /** The numbers that hold now. */
    private double[] numbers() {
        double[] alone = numbers(Math.log(wave));
        if (errors.kind() == WanderKind.NONE) {
            return alone;
        }
        double[] all = new double[2 + alone.length];
        all[0] = alone[0];
        all[1] = Math.log(errors.ratio());
        all[2] = Math.log(errors.length());
        System.arraycopy(alone, 1, all, 3, alone.length - 1);
        return all;
    }

    private Errors errors(double[] numbers, WanderKind kind) {
        boolean wanders = kind != WanderKind.NONE;
        int last = wanders ? 3 : 1;
        return new Errors(
                kind,
                wanders ? Math.exp(numbers[1]) : 0,
                wanders ? Math.exp(numbers[2]) : 1,
                numbers.length > last ? Math.exp(numbers[last]) : 0);
    }

    private void build() {
        turning = samples.count() == 0 ? Turning.NONE : samples.on(line, on.lap(), on.way(), foot);
        posterior = new RoadPosterior(line, new Placed(x, y, on.lap(), foot), turning, rate);
        posterior.weigh(Arrays.stream(atNodes(roughness)).map(r -> 1 / r).toArray());
        posterior.straighten(atNodes(straight));
    }

    /** Values at even steps along the line, by its nodes. */
    private double[] atNodes(double[] values) {
        double[] nodes = new double[line.count()];
        for (int i = 0; i < nodes.length; i++) {
            nodes[i] = values[(int) ((i + 0.5) * values.length / nodes.length)];
        }
        return nodes;
    }

    private void move(Solution to) {
        double before = line.length();
        double[] offset = to.offset().clone();
        double farthest = Arrays.stream(offset).map(Math::abs).max().orElse(0);
        for (int i = 0; i < offset.length; i++) {
            offset[i] *= Math.min(1, LONGEST_MOVE / farthest);
        }
        line = line.moved(offset);
        if (!(line.length() < LOST * longest)) {
            throw new InvalidValueException(
                    "survey",
                    "no road was found along the points",
                    "look whether the points are in order, or smooth by hand, as in --smoothing 100");
        }
        double[] moved = new double[foot.length];
        for (int i = 0; i < foot.length; i++) {
            moved[i] = line.foot(x[i], y[i], foot[i] * line.length() / before, reach);
        }
        foot = moved;
        build();
    }

    private void chooseWave(double low, double high) {
        double least = Double.POSITIVE_INFINITY;
        double found = low;
        for (int i = 0; i <= 24; i++) {
            double log = low + (high - low) * i / 24;
            double score = score(numbers(log), WanderKind.NONE);
            if (score < least) {
                least = score;
                found = log;
            }
        }
        use(numbers(found), WanderKind.NONE);
    }

    /** Takes these numbers, and the line that they give. */
    private void use(double[] numbers, WanderKind kind) {
        wave = Math.exp(numbers[0]);
        errors = errors(numbers, kind);
        move(posterior.solve(posterior.strength(wave), errors));
        solution = posterior.solve(posterior.strength(wave), errors);
    }

    /**
     * −2 log of the restricted likelihood, with what is known beforehand of roads and surveys.
     *
     * @param numbers logarithms of the wave (m), where there is a wander of its ratio and length (m), and where there are
     *     accelerations of their precision (s⁴)
     */
    private double score(double[] numbers, WanderKind kind) {
        if (!(numbers[0] >= lowest && numbers[0] < HIGHEST)) {
            return REFUSED;
        }
        if (kind != WanderKind.NONE) {
            double longest = kind == WanderKind.SMOOTHED ? LONGEST_SMOOTHED * line.step() : LONGEST_WANDER;
            double length = Math.exp(numbers[2]);
            if (Math.abs(numbers[1]) > 16 || !(length >= 1 && length <= longest)) {
                return REFUSED;
            }
        }
        Errors tried = errors(numbers, kind);
        double strength = posterior.strength(Math.exp(numbers[0]));
        Solution here = posterior.solve(strength, tried);
        if (tried.precision() > 0
                && !(here.accelerationDeviation() > LEAST_ACCELERATION_ERROR
                        && here.accelerationDeviation() < MOST_ACCELERATION_ERROR)) {
            return REFUSED;
        }
        double density = here.variance() / strength / Math.pow(rootMeanSquare, 7);
        double unusual = (Math.log10(density) - USUAL_ROUGHNESS) / ROUGHNESS_SPREAD;
        double wandered = here.variance() * tried.ratio() / (LARGE_WANDER * LARGE_WANDER);
        double stated = accuracy.isPresent()
                ? Math.log(here.variance() * (1 + tried.ratio()) / (accuracy.getAsDouble() * accuracy.getAsDouble()))
                        / (2 * ACCURACY_SPREAD)
                : 0;
        double score = here.criterion() + unusual * unusual + wandered * wandered + stated * stated;
        return Double.isFinite(score) ? score : REFUSED;
    }

    /** Looks for a wander; if one is clearly likelier than none, takes it. */
    private boolean wanders(double deviation) {
        double none = score(numbers(Math.log(wave)), WanderKind.NONE);
        double sampled = errors.precision() > 0 ? deviation / Math.sqrt(errors.precision()) : 0;
        double squares = Arrays.stream(
                        posterior.solve(posterior.strength(scale), Errors.OWN).residuals())
                .map(r -> r * r)
                .sum();
        double whole = Math.sqrt(squares / posterior.points());
        double density = Math.pow(10, USUAL_ROUGHNESS) * Math.pow(rootMeanSquare, 7);
        double least = Double.POSITIVE_INFINITY;
        double[] best = null;
        WanderKind kind = WanderKind.NONE;
        for (WanderKind tried : new WanderKind[] {WanderKind.ROUGH, WanderKind.SMOOTH, WanderKind.SMOOTHED}) {
            for (double own : new double[] {deviation, deviation / 3, whole / 30}) {
                double start = Math.max(lowest, Math.log(posterior.wave(own * own / density)));
                for (double size : new double[] {whole, whole / 3}) {
                    for (double length : new double[] {5, 15, 60}) {
                        double[] from = sampled > 0
                                ? new double[] {
                                    start, 2 * Math.log(size / own), Math.log(length), 2 * Math.log(own / sampled)
                                }
                                : new double[] {start, 2 * Math.log(size / own), Math.log(length)};
                        double score = score(from, tried);
                        if (score < least) {
                            least = score;
                            best = from;
                            kind = tried;
                        }
                    }
                }
            }
        }
        if (best == null) {
            return false;
        }
        Search search = new Search(kind);
        best = search.from(best, 0.4, 120);
        if (!(search.least < none - CLEARLY)) {
            return false;
        }
        roughness = new double[] {1};
        use(best, kind);
        use(best, kind);
        best = new Search(kind).from(best, 0.3, 80);
        use(best, kind);
        return true;
    }

    /** Nelder and Mead's search for the likeliest numbers. */
    private final class Search {
        private final WanderKind kind;
        private double least = Double.POSITIVE_INFINITY;
        private double[] best;

        Search(WanderKind kind) {
            this.kind = kind;
        }

        private double scored(double[] numbers) {
            double score = score(numbers, kind);
            if (score < least) {
                least = score;
                best = numbers.clone();
            }
            return score;
        }

        double[] from(double[] start, double size, int evaluations) {
            scored(start);
            try {
                new SimplexOptimizer(1e-9, 0.02)
                        .optimize(
                                new MaxEval(evaluations),
                                new ObjectiveFunction(this::scored),
                                GoalType.MINIMIZE,
                                new InitialGuess(start),
                                new NelderMeadSimplex(start.length, size));
            } catch (TooManyEvaluationsException e) {
                // The best so far is near enough.
                return best;
            }
            return best;
        }
    }

    /**
     * Lets the road be as rough at each place as it is found to be about there: its variance becomes the expected square of the
     * roughness, averaged over the length of a corner.
     */
    private void adapt(int rounds) {
        double before = Double.POSITIVE_INFINITY;
        for (int round = 0; round < rounds; round++) {
            double[] about = averaged(solution.roughness(), 1 / rate);
            double mean = Arrays.stream(about).average().orElse(1);
            roughness = Arrays.stream(about)
                    .map(r -> Math.max(LEAST_ROUGHNESS, r / mean))
                    .toArray();
            build();
            double[] now = numbers();
            double[] best = now;
            double least = Double.POSITIVE_INFINITY;
            for (int k = -3; k <= 3; k++) {
                double[] tried = now.clone();
                tried[0] += 0.04 * k;
                double score = score(tried, errors.kind());
                if (score < least) {
                    least = score;
                    best = tried;
                }
            }
            for (int k = -3; k <= 3 && errors.precision() > 0; k++) {
                double[] tried = best.clone();
                tried[tried.length - 1] += 0.1 * k;
                double score = score(tried, errors.kind());
                if (score < least) {
                    least = score;
                    best = tried;
                }
            }
            wave = Math.exp(best[0]);
            errors = errors(best, errors.kind());
            solution = posterior.solve(posterior.strength(wave), errors);
            if (before - least < 1) {
                return;
            }
            before = least;
        }
    }

    private double[] averaged(double[] values, double over) {
        int n = values.length;
        double spread = over / line.step();
        int far = (int) Math.min(n, Math.ceil(3 * spread));
        double[] means = new double[n];
        for (int i = 0; i < n; i++) {
            double sum = 0;
            double norm = 0;
            for (int k = -far; k <= far; k++) {
                if (line.closed() || (i + k >= 0 && i + k < n)) {
                    double value = values[Math.floorMod(i + k, n)];
                    double g = Double.isNaN(value) ? 0 : Math.exp(-0.5 * k * k / (spread * spread));
                    sum += g == 0 ? 0 : g * value;
                    norm += g;
                }
            }
            means[i] = norm > 0 ? sum / norm : 1;
        }
        return means;
    }

    /** Takes the road smoother, with the wave that the points chose longer by a factor, or rougher with one below 1. */
    void stretch(double factor) {
        plain = null;
        wave = chosen * factor;
        for (int i = 0; i < STRETCH_STEPS; i++) {
            move(posterior.solve(strength(), errors));
        }
        solution = posterior.solve(strength(), errors);
    }

    /** The road of plain parts; null where the smooth one was kept. */
    PlainCorners plain() {
        return plain;
    }

    /** The road's centre line. */
    ReferenceLine line() {
        return line;
    }

    /** Where each point stands beside the line, m from its start. */
    double[] feet() {
        return foot.clone();
    }

    /** Length of waves that evenly spaced points lose half the height of, m. */
    double wave() {
        return wave;
    }

    /** Standard deviation of the points' own errors across the line, m. */
    double deviation() {
        return Math.sqrt(solution.variance());
    }

    /** Standard deviation of the errors that neighbouring points have in common, m; 0 if there are none. */
    double wanderDeviation() {
        return Math.sqrt(solution.variance() * errors.ratio());
    }

    /** Length over which such errors are correlated, m. */
    double wanderLength() {
        return errors.length();
    }

    /**
     * The account of the accelerations logged with the points.
     *
     * @param agreement correlation with those of the line that positions alone give
     * @param mirrored whether they counted right turns as positive
     * @param used samples, without knocks
     * @param deviation of their own errors, m/s²
     * @param bias constant that the logger adds, m/s²
     * @param scale share by which it reads too much
     */
    record Logged(double agreement, boolean mirrored, int used, double deviation, double bias, double scale) {}

    /** What was found out about the logger; null without samples. */
    Logged logged() {
        return Double.isNaN(agreement)
                ? null
                : new Logged(
                        agreement,
                        mirrored,
                        samples.count(),
                        solution.accelerationDeviation(),
                        solution.bias(),
                        solution.scale());
    }

    /** Standard deviation of the curvature at the line's nodes, for a road as rough as it was found, 1/m. */
    double[] curvatureDeviation() {
        if (plain != null) {
            return plainDoubt.deviation(line.count());
        }
        return solution.curvatureDeviation();
    }

    /**
     * Changes of the nodes' curvature that make another road of those the points allow, 1/m. How rough it is is drawn first: about each
     * place the road has shown that but once.
     */
    double[] drawn(Random random) {
        if (plain != null) {
            return plainDoubt.drawn(random, line.count());
        }
        if (chosen == 0) {
            return solution.drawn(random, solution);
        }
        double[] weight = atNodes(roughness);
        int stretch = (int) Math.max(1, SHOWN_ONCE / line.step());
        double shown = 1;
        for (int i = 0; i < weight.length; i++) {
            shown = i % stretch == 0 ? Math.max(LEAST_SHOWN, Math.pow(random.nextGaussian(), 2)) : shown;
            weight[i] = shown / weight[i];
        }
        posterior.weigh(weight);
        return posterior.solve(strength(), errors).drawn(random, solution);
    }
}
