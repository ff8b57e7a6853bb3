package dev.lapwright.track.survey;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.numerics.ArcLengthCurve;
import dev.lapwright.numerics.SplineKnots;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;

/**
 * The import of surveyed points as a track. The plan is the road most probable from the points ({@link RoadPosterior}), or the
 * cubic spline through all of them; altitudes are smoothed on their own by a cubic smoothing spline over its length.
 */
public final class SurveyImport {
    /** The chords between points are too short; each pass along the line found mends what is left of that. */
    private static final int PASSES = 3;
    /** Distance between the stations to begin with, m; halved until the stations meet their start. */
    private static final double SPACING = 2.5;

    private static final double LEAST_SPACING = 0.3;
    /** Half the length over which points are averaged to tell how far apart they stand, m. */
    private static final double MEANS_WITHIN = 4;

    private static final double LEAST_CHORD = 0.1;
    private static final double CLOSURE = 0.2;
    /** Share of a fast car's weight that crests of circuits take off at most. Common practice, no source. */
    private static final double LIGHTEST = 0.7;

    private static final double LONGER = 1.25;
    /** What a fast car does: on straights, m/s, and in bends, m/s². Common practice, no source. */
    private static final double FASTEST = 60;

    private static final double HARDEST = 15;
    private static final double STANDARD_GRAVITY = 9.80665;
    /** A bend with entry, middle and exit, and the straights beside it: common practice, no source. */
    private static final int POINTS_OF_A_CORNER = 5;

    /** What may be called a corner of a circuit; less is a fault of the data. */
    private static final double LEAST_RADIUS = 5;
    /** Tracks drawn from all those that the points allow. */
    static final int DRAWS = 20;
    /**
     * By how much more lap times err than those of the draws spread, where accelerations speak: bends come out some percent too tight all
     * round the lap. Found on circuits drawn at random.
     */
    private static final double WIDENED = 2.7;

    /** Steps of smoothing in which the corners told are looked for: up to three times the wave that the points ask for. */
    private static final double STRETCH = 1.1;

    private static final int MOST_STRETCHES = 12;
    /** No logger's scale is that wrong; units are. */
    private static final double ODD_SCALE = 0.2;

    private final String name;
    private final ImportChoices choices;
    private final List<String> warnings;
    private final List<SurveyPoint> points;
    private final Survey survey;
    /** Points of all laps that are pooled, lap by lap. */
    private final List<SurveyPoint> pooled;

    private final int[] lapOf;
    private final LoggedSamples samples;
    private final int laps;

    /**
     * The plan of the line.
     *
     * @param curve by its arc length
     * @param places of the points along it
     * @param points in the order of their places
     * @param fit that gave it, or null for the spline through the points
     * @param start where it starts on the fit's line, m
     */
    private record Plan(
            ArcLengthCurve curve, SplineKnots places, List<SurveyPoint> points, RoadFit fit, double start) {}

    private SurveyImport(String name, Survey survey, ImportChoices choices) {
        this.name = name;
        this.survey = survey;
        this.choices = choices;
        SurveyPreparation preparation = new SurveyPreparation(choices);
        points = preparation.prepare(survey);
        warnings = preparation.warnings();
        PooledLaps all = new PooledLaps(survey, points, choices);
        pooled = all.points();
        lapOf = all.lapOf();
        laps = all.laps();
        samples = all.samples();
    }

    /**
     * Makes a track.
     *
     * @param name for people
     * @throws InvalidValueException if the points are too few, lie on one spot, are open but to be closed, go round more than
     *     once, or bend or climb as no road does
     */
    public static ImportedTrack of(String name, Survey survey, ImportChoices choices) {
        return new SurveyImport(name, survey, choices).imported();
    }

