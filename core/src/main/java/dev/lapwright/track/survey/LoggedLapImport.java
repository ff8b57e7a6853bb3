package dev.lapwright.track.survey;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.numerics.CubicSpline;
import dev.lapwright.numerics.SplineKnots;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * The import of a logged lap as a track: κ = a/v², from speed and lateral acceleration over the distance, both smoothed each for itself to
 * begin with. The errors of a sensor of acceleration are as large in slow corners as in fast ones, those of a/v² are not; so it is the
 * acceleration that is smoothed. The path follows from κ, and is closed by {@link LoopClosure}. Unless the smoothing is set by hand, the
 * road most probable from the samples is sought near it ({@link TurningFit}).
 *
 * <p>The line is that of the car, not the middle of the road. Bank, body roll and slip of the car are in its acceleration and
 * are not taken out; the road is flat, and level unless altitudes are given.
 */
public final class LoggedLapImport {
    /** Below it an error of 0.5 m/s² in acceleration is one of 0.02 per metre and more in curvature, m/s. */
    private static final double SLOW = 5;

    /** Longest track, m: as {@link Track} takes. */
    private static final double LONGEST = 200_000;

    private static final double SLOW_SHARE = 0.2;
    private static final double LEAST_STEP = 0.01;
    private static final double STEP = 2.5;
    private static final double SAME_SPEED = 0.25;
    private static final double LARGE_HEADING = Math.toRadians(20);
    private static final double LARGE_GAP = 0.03;
    /** Root mean square of the lap times' errors over the draws' deviations, on circuits drawn at random. */
    private static final double WIDENED = 1;

    private final ImportChoices choices;
    private final List<String> warnings = new ArrayList<>();
    private final int samples;
    private double[] distance;
    private double[] speed;
    private double[] acceleration;

    private final ElevationProfile elevation;

    private LoggedLapImport(LoggedLap lap, ImportChoices choices, ElevationProfile elevation) {
        this.elevation = elevation;
        this.choices = choices;
        distance = lap.distance();
        speed = lap.speed();
        acceleration = lap.lateralAcceleration();
        samples = distance.length;
    }

    /**
     * Makes a track.
     *
     * @param name for people
     * @param choices the smoothing is that of acceleration over distance
     * @throws InvalidValueException if the samples are too few or too slow, or do not come round to where they began
     */
    public static ImportedTrack of(String name, LoggedLap lap, ImportChoices choices) {
        return new LoggedLapImport(lap, choices, null).imported(name);
    }

    /**
     * The same with altitudes from another source.
     *
     * @param elevation by distance along the lap
     */
    public static ImportedTrack of(String name, LoggedLap lap, ImportChoices choices, ElevationProfile elevation) {
        return new LoggedLapImport(lap, choices, elevation).imported(name);
    }

