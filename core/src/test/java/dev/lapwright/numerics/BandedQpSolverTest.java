package dev.lapwright.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.MaxIter;
import org.apache.commons.math3.optim.SimpleBounds;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.BOBYQAOptimizer;
import org.junit.jupiter.api.Test;

/** The programme's answers against Commons Math's general optimisers on the same problems. */
class BandedQpSolverTest {
    private static final int N = 14;

    @Test
    void boundedSquaresAreLeastWhereBobyqaFindsThem() {
        Random random = new Random(7);
        double[][] c = new double[N][3];
        double[] linear = new double[N];
        double[] lower = new double[N];
        double[] upper = new double[N];
        BandedQpSolver qp = new BandedQpSolver(N, 3, 1e-12);
        for (int i = 0; i < N; i++) {
            c[i] = new double[] {random.nextGaussian(), 3 + random.nextDouble(), random.nextGaussian()};
            linear[i] = 4 * random.nextGaussian();
            lower[i] = -0.3 - random.nextDouble() / 10;
            upper[i] = 0.2 + random.nextDouble() / 10;
            qp.square(i - 1, 1, c[i]);
            qp.linear(i, linear[i]);
            qp.within(i, lower[i], upper[i]);
        }
        double[] found = qp.minimise();
        double[] other = new BOBYQAOptimizer(2 * N + 1, 0.1, 1e-9)
                .optimize(
                        new MaxEval(20_000),
                        GoalType.MINIMIZE,
                        new ObjectiveFunction(x -> value(c, linear, x)),
                        new SimpleBounds(lower, upper),
                        new InitialGuess(new double[N]))
                .getPoint();
        // BOBYQA's last trust region is 1e-9 wide; its own rounding leaves some 1e-6 in places where the bowl is flat.
        assertThat(found).containsExactly(other, within(2e-6));
        assertThat(value(c, linear, found)).isLessThanOrEqualTo(value(c, linear, other) + 1e-11);
        // Else the bounds would be no part of the check.
        assertThat(Arrays.stream(found).max().orElseThrow()).isGreaterThan(0.2);
        assertThat(Arrays.stream(found).min().orElseThrow()).isLessThan(-0.3);
    }

    private static double value(double[][] c, double[] linear, double[] x) {
        double sum = 0;
        for (int i = 0; i < N; i++) {
            double row = 0;
            for (int k = 0; k < 3; k++) {
                row += c[i][k] * x[(i - 1 + k + N) % N];
            }
            sum += linear[i] * x[i] + 0.5 * row * row;
        }
        return sum;
    }

    @Test
    void linearProgrammesEndWhereTheSimplexMethodEnds() {
        Random random = new Random(11);
        BandedQpSolver qp = new BandedQpSolver(N, 3, 1e-9);
        double[] linear = new double[N];
        List<LinearConstraint> constraints = new ArrayList<>();
        for (int i = 0; i < N; i++) {
            linear[i] = random.nextGaussian();
            qp.linear(i, linear[i]);
            qp.within(i, -2, 2);
            constraints.add(new LinearConstraint(unit(i), Relationship.GEQ, -2));
            constraints.add(new LinearConstraint(unit(i), Relationship.LEQ, 2));
            double[] row = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
            double most = 0.5 + random.nextDouble();
            qp.row(i - 1, most, row);
            double[] dense = new double[N];
            for (int k = 0; k < 3; k++) {
                dense[(i - 1 + k + N) % N] = row[k];
            }
            constraints.add(new LinearConstraint(dense, Relationship.LEQ, most));
        }
        double[] found = qp.minimise();
        double least = new SimplexSolver()
                .optimize(
                        new MaxIter(1000),
                        new LinearObjectiveFunction(linear, 0),
                        new LinearConstraintSet(constraints),
                        GoalType.MINIMIZE)
                .getValue();
        // The programme may stop 1e-9 above the least value; rows are met to 1e-7, which the multipliers (of order 1)
        // weigh.
        assertThat(qp.value(found)).isCloseTo(least, within(1e-6));
    }

    private static double[] unit(int i) {
        double[] unit = new double[N];
        unit[i] = 1;
        return unit;
    }
}
