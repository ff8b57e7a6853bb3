package dev.lapwright.line;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.checks.PlainCar;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.SimpleBounds;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.BOBYQAOptimizer;
import org.junit.jupiter.api.Test;

/** Both searches against Commons Math's BOBYQA, which knows nothing of lines, on a corner that a dozen offsets describe. */
class GeneralOptimiserTest {
    private static final int KNOTS = 14;

    private static final PlainCar CAR = PlainCar.ofMass(1000).power(150_000, 5, 80);

    private static Track corner() {
        return new SegmentPath(
                        List.of(
                                Segment.straight(120).wide(5, 5),
                                Segment.arc(Math.PI / 2 * 40, 40).wide(5, 5),
                                Segment.straight(160).wide(5, 5)),
                        false,
                        1)
                .openTrack("corner", 40);
    }

    private static double[] knots(double length) {
        double[] s = new double[KNOTS];
        for (int i = 0; i < KNOTS; i++) {
            s[i] = length * i / (KNOTS - 1);
        }
        return s;
    }

    private static Line line(LineSearch search, Track road, double[] offsets) {
        PolynomialSplineFunction spline = new SplineInterpolator().interpolate(knots(road.length()), offsets);
        double[] s = search.middle().distances();
        return search.at(
                s,
                Arrays.stream(s)
                        .map(x -> spline.value(Math.min(x, road.length())))
                        .toArray());
    }

    @FunctionalInterface
    private interface Cost {
        double of(Line line);
    }

    private static double bobyqa(LineSearch search, Track road, double[] start, Cost cost) {
        double[] lower = new double[KNOTS];
        double[] upper = new double[KNOTS];
        Arrays.fill(lower, -3.8);
        Arrays.fill(upper, 3.8);
        return new BOBYQAOptimizer(2 * KNOTS + 1, 0.5, 1e-3)
                .optimize(
                        new MaxEval(20_000),
                        GoalType.MINIMIZE,
                        new ObjectiveFunction(x -> cost.of(line(search, road, x))),
                        new SimpleBounds(lower, upper),
                        new InitialGuess(start))
                .getValue();
    }

    private static double[] start(Track road, Line from) {
        double[] s = from.distances();
        double[] offsets = from.offsets();
        double[] at = knots(road.length());
        double[] start = new double[KNOTS];
        for (int i = 0; i < KNOTS; i++) {
            int k = (int) Math.round(at[i] / road.length() * (s.length - 1));
            start[i] = Math.max(-3.7, Math.min(3.7, offsets[k]));
        }
        return start;
    }

    @Test
    void theFastestLineIsAsFastAsWhatAGeneralOptimiserFinds() {
        Track road = corner();
        Vehicle vehicle = CAR.vehicle();
        LineSearch search = LineSearch.of(road, CAR.car(), LineChoices.DEFAULT);
        Cost time = line -> LapSolver.on(line.driven()).lapTime(vehicle);
        Line smoothest = search.smoothest();
        double general = bobyqa(search, road, start(road, smoothest), time);
        double found = time.of(search.fastest(vehicle));
        // BOBYQA has fewer offsets, the search ends where steps gain 0.2 ms: neither is to win by more than some
        // milliseconds.
        assertThat(found).isLessThan(general + 0.005);
        assertThat(found).isLessThan(time.of(smoothest) - 0.05);
    }

    @Test
    void theSmoothestLineBendsNoMoreThanWhatAGeneralOptimiserFinds() {
        Track road = corner();
        LineSearch search = LineSearch.of(road, CAR.car(), LineChoices.DEFAULT);
        Cost bending = line -> {
            double sum = 0;
            double[] s = line.driven().stationsAtPoints().s();
            double[] k = line.driven().stationsAtPoints().curvature();
            for (int i = 0; i + 1 < s.length; i++) {
                sum += 0.5 * (k[i] * k[i] + k[i + 1] * k[i + 1]) * (s[i + 1] - s[i]);
            }
            return sum;
        };
        double general = bobyqa(search, road, start(road, search.middle()), bending);
        // The search bends its nodes' circles, the cost above the spline through them: equal but for terms of h², 1e-3
        // here.
        assertThat(bending.of(search.smoothest())).isLessThan(general * 1.002);
    }
}