    private ImportedTrack imported(String name) {
        List<String> odd = UnitPlausibility.ofLog(speed, acceleration);
        double slow = dropSlow();
        String hint = String.join("; ", odd);
        if (distance.length < 4 * SurveyPreparation.FEWEST) {
            throw new InvalidValueException(
                    "log",
                    distance.length + " samples faster than " + Check.text(SLOW) + " m/s are too few",
                    hint.isEmpty() ? "give a whole lap, with several samples a second" : hint);
        }
        double extent = distance[distance.length - 1] - distance[0];
        if (!(extent <= LONGEST)) {
            throw new InvalidValueException(
                    "log",
                    "its samples span " + Check.text(Math.rint(extent / 1000)) + " km",
                    "give one lap, and check the unit of the distance, as in --column distance=HEADING:m");
        }
        if (slow > SLOW_SHARE) {
            warnings.add("the car was slower than " + Check.text(SLOW) + " m/s for " + Math.round(100 * slow)
                    + " % of the way, where its curvature cannot be told and was bridged");
        }
        warnings.addAll(odd);
        SplineKnots knots = knots(extent);
        CrossValidation.Result turning = smooth(knots, acceleration);
        CubicSpline smoothSpeed = CrossValidation.best(knots, speed).splines().get(0);
        int steps = Math.max(SurveyPreparation.FEWEST, (int) Math.ceil(knots.span() / STEP));
        double step = knots.span() / steps;
        double[] curvature = new double[steps + 1];
        double inverse = 0;
        int interval = 0;
        for (int i = 0; i <= steps; i++) {
            double s = Math.min(i * step, knots.span());
            while (interval + 1 < knots.intervals() && knots.place(interval + 1) <= s) {
                interval++;
            }
            double ahead = s - knots.place(interval);
            double v = Math.max(SLOW, smoothSpeed.value(interval, ahead));
            curvature[i] = turning.splines().get(0).value(interval, ahead) / (v * v);
            inverse += 1 / (v * v * v * v) / (steps + 1);
        }
        ImportReport.LogReport report =
                new ImportReport.LogReport(samples, samples - distance.length, turning.noise(), 0, 0, 0);
        double[] measured = curvature;
        if (choices.closed()) {
            warnOfEnds();
            LoopClosure closure = new LoopClosure(curvature, step, choices.crossesItself(), hint);
            curvature = closure.curvature();
            report = new ImportReport.LogReport(
                    samples,
                    samples - distance.length,
                    turning.noise(),
                    closure.headingError(),
                    closure.positionGap(),
                    closure.largestChange());
            warnOfClosure(report, knots.span());
        }
        TurningFit fit = choices.smoothing().isPresent()
                ? null
                : fit(knots, smoothSpeed, turning.noise(), measured, curvature, step);
        if (fit != null) {
            curvature = fit.curvature();
            // To the last micrometre: the fit's conditions are linear.
            curvature = choices.closed()
                    ? new LoopClosure(curvature, step, choices.crossesItself(), hint).curvature()
                    : curvature;
        }
        Survey flat = survey(new DeadReckoning(curvature, step));
        Survey survey = elevation == null ? flat : elevation.joined(flat, choices.closed());
        ImportedTrack found = SurveyImport.of(name, survey, choices.withSmoothing(0));
        ImportReport plan = found.report();
        warnings.addAll(plan.warnings());
        CurvatureBand band = fit == null ? null : band(fit, found.track());
        double uncertainty = fit != null
                ? Math.sqrt(
                        Arrays.stream(fit.deviation()).map(d -> d * d).average().orElse(Double.NaN))
                : turning.noise() * Math.sqrt(passed(turning.wavelength(), knots.meanStep())) * Math.sqrt(inverse);
        ImportReport.SmoothingReport smoothing = new ImportReport.SmoothingReport(
                fit == null ? turning.wavelength() : fit.wave(),
                fit != null,
                Double.NaN,
                0,
                Double.NaN,
                uncertainty,
                0,
                0);
        Track track = found.track().withPath(Track.Path.DRIVEN);
        return new ImportedTrack(
                band == null ? track : band.addTo(track),
                new ImportReport(
                        samples,
                        samples - report.slow(),
                        smoothing,
                        plan.shape(),
                        plan.elevation(),
                        report,
                        fit == null ? null : fit.logger(),
                        1,
                        warnings),
                band);
    }

    /** The road most probable from the samples, near a curvature that closes. */
    private TurningFit fit(
            SplineKnots knots, CubicSpline smoothSpeed, double error, double[] measured, double[] near, double step) {
        int n = distance.length;
        double[] place = new double[n];
        double[] smooth = new double[n];
        for (int i = 0; i < n; i++) {
            place[i] = distance[i] - distance[0];
            smooth[i] = Math.max(SLOW, i < knots.intervals() ? smoothSpeed.value(i, 0) : speed[i]);
        }
        return new TurningFit(place, smooth, acceleration, error, measured, near, step, choices.closed());
    }

