package dev.lapwright.checks;

import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.params.ParameterizedTest;

/** Paths given by curvature over distance, against the curves of geometry. */
class GeometryTest {
    private static final double STRAIGHT = Double.POSITIVE_INFINITY;

    @ParameterizedTest(name = "{0}")
    @CheckFile("geometry.csv")
    void aPathIsTheCurveOfItsCurvature(CheckRow row) {
        row.verify(
                switch (row.quantity()) {
                    case "clothoid heading" ->
                        Math.toDegrees(last(clothoid(50, 100).heading()));
                    case "clothoid end along" -> last(clothoid(50, 100).x());
                    case "clothoid end across" -> last(clothoid(50, 100).y());
                    // The first half of a clothoid is the clothoid of twice the radius: heading s² / (2 A²).
                    case "clothoid parameter" ->
                        25 / Math.sqrt(2 * last(clothoid(25, 200).heading()));
                    case "ellipse perimeter" -> perimeter(ellipse());
                    case "ellipse length" -> extent(ellipse().y());
                    case "ellipse width" -> extent(ellipse().x());
                    case "ellipse least radius" ->
                        1 / Arrays.stream(ellipse().curvature()).max().orElseThrow();
                    case "ellipse greatest radius" ->
                        1 / Arrays.stream(ellipse().curvature()).min().orElseThrow();
                    case "ellipse turning" -> ellipse().totalTurning();
                    case "ellipse gap" -> ellipse().planeGap();
                    case "figure of eight turning" ->
                        new SegmentPath(List.of(circle(40), circle(-40)), true, 1)
                                .closedTrack("eight", 1e-6)
                                .stations(Runs.FINE)
                                .totalTurning();
                    case "stadium turning" -> stadium(50).stations(Runs.FINE).totalTurning();
                    case "lane offset" -> stadium(55).length() - stadium(50).length();
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    private static double last(double[] values) {
        return values[values.length - 1];
    }

    private static double extent(double[] values) {
        return Arrays.stream(values).max().orElseThrow()
                - Arrays.stream(values).min().orElseThrow();
    }

    private static Stations clothoid(double length, double endRadius) {
        return new SegmentPath(List.of(Segment.clothoid(length, STRAIGHT, endRadius)), false, 1)
                .openTrack("clothoid", 10)
                .stations(Runs.FINE);
    }

    private static Segment circle(double radius) {
        return Segment.arc(2 * Math.PI * Math.abs(radius), radius);
    }

    private static Track stadium(double radius) {
        Segment half = Segment.arc(Math.PI * radius, radius);
        return new SegmentPath(List.of(Segment.straight(120), half, Segment.straight(120), half), true, 1)
                .closedTrack("stadium", 1e-6);
    }

    /**
     * The ellipse of semi-axes 150 m and 100 m from the end of its long axis, where it is tightest, leading across: curvature
     * and distance at 2880 even steps of the eccentric angle.
     */
    private static Stations ellipse() {
        double a = 150;
        double b = 100;
        int steps = 2880;
        IterativeLegendreGaussIntegrator rule = new IterativeLegendreGaussIntegrator(5, 1e-12, 1e-12);
        List<TrackPoint> points = new ArrayList<>();
        double s = 0;
        for (int i = 0; i <= steps; i++) {
            double angle = 2 * Math.PI * i / steps;
            double speed = Math.hypot(a * Math.sin(angle), b * Math.cos(angle));
            points.add(TrackPoint.flat(s, a * b / (speed * speed * speed)));
            s += rule.integrate(
                    1000, t -> Math.hypot(a * Math.sin(t), b * Math.cos(t)), angle, 2 * Math.PI * (i + 1) / steps);
        }
        return Track.closed("ellipse", points).stations(Runs.FINE);
    }

    /** Of the polygon through the stations, 0.3 m apart: shorter than the curve by 1e-6 at the tightest place. */
    private static double perimeter(Stations stations) {
        double[] x = stations.x();
        double[] y = stations.y();
        double sum = 0;
        for (int i = 0; i + 1 < x.length; i++) {
            sum += Math.hypot(x[i + 1] - x[i], y[i + 1] - y[i]);
        }
        return sum;
    }
}
