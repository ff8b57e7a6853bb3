package dev.lapwright.study.plan;

import dev.lapwright.doubt.LatinHypercube;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.study.sweep.SweepAxis;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.apache.commons.math3.random.SobolSequenceGenerator;

/**
 * Design of a plan: which settings are driven together. Each point has a number, and is the same whoever asks for it in whatever order.
 *
 * <p>A full grid has all combinations, the last axis fastest. A Latin hypercube of n points has each n-th of each axis once (McKay, Beckman and
 * Conover, Technometrics 21 (1979) 239); a Sobol sequence fills the room evenly the further it goes (Joe and Kuo's direction numbers, as Apache
 * Commons Math has them). Of both an axis takes the value in whose share of the axis a point falls.
 */
public final class PlanDesign {
    /** Most points of a design that is no grid. */
    public static final int MOST_POINTS = 1_000_000;

    private final List<SweepAxis> axes;
    /** By point and axis, 0 to 1; null for a grid. */
    private final double[][] shares;

    private PlanDesign(List<SweepAxis> axes, double[][] shares) {
        Set<String> names = new LinkedHashSet<>();
        for (SweepAxis axis : axes) {
            if (!names.add(axis.name())) {
                throw new InvalidValueException(axis.name(), "it is varied twice", "name each once");
            }
        }
        this.axes = List.copyOf(axes);
        this.shares = shares;
    }

    /** All combinations. */
    public static PlanDesign grid(List<SweepAxis> axes) {
        return new PlanDesign(axes, null);
    }

    /** A Latin hypercube. */
    public static PlanDesign latinHypercube(List<SweepAxis> axes, int points, long seed) {
        checkPoints(axes, points);
        return new PlanDesign(axes, LatinHypercube.uniform(points, axes.size(), seed));
    }

    /** The first points of a Sobol sequence, from its origin. */
    public static PlanDesign sobol(List<SweepAxis> axes, int points) {
        checkPoints(axes, points);
        SobolSequenceGenerator sequence = new SobolSequenceGenerator(axes.size());
        double[][] shares = new double[points][];
        Arrays.setAll(shares, i -> sequence.nextVector());
        return new PlanDesign(axes, shares);
    }

    private static void checkPoints(List<SweepAxis> axes, int points) {
        if (points < 1 || points > MOST_POINTS) {
            throw new InvalidValueException(
                    "points", points + " is no number of points of a design", "give 1 to " + MOST_POINTS);
        }
        if (axes.isEmpty()) {
            throw new InvalidValueException("vary", "nothing is varied", "name at least one thing, or take a grid");
        }
    }

    /** What is varied. */
    public List<SweepAxis> axes() {
        return axes;
    }

    /** Number of points; 1 where nothing is varied. */
    public long count() {
        if (shares != null) {
            return shares.length;
        }
        long count = 1;
        for (SweepAxis axis : axes) {
            count = Math.multiplyExact(count, axis.count());
        }
        return count;
    }

    /**
     * Values of a point, in the order of the axes.
     *
     * @param point from 0
     */
    public double[] values(long point) {
        if (point < 0 || point >= count()) {
            throw new InvalidValueException(
                    "point", point + " is no point of the design", "give 0 to " + (count() - 1));
        }
        double[] values = new double[axes.size()];
        long rest = point;
        for (int k = values.length - 1; k >= 0; k--) {
            int n = axes.get(k).count();
            if (shares == null) {
                values[k] = axes.get(k).value((int) (rest % n));
                rest /= n;
            } else {
                values[k] = axes.get(k).value(Math.min(n - 1, (int) (shares[(int) point][k] * n)));
            }
        }
        return values;
    }
}
