package dev.lapwright.track.survey;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.numerics.ArcLengthCurve;
import dev.lapwright.numerics.CubicSpline;
import dev.lapwright.numerics.SplineKnots;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The import of surveyed points as a track. The points are smoothed by a cubic smoothing spline in each coordinate, along the chords at
 * first and then along the arc length of the line found; altitudes are smoothed on their own, over that arc length.
 */
public final class SurveyImport {
    /** The chords between noisy points are too long; each pass along the smoothed line mends what is left of that. */
    private static final int PASSES = 3;
    /** Distance between the stations to begin with, m; halved until the stations meet their start. */
    private static final double SPACING = 2.5;

    private static final double LEAST_SPACING = 0.3;
    /** Half the length over which points are averaged to tell how far apart they stand, m. */
    private static final double MEANS_WITHIN = 4;

    private static final double LEAST_CHORD = 0.1;
    private static final double CLOSURE = 0.2;
    /** What may be called a corner of a circuit; less is a fault of the data. */
    private static final double LEAST_RADIUS = 5;

    private final String name;
    private final ImportChoices choices;
    private final List<String> warnings;
    private final List<SurveyPoint> points;
    private final Survey survey;

    private SurveyImport(String name, Survey survey, ImportChoices choices) {
        this.name = name;
        this.survey = survey;
        this.choices = choices;
        SurveyPreparation preparation = new SurveyPreparation(choices);
        points = preparation.prepare(survey);
        warnings = preparation.warnings();
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
        double[] x = points.stream().mapToDouble(SurveyPoint::x).toArray();
        double[] y = points.stream().mapToDouble(SurveyPoint::y).toArray();
        SplineKnots knots = chordKnots();
        // The last pass alone needs the best strength; the ones before only tell it where to look.
        double wavelength = choices.smoothing().isPresent()
                ? choices.smoothing().getAsDouble()
                : CrossValidation.rough(knots, x, y);
        CrossValidation.Result plan = CrossValidation.byHand(knots, wavelength, x, y);
        ArcLengthCurve curve =
                new ArcLengthCurve(knots, plan.splines().get(0), plan.splines().get(1));
        for (int pass = 1; pass < PASSES; pass++) {
            knots = arcKnots(curve);
            plan = pass < PASSES - 1 || choices.smoothing().isPresent()
                    ? CrossValidation.byHand(knots, wavelength, x, y)
                    : CrossValidation.near(knots, wavelength, x, y);
            curve = new ArcLengthCurve(
                    knots, plan.splines().get(0), plan.splines().get(1));
        }
        SplineKnots flat = arcKnots(curve);
        double[] z = points.stream()
                .mapToDouble(p -> survey.hasElevation() ? p.z() : 0)
                .toArray();
        CrossValidation.Result elevation = survey.hasElevation()
                ? smooth(flat, choices.elevationSmoothing(), z)
                : CrossValidation.byHand(flat, 0, z);

        StationSampler sampler = new StationSampler(
                curve, flat, elevation.splines().get(0), points, survey.hasWidths(), choices.width() / 2);
        StationSampler.Sampled sampled = sampled(sampler);
        int crossings = checkShape(sampled);
        double start = sampled.heading()[0];
        Track track = sampled.track()
                .laidOut(
                        start,
                        survey.hasElevation() ? elevation.splines().get(0).valueAtKnot(0) : 0);
        warnings.addAll(UnitPlausibility.ofSurvey(survey, sampled.steepest()));
        int tightest = sampled.tightest();
        double curvature = Math.abs(sampled.planCurvature()[tightest]);
        if (curvature * LEAST_RADIUS > 1) {
            warnings.add("the smoothed line is as tight as " + Check.text(Math.rint(10 / curvature) / 10)
                    + " m in radius at " + Math.round(sampled.s()[tightest])
                    + " m; smooth more if no such corner is there");
        }
        int moved = 0;
        double move = 0;
        for (int i = 0; i < x.length; i++) {
            double here = Math.hypot(
                    plan.splines().get(0).valueAtKnot(i) - x[i],
                    plan.splines().get(1).valueAtKnot(i) - y[i]);
            if (here > move) {
                move = here;
                moved = i;
            }
        }
        double noise = noiseAcross(plan, knots, x, y);
        return new ImportedTrack(
                track,
                new ImportReport(
                        survey.points().size(),
                        points.size(),
                        plan.wavelength(),
                        choices.smoothing().isEmpty(),
                        noise,
                        curvatureUncertainty(noise, plan.wavelength(), knots),
                        move,
                        flat.place(moved),
                        1 / curvature,
                        sampled.s()[tightest],
                        sampled.turning(),
                        crossings,
                        track.length(),
                        sampled.climb(),
                        survey.hasElevation() ? elevationReport(elevation, z, sampled) : null,
                        null,
                        warnings));
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
     * Errors along the line shift the places at which the points are taken to lie, and so leave no trace; those across it
     * tell the noise.
     */
    private static double noiseAcross(CrossValidation.Result plan, SplineKnots knots, double[] x, double[] y) {
        CubicSpline smoothX = plan.splines().get(0);
        CubicSpline smoothY = plan.splines().get(1);
        double squares = 0;
        for (int i = 0; i < knots.intervals(); i++) {
            double dx = smoothX.slope(i, 0);
            double dy = smoothY.slope(i, 0);
            double across =
                    (dx * (y[i] - smoothY.valueAtKnot(i)) - dy * (x[i] - smoothX.valueAtKnot(i))) / Math.hypot(dx, dy);
            squares += across * across;
        }
        return CrossValidation.deviation(squares, plan.left(), knots.count());
    }

    /**
     * White errors of deviation σ every h metres, passed by 1 / (1 + (ω/ω₀)⁴), leave in the second derivative a variance of
     * σ² h/(2π) ∫ω⁴ / (1 + (ω/ω₀)⁴)² dω = σ² h ω₀⁵ √2/16.
     */
    private static double curvatureUncertainty(double noise, double wavelength, SplineKnots knots) {
        double omega = 2 * Math.PI / wavelength;
        return noise * Math.sqrt(knots.meanStep() * Math.pow(omega, 5) * Math.sqrt(2) / 16);
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
            centres.add(centre(i, choices.closed() ? reach : Math.min(reach, Math.min(i, n - 1 - i))));
        }
        double[] t = new double[n];
        for (int i = 1; i < n; i++) {
            t[i] = t[i - 1] + Math.max(LEAST_CHORD * mean, centres.get(i - 1).distanceTo(centres.get(i)));
        }
        double last = Math.max(LEAST_CHORD * mean, centres.get(n - 1).distanceTo(centres.get(0)));
        return new SplineKnots(t, choices.closed() ? t[n - 1] + last : Double.NaN);
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
                        "smooth more than " + (choices.smoothing().isPresent() ? "this" : "the data ask for"));
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
                    "keep the points of one lap, or say that the line is meant to cross itself");
        }
        if (!crossings.isEmpty() && !choices.crossesItself()) {
            List<String> places = new ArrayList<>();
            for (int i : crossings.subList(0, Math.min(3, crossings.size()))) {
                places.add(Math.round(sampled.s()[i]) + " m");
            }
            warnings.add("the line crosses itself " + (crossings.size() == 1 ? "once" : crossings.size() + " times")
                    + ", at " + String.join(", ", places) + (crossings.size() > 3 ? " and further on" : "")
                    + ", and is not said to be a figure of eight");
        }
        return crossings.size();
    }
}