    private ImportedTrack imported() {
        boolean exact = choices.smoothing().isPresent() && choices.smoothing().getAsDouble() == 0;
        Plan plan = exact ? through() : road();
        double[] z = plan.points().stream()
                .mapToDouble(p -> survey.hasElevation() ? p.z() : 0)
                .toArray();
        CrossValidation.Result elevation =
                survey.hasElevation() ? elevation(plan, z) : CrossValidation.byHand(plan.places(), 0, z);
        StationSampler sampler = new StationSampler(
                plan.curve(),
                plan.places(),
                elevation.splines().get(0),
                plan.points(),
                survey.hasWidths(),
                choices.width() / 2);
        StationSampler.Sampled sampled = sampled(sampler);
        int crossings = checkShape(sampled);
        Track track = sampled.track()
                .laidOut(
                        sampled.heading()[0],
                        survey.hasElevation() ? elevation.splines().get(0).valueAtKnot(0) : 0);
        warnings.addAll(UnitPlausibility.ofSurvey(survey, sampled.steepest()));
        int tightest = sampled.tightest();
        double curvature = Math.abs(sampled.planCurvature()[tightest]);
        if (curvature * LEAST_RADIUS > 1) {
            warnings.add("the smoothed line is as tight as " + Check.text(Math.rint(10 / curvature) / 10)
                    + " m in radius at " + Math.round(sampled.s()[tightest])
                    + " m, tighter than most cars can steer; if no such corner is there, say how far the points err, as in"
                    + " --accuracy-m 1, or smooth more, as in --smoothing 60");
        }
        warnOfCorners(track);
        ImportReport.ShapeReport shape = new ImportReport.ShapeReport(
                1 / curvature, sampled.s()[tightest], sampled.turning(), crossings, track.length(), sampled.climb());
        CurvatureBand band = plan.fit() == null ? null : band(plan, track);
        return new ImportedTrack(
                band == null ? track : band.addTo(track),
                new ImportReport(
                        survey.points().size()
                                + survey.otherLaps().stream()
                                        .mapToInt(List::size)
                                        .sum(),
                        plan.fit() == null ? points.size() : pooled.size(),
                        plan.fit() == null ? unsmoothed() : smoothing(plan.fit()),
                        shape,
                        survey.hasElevation() ? elevationReport(elevation, z, sampled) : null,
                        null,
                        plan.fit() == null ? null : motion(plan.fit()),
                        plan.fit() == null ? 1 : laps,
                        warnings),
                band);
    }

    /** What was found out about the logger, with what is odd about it; null where none spoke. */
    private ImportReport.MotionReport motion(RoadFit fit) {
        RoadFit.Logged logged = fit.logged();
        if (logged == null) {
            return null;
        }
        if (logged.agreement() < RoadFit.LEAST_AGREEMENT) {
            warnings.add("the lateral acceleration does not go with the positions (correlation "
                    + Check.text(Math.rint(100 * logged.agreement()) / 100)
                    + ") and was left aside; --log takes it alone");
            return null;
        }
        if (logged.mirrored()) {
            warnings.add("the log counts a right turn's lateral acceleration as positive, as the positions show; it was"
                    + " taken so");
        }
        if (Math.abs(logged.scale()) > ODD_SCALE) {
            warnings.add("the lateral acceleration is " + Check.text(Math.rint(100 * (1 + logged.scale())) / 100)
                    + " times what speed and positions give; check the units of speed and acceleration");
        }
        return new ImportReport.MotionReport(
                samples.count(), logged.used(), logged.deviation(), logged.bias(), logged.scale());
    }

    /** Says where the line has more corners than so few points can tell apart. */
    private void warnOfCorners(Track track) {
        int corners = track.stations(StationSpacing.DEFAULT).corners().size();
        if (corners * POINTS_OF_A_CORNER > points.size()) {
            warnings.add(corners + " corners from " + points.size() + " points are fewer than " + POINTS_OF_A_CORNER
                    + " points for each: their shape between the points is a guess; give points every 5 to 20 m in bends, or"
                    + " smooth more, as in --smoothing 100");
        }
    }

    /**
     * Altitudes as smooth as the data ask for, and smoother where that makes crests over which cars would fly: heights of a
     * receiver wander, which cross-validation takes for road.
     */
    private CrossValidation.Result elevation(Plan plan, double[] z) {
        CrossValidation.Result found = smooth(plan.places(), choices.elevationSmoothing(), z);
        double chosen = found.wavelength();
        double longest = Math.max(chosen, plan.places().span() / 2);
        double sharpest = sharpest(plan, found);
        for (double wave = Math.max(chosen, 2 * plan.places().meanStep());
                choices.elevationSmoothing().isEmpty() && sharpest(plan, found) > LIGHTEST && wave < longest; ) {
            wave = Math.min(longest, wave * LONGER);
            found = CrossValidation.byHand(plan.places(), wave, z);
        }
        if (found.wavelength() != chosen) {
            warnings.add("the altitudes are smoothed to waves of " + Math.round(found.wavelength()) + " m instead of "
                    + Math.round(chosen) + " m, which would change a car's weight by up to "
                    + Check.text(Math.rint(10 * sharpest) / 10)
                    + " times itself over crests and dips: their errors wander; --elevation-smoothing sets it by hand, and"
                    + " --elevation takes altitudes from a better source");
        }
        return found;
    }

