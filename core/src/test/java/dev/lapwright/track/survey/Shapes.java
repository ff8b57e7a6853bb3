package dev.lapwright.track.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleFunction;

/** Lines of known shape, and errors added to them from fixed seeds. */
final class Shapes {
    private Shapes() {}

    static List<SurveyPoint> sampled(int count, double end, DoubleFunction<SurveyPoint> shape) {
        List<SurveyPoint> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            points.add(shape.apply(end * i / count));
        }
        return points;
    }

    static List<SurveyPoint> circle(double radius, int count) {
        return sampled(count, 2 * Math.PI, a -> SurveyPoint.plan(radius * Math.cos(a), radius * Math.sin(a)));
    }

    /** An ellipse, or the line a distance outside it. */
    static List<SurveyPoint> ellipse(double a, double b, double outside, int count) {
        return sampled(count, 2 * Math.PI, t -> {
            double nx = b * Math.cos(t);
            double ny = a * Math.sin(t);
            double n = Math.hypot(nx, ny);
            return SurveyPoint.plan(a * Math.cos(t) + outside * nx / n, b * Math.sin(t) + outside * ny / n);
        });
    }

    /** Two straights joined by half circles, from the middle of the lower straight, to the left. */
    static SurveyPoint stadium(double straight, double radius, double s) {
        double half = straight / 2;
        double arc = Math.PI * radius;
        if (s < half) {
            return SurveyPoint.plan(s, 0);
        } else if (s < half + arc) {
            double a = (s - half) / radius;
            return SurveyPoint.plan(half + radius * Math.sin(a), radius - radius * Math.cos(a));
        } else if (s < half + arc + straight) {
            return SurveyPoint.plan(half - (s - half - arc), 2 * radius);
        } else if (s < half + 2 * arc + straight) {
            double a = (s - half - arc - straight) / radius;
            return SurveyPoint.plan(-half - radius * Math.sin(a), radius + radius * Math.cos(a));
        }
        return SurveyPoint.plan(-half + (s - half - 2 * arc - straight), 0);
    }

    static List<SurveyPoint> noisy(List<SurveyPoint> points, double deviation, long seed) {
        Random random = new Random(seed);
        List<SurveyPoint> noisy = new ArrayList<>();
        for (SurveyPoint p : points) {
            noisy.add(new SurveyPoint(
                    p.x() + deviation * random.nextGaussian(),
                    p.y() + deviation * random.nextGaussian(),
                    p.z(),
                    p.widthLeft(),
                    p.widthRight()));
        }
        return noisy;
    }

    static Survey plan(List<SurveyPoint> points) {
        return new Survey(points, false, false);
    }
}
