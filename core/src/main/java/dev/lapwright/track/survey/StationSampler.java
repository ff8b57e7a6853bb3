package dev.lapwright.track.survey;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.numerics.ArcLengthCurve;
import dev.lapwright.numerics.CubicSpline;
import dev.lapwright.numerics.SplineKnots;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;

/**
 * The sampling of a track's points from a smoothed line at even steps of its length on the plan.
 *
 * <p>Distances of a track run along the road, not the plan. Its heading is the integral of its curvature over them, so that
 * the curvature is that of the plan times the cosine of the slope: so laid out, a closed line closes.
 */
final class StationSampler {
    private static final double REACH = Math.sqrt(0.6);
    /** A third changes nothing that is seen. */
    private static final int TURNING_ROUNDS = 2;

    private static final double STEEPEST = 0.6;
    private static final double TIGHTEST = 0.5;
    private static final double SHARPEST_CREST = 0.2;
    private static final String MORE_ELEVATION = "--elevation-smoothing 200, for instance";

    private final ArcLengthCurve curve;
    private final SplineKnots knots;
    private final CubicSpline elevation;
    private final List<SurveyPoint> points;
    private final boolean widths;
    private final double halfWidth;

    /**
     * A track and the line that it was taken from, by station.
     *
     * @param s along the road, m
     * @param x on the plan, m
     * @param y on the plan, m
     * @param planCurvature 1/m
     * @param heading rad, continuous
     */
    record Sampled(
            Track track, double[] s, double[] x, double[] y, double[] planCurvature, double[] heading, double climb) {
        int tightest() {
            int found = 0;
            for (int i = 1; i < planCurvature.length; i++) {
                found = Math.abs(planCurvature[i]) > Math.abs(planCurvature[found]) ? i : found;
            }
            return found;
        }

        double turning() {
            return heading[heading.length - 1] - heading[0];
        }

        double steepest() {
            return track.points().stream()
                    .mapToDouble(p -> Math.abs(p.slope()))
                    .max()
                    .orElse(0);
        }
    }

    StationSampler(
            ArcLengthCurve curve,
            SplineKnots knots,
            CubicSpline elevation,
            List<SurveyPoint> points,
            boolean widths,
            double halfWidth) {
        this.curve = curve;
        this.knots = knots;
        this.elevation = elevation;
        this.points = points;
        this.widths = widths;
        this.halfWidth = halfWidth;
    }

    Sampled sample(String name, double spacing, boolean closed) {
        int steps = Math.max(8, (int) Math.ceil(curve.length() / spacing));
        double step = curve.length() / steps;
        double[] s = new double[steps + 1];
        double[] x = new double[steps + 1];
        double[] y = new double[steps + 1];
        double[] curvature = new double[steps + 1];
        double[] heading = new double[steps + 1];
        double[] road = new double[steps + 1];
        double[] slope = new double[steps + 1];
        double[] vertical = new double[steps + 1];
        SurveyPoint[] beside = new SurveyPoint[steps + 1];
        List<TrackPoint> stations = new ArrayList<>(steps + 1);
        double climb = 0;
        double altitude = 0;
        int interval = 0;
        for (int i = 0; i <= steps; i++) {
            boolean again = closed && i == steps;
            double plan = again ? 0 : Math.min(curve.length(), i * step);
            ArcLengthCurve.Place place = curve.at(plan);
            if (again) {
                interval = 0;
            }
            while (interval + 1 < knots.intervals() && knots.place(interval + 1) <= plan) {
                interval++;
            }
            double ahead = plan - knots.place(interval);
            double rise = elevation.slope(interval, ahead);
            double here = elevation.value(interval, ahead);
            if (i > 0) {
                s[i] = s[i - 1] + roadLength((i - 1) * step, step);
                heading[i] = heading[i - 1] + Math.IEEEremainder(place.heading() - heading[i - 1], 2 * Math.PI);
                climb += Math.max(0, here - altitude);
            } else {
                heading[i] = place.heading();
            }
            altitude = here;
            x[i] = place.x();
            y[i] = place.y();
            curvature[i] = place.curvature();
            double flatter = 1 / Math.sqrt(1 + rise * rise);
            slope[i] = Math.atan(rise);
            vertical[i] = elevation.secondDerivative(interval, ahead) * flatter * flatter * flatter;
            road[i] = place.curvature() * flatter;
            beside[i] = beside(interval, ahead);
        }
        turnExactly(road, s, heading, closed);
        for (int i = 0; i <= steps; i++) {
            stations.add(station(s[i], road[i], slope[i], vertical[i], beside[i]));
        }
        Track track = closed ? Track.closed(name, stations) : Track.open(name, 0, stations);
        return new Sampled(track, s, x, y, curvature, heading, climb);
    }