    /** Greatest v² |d²z/ds²| over g at the points, with speeds that a fast car may have there. */
    private static double sharpest(Plan plan, CrossValidation.Result elevation) {
        double most = 0;
        for (int i = 0; i < plan.places().intervals(); i++) {
            double bend = Math.abs(plan.curve().at(plan.places().place(i)).curvature());
            double square = Math.min(FASTEST * FASTEST, HARDEST / Math.max(bend, 1e-6));
            most = Math.max(
                    most, square * Math.abs(elevation.splines().get(0).secondDerivative(i, 0)) / STANDARD_GRAVITY);
        }
        return most;
    }

    /** The spline through all points. */
    private Plan through() {
        double[] x = points.stream().mapToDouble(SurveyPoint::x).toArray();
        double[] y = points.stream().mapToDouble(SurveyPoint::y).toArray();
        SplineKnots knots = chordKnots();
        ArcLengthCurve curve = null;
        for (int pass = 0; pass < PASSES; pass++) {
            knots = pass == 0 ? knots : arcKnots(curve);
            SplineKnots.Fit fit = knots.fit(0);
            curve = new ArcLengthCurve(knots, fit.spline(x), fit.spline(y));
        }
        return new Plan(curve, arcKnots(curve), points, null, 0);
    }

    /** The road most probable from the points, from a line of long waves near them. */
    private Plan road() {
        double[] x = points.stream().mapToDouble(SurveyPoint::x).toArray();
        double[] y = points.stream().mapToDouble(SurveyPoint::y).toArray();
        SplineKnots knots = chordKnots();
        double wave = Math.max(Math.max(12, Math.min(40, knots.span() / 80)), 4 * knots.meanStep());
        SplineKnots.Fit waves = knots.fit(knots.strengthOf(wave));
        ArcLengthCurve first = new ArcLengthCurve(knots, waves.spline(x), waves.spline(y));
        for (int pass = 1; pass < PASSES; pass++) {
            knots = arcKnots(first);
            waves = knots.fit(knots.strengthOf(wave));
            first = new ArcLengthCurve(knots, waves.spline(x), waves.spline(y));
        }
        RoadFit.Points on = new RoadFit.Points(
                pooled.stream().mapToDouble(SurveyPoint::x).toArray(),
                pooled.stream().mapToDouble(SurveyPoint::y).toArray(),
                lapOf,
                pooled.stream()
                        .mapToDouble(p -> p.motion() == null ? 0 : p.motion().way())
                        .toArray(),
                choices.closed(),
                samples);
        RoadFit fit = choices.smoothing().isPresent()
                ? RoadFit.byHand(on, first, choices.smoothing().getAsDouble())
                : RoadFit.chosen(on, first, choices.accuracy());
        if (choices.corners().isPresent()) {
            countCorners(fit, choices.corners().getAsInt());
        }
        double[] feet = fit.feet();
        double start = choices.closed()
                ? Arrays.stream(feet).filter(s -> s >= 0).findFirst().orElse(0)
                : 0;
        ReferenceLine line = start == 0 ? fit.line() : fit.line().startingAt(start);
        return placed(fit, line, feet, start);
    }

    /** Takes the road as much smoother or rougher as gives it the corners that a driver counts. */
    private void countCorners(RoadFit fit, int wanted) {
        int found = corners(fit.line());
        if (found == wanted) {
            return;
        }
        if (choices.smoothing().isEmpty()) {
            for (int k = 1; k <= MOST_STRETCHES; k++) {
                double factor = Math.pow(STRETCH, found > wanted ? k : -k);
                fit.stretch(factor);
                if (corners(fit.line()) == wanted) {
                    warnings.add("smoothed by waves " + Check.text(Math.rint(100 * factor) / 100)
                            + " times as long as the points ask for, to have the " + wanted
                            + " corners told instead of "
                            + found);
                    return;
                }
            }
            fit.stretch(1);
        }
        warnings.add(found + " corners are found where " + wanted
                + " are told, and no smoothing near that which the points ask"
                + " for gives them; look at the places in doubt ('circuit show'), and set them by 'circuit edit'");
    }

    private static int corners(ReferenceLine line) {
        List<TrackPoint> nodes = new ArrayList<>();
        for (int i = 0; i < line.count(); i++) {
            nodes.add(TrackPoint.flat(i * line.step(), Math.max(-0.5, Math.min(0.5, line.curvature(i)))));
        }
        if (line.closed()) {
            nodes.add(TrackPoint.flat(line.length(), nodes.get(0).curvature()));
        }
        Track track = line.closed() ? Track.closed("nodes", nodes) : Track.open("nodes", 0, nodes);
        return track.stations(StationSpacing.DEFAULT).corners().size();
    }