    private static CurvatureBand band(TurningFit fit, Track track) {
        int count = track.points().size();
        List<double[]> draws = new ArrayList<>();
        for (int k = 0; k < SurveyImport.DRAWS; k++) {
            draws.add(sampled(fit.drawn(new Random(k)), count));
        }
        return new CurvatureBand(track, sampled(fit.deviation(), count), draws, WIDENED);
    }

    /** Values at even steps taken to as many others. */
    private static double[] sampled(double[] values, int count) {
        double[] taken = new double[count];
        for (int i = 0; i < count; i++) {
            double at = (double) i / (count - 1) * (values.length - 1);
            int low = Math.min(values.length - 2, (int) at);
            taken[i] = values[low] + (at - low) * (values[low + 1] - values[low]);
        }
        return taken;
    }

    /** Leaves the samples out that tell no curvature; returns the share of the way that they covered. */
    private double dropSlow() {
        double slow = 0;
        for (int i = 1; i < samples; i++) {
            slow += speed[i] >= SLOW ? 0 : distance[i] - distance[i - 1];
        }
        double extent = samples == 0 ? 0 : distance[samples - 1] - distance[0];
        double first = samples == 0 ? 0 : distance[0];
        double last = Double.NEGATIVE_INFINITY;
        int kept = 0;
        double[] s = new double[samples];
        double[] v = new double[samples];
        double[] a = new double[samples];
        for (int i = 0; i < samples; i++) {
            if (speed[i] >= SLOW && distance[i] - last >= LEAST_STEP) {
                last = distance[i];
                s[kept] = distance[i] - first;
                v[kept] = speed[i];
                a[kept] = acceleration[i];
                kept++;
            }
        }
        distance = Arrays.copyOf(s, kept);
        speed = Arrays.copyOf(v, kept);
        acceleration = Arrays.copyOf(a, kept);
        return extent > 0 ? slow / extent : 0;
    }

    private SplineKnots knots(double extent) {
        double[] t = new double[distance.length];
        for (int i = 0; i < t.length; i++) {
            t[i] = distance[i] - distance[0];
        }
        return new SplineKnots(t, choices.closed() ? extent + extent / (t.length - 1) : Double.NaN);
    }

    private CrossValidation.Result smooth(SplineKnots knots, double[] values) {
        return choices.smoothing().isPresent()
                ? CrossValidation.byHand(knots, choices.smoothing().getAsDouble(), values)
                : CrossValidation.best(knots, values);
    }

    private void warnOfEnds() {
        double begin = speed[0];
        double end = speed[speed.length - 1];
        if (Math.abs(begin - end) > SAME_SPEED * Math.max(begin, end)) {
            warnings.add("the lap begins at " + Math.round(begin) + " m/s and ends at " + Math.round(end)
                    + " m/s: not one flying lap; take another, as in --lap 2, or give one from the line to the line");
        }
    }

    private void warnOfClosure(ImportReport.LogReport report, double length) {
        if (Math.abs(report.headingError()) > LARGE_HEADING || report.positionGap() > LARGE_GAP * length) {
            warnings.add(
                    "closing the loop took large changes; the shape is rough, and a map or positions would be better");
        }
    }

    private Survey survey(DeadReckoning path) {
        List<SurveyPoint> points = new ArrayList<>(path.count());
        int count = choices.closed() ? path.count() - 1 : path.count();
        for (int i = 0; i < count; i++) {
            points.add(SurveyPoint.plan(path.x(i), path.y(i)));
        }
        return new Survey(points, false, false);
    }

    /** White errors every h metres, passed by 1/(1 + (ω/ω₀)⁴), keep h/(2π) ∫dω/(1 + (ω/ω₀)⁴)² = 3√2/16 h ω₀ of their square. */
    private static double passed(double wavelength, double step) {
        return Math.min(1, 3 * Math.sqrt(2) / 16 * step * 2 * Math.PI / wavelength);
    }
}