    /**
     * Spreads what each cell of linear curvature turns too much or too little over its two ends, so that the track, laid out
     * from its stations, turns as the line does.
     */
    private static void turnExactly(double[] curvature, double[] s, double[] heading, boolean closed) {
        int cells = s.length - 1;
        double[] turned = new double[cells];
        for (int round = 0; round < TURNING_ROUNDS; round++) {
            for (int i = 0; i < cells; i++) {
                double step = s[i + 1] - s[i];
                turned[i] = (heading[i + 1] - heading[i]) / step - (curvature[i] + curvature[i + 1]) / 2;
            }
            for (int i = 0; i <= cells; i++) {
                double before = i > 0 ? turned[i - 1] : closed ? turned[cells - 1] : turned[0];
                double behind = i < cells ? turned[i] : closed ? turned[0] : turned[cells - 1];
                curvature[i] += (before + behind) / 2;
            }
        }
    }

    private double roadLength(double from, double extent) {
        double middle = from + extent / 2;
        return extent
                / 18
                * (5 * stretch(middle - REACH * extent / 2)
                        + 8 * stretch(middle)
                        + 5 * stretch(middle + REACH * extent / 2));
    }

    private double stretch(double plan) {
        int low = 0;
        int high = knots.intervals();
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (knots.place(middle) <= plan) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double rise = elevation.slope(low, plan - knots.place(low));
        return Math.sqrt(1 + rise * rise);
    }

    private TrackPoint station(double s, double curvature, double slope, double vertical, SurveyPoint road) {
        require(
                Math.abs(curvature) <= TIGHTEST,
                s,
                "bends with a radius of " + radius(curvature),
                "--smoothing 60, for instance");
        require(Math.abs(slope) <= STEEPEST, s, "is as steep as " + percent(slope), MORE_ELEVATION);
        require(
                Math.abs(vertical) <= SHARPEST_CREST,
                s,
                "has a crest or dip with a radius of " + radius(vertical),
                MORE_ELEVATION);
        return new TrackPoint(
                s,
                curvature,
                slope,
                road.bank(),
                vertical,
                road.grip(),
                widths ? road.widthLeft() : halfWidth,
                widths ? road.widthRight() : halfWidth,
                Double.POSITIVE_INFINITY);
    }

    private static String radius(double curvature) {
        return Check.text(Math.rint(100 / Math.abs(curvature)) / 100) + " m";
    }

    private static String percent(double slope) {
        return Math.round(100 * Math.abs(Math.tan(slope))) + " %";
    }

    private static void require(boolean fits, double s, String problem, String remedy) {
        if (!fits) {
            throw new InvalidValueException(
                    "survey",
                    "the line at " + Math.round(s) + " m " + problem + ", as no road does",
                    "mend the points there, or smooth more: " + remedy);
        }
    }

    /** What the survey says of the road between two of its points. */
    private SurveyPoint beside(int interval, double ahead) {
        SurveyPoint a = points.get(interval);
        SurveyPoint b = points.get((interval + 1) % points.size());
        return a.towards(b, Math.max(0, Math.min(1, ahead / knots.step(interval))));
    }
}