    /** The points in the order in which they stand along the line, those nearly on the place of another left out. */
    private Plan placed(RoadFit fit, ReferenceLine line, double[] feet, double start) {
        ArcLengthCurve curve = line.curve();
        double length = curve.length();
        double apart = LEAST_CHORD * length / feet.length;
        List<Integer> order = new ArrayList<>();
        double[] along = new double[feet.length];
        for (int i = 0; i < feet.length; i++) {
            double s = feet[i] - start;
            along[i] = s < 0 ? s + length : s;
            order.add(i);
        }
        order.sort(Comparator.comparingDouble(i -> along[i]));
        List<SurveyPoint> stood = new ArrayList<>();
        List<Double> places = new ArrayList<>();
        for (int i : order) {
            double last = places.isEmpty() ? Double.NEGATIVE_INFINITY : places.get(places.size() - 1);
            if (along[i] - last > apart && (!choices.closed() || along[i] < length - apart)) {
                places.add(places.isEmpty() ? 0 : along[i]);
                stood.add(pooled.get(i));
            }
        }
        double[] t = places.stream().mapToDouble(Double::doubleValue).toArray();
        return new Plan(curve, new SplineKnots(t, choices.closed() ? length : Double.NaN), stood, fit, start);
    }

    private static ImportReport.SmoothingReport unsmoothed() {
        return new ImportReport.SmoothingReport(0, false, Double.NaN, 0, Double.NaN, Double.NaN, 0, 0);
    }

    private ImportReport.SmoothingReport smoothing(RoadFit fit) {
        double[] feet = fit.feet();
        double move = 0;
        double at = 0;
        for (int i = 0; i < feet.length; i++) {
            SurveyPoint p = pooled.get(i);
            double beside = Math.abs(fit.line().beside(p.x(), p.y(), feet[i]));
            if (beside > move) {
                move = beside;
                at = feet[i];
            }
        }
        double squares = Arrays.stream(fit.curvatureDeviation())
                .map(d -> d * d)
                .average()
                .orElse(Double.NaN);
        boolean wanders = fit.wanderDeviation() > 0;
        return new ImportReport.SmoothingReport(
                fit.wave(),
                choices.smoothing().isEmpty(),
                fit.deviation(),
                fit.wanderDeviation(),
                wanders ? fit.wanderLength() : Double.NaN,
                Math.sqrt(squares),
                move,
                at);
    }

    private CurvatureBand band(Plan plan, Track track) {
        int count = track.points().size();
        double[] deviation = fromNodes(plan, plan.fit().curvatureDeviation(), count);
        List<double[]> draws = new ArrayList<>();
        for (int k = 0; k < DRAWS; k++) {
            draws.add(fromNodes(plan, plan.fit().drawn(new Random(k)), count));
        }
        return new CurvatureBand(track, deviation, draws, samples.count() > 0 ? WIDENED : 1);
    }

    /** Values at the nodes of the fit's line taken to the stations, which stand evenly on the plan. */
    private double[] fromNodes(Plan plan, double[] values, int count) {
        ReferenceLine line = plan.fit().line();
        double[] taken = new double[count];
        for (int i = 0; i < count; i++) {
            double node = (plan.start() + i * line.length() / (count - 1)) / line.step();
            int low = (int) Math.floor(node);
            double share = node - low;
            int n = values.length;
            taken[i] = choices.closed()
                    ? (1 - share) * values[low % n] + share * values[(low + 1) % n]
                    : (1 - share) * values[Math.min(n - 1, low)] + share * values[Math.min(n - 1, low + 1)];
        }
        return taken;
    }

    private ImportReport.ElevationReport elevationReport(
            CrossValidation.Result elevation, double[] z, StationSampler.Sampled sampled) {
        double move = 0;
        for (int i = 0; i < z.length; i++) {
            move = Math.max(move, Math.abs(elevation.splines().get(0).valueAtKnot(i) - z[i]));
        }
        return new ImportReport.ElevationReport(
                elevation.wavelength(),
                choices.elevationSmoothing().isEmpty(),
                elevation.noise(),
                move,
                sampled.steepest());
    }

    private static CrossValidation.Result smooth(SplineKnots knots, OptionalDouble byHand, double[]... values) {
        return byHand.isPresent()
                ? CrossValidation.byHand(knots, byHand.getAsDouble(), values)
                : CrossValidation.best(knots, values);
    }

    /**
     * Where points stand closer than their errors, the chords between them are mostly error. They are then taken between
     * the means of all points within a few metres either way.
     */
    private SplineKnots chordKnots() {
        int n = points.size();
        int intervals = choices.closed() ? n : n - 1;
        double sum = 0;
        for (int i = 0; i < intervals; i++) {
            sum += points.get(i).distanceTo(points.get((i + 1) % n));
        }
        double mean = sum / intervals;
        int reach = (int) Math.min(n / 8, MEANS_WITHIN / mean);
        List<SurveyPoint> centres = new ArrayList<>(n);
        for (int i = 0; i < n; i++) {
            centres.add(centre(i, reachWithoutGap(i, reach, Math.max(2 * MEANS_WITHIN, 3 * mean))));
        }
        double[] t = new double[n];
        for (int i = 1; i < n; i++) {
            t[i] = t[i - 1] + Math.max(LEAST_CHORD * mean, centres.get(i - 1).distanceTo(centres.get(i)));
        }
        double last = Math.max(LEAST_CHORD * mean, centres.get(n - 1).distanceTo(centres.get(0)));
        return new SplineKnots(t, choices.closed() ? t[n - 1] + last : Double.NaN);
    }

    /** How many points either way have no gap between them. */
    private int reachWithoutGap(int index, int reach, double gap) {
        int n = points.size();
        for (int k = 0; k < reach; k++) {
            boolean inside = choices.closed() || (index - k > 0 && index + k < n - 1);
            if (!inside
                    || points.get((index + k + n) % n).distanceTo(points.get((index + k + 1) % n)) > gap
                    || points.get((index - k + n) % n).distanceTo(points.get((index - k - 1 + n) % n)) > gap) {
                return k;
            }
        }
        return reach;
    }

    private SurveyPoint centre(int index, int reach) {
        int n = points.size();
        double x = 0;
        double y = 0;
        for (int k = -reach; k <= reach; k++) {
            SurveyPoint p = points.get((index + k + n) % n);
            x += p.x();
            y += p.y();
        }
        return SurveyPoint.plan(x / (2 * reach + 1), y / (2 * reach + 1));
    }

    private SplineKnots arcKnots(ArcLengthCurve curve) {
        return new SplineKnots(curve.knotArcs(), choices.closed() ? curve.length() : Double.NaN);
    }

    /** Stations close enough together that the track, laid out from them, ends where it starts. */
    private StationSampler.Sampled sampled(StationSampler sampler) {
        double spacing = SPACING;
        while (true) {
            StationSampler.Sampled sampled = sampler.sample(name, spacing, choices.closed());
            if (!choices.closed()
                    || sampled.track().stations(StationSpacing.DEFAULT).planeGap() <= CLOSURE) {
                return sampled;
            }
            spacing /= 2;
            if (spacing < LEAST_SPACING) {
                throw new InvalidValueException(
                        "survey",
                        "the line is too rough: laid out from its own curvature it does not meet its start",
                        "smooth more, as in --smoothing "
                                + Math.round(
                                        Math.max(60, 2 * choices.smoothing().orElse(30)))
                                + ", or say how far the points err, as in --accuracy-m 1");
            }
        }
    }

    private int checkShape(StationSampler.Sampled sampled) {
        List<Integer> crossings = Crossings.find(sampled.x(), sampled.y(), choices.closed());
        double rounds = sampled.turning() / (2 * Math.PI);
        if (choices.closed() && !choices.crossesItself() && Math.abs(rounds) > 1.5) {
            throw new InvalidValueException(
                    "survey",
                    "the line goes round " + Math.round(Math.abs(rounds)) + " times: several laps, or a spiral",
                    "keep the points of one lap, or say --figure-of-eight if the line is meant to cross itself");
        }
        if (!crossings.isEmpty() && !choices.crossesItself()) {
            List<String> places = new ArrayList<>();
            for (int i : crossings.subList(0, Math.min(3, crossings.size()))) {
                places.add(Math.round(sampled.s()[i]) + " m");
            }
            warnings.add("the line crosses itself " + (crossings.size() == 1 ? "once" : crossings.size() + " times")
                    + ", at " + String.join(", ", places) + (crossings.size() > 3 ? " and further on" : "")
                    + "; if it is meant to, say --figure-of-eight; if not, look at the points there");
        }
        return crossings.size();
    }
}
