package dev.lapwright.study.ride;

import dev.lapwright.fault.Check;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.ride.RidePass;
import java.util.List;
import java.util.Optional;

/**
 * Passes over one road for a grid of fast damper rates.
 *
 * @param car with its own rates
 * @param bump fast bump rates, N s/m at the damper, rising
 * @param rebound fast rebound rates, N s/m at the damper, rising
 * @param passes one for each pair, rebound varying fastest
 * @param own with the car's own rates
 * @param beside close to the car's own rates, for slopes
 */
public record DamperMapResult(
        QuarterCar car, double[] bump, double[] rebound, List<RidePass> passes, RidePass own, Beside beside) {
    /** How much worse than the best pair a pair of the best region may be, as a share. */
    private static final double REGION = 0.02;
    /** Below this, in the unit of a measure, two values are equal: the integrator does not tell them apart. */
    private static final double SAME = 1e-3;

    public DamperMapResult {
        bump = bump.clone();
        rebound = rebound.clone();
        passes = List.copyOf(passes);
    }

    /**
     * Passes close to the car's own rates, for slopes.
     *
     * @param lessBump with less fast bump
     * @param moreBump with more fast bump
     * @param bumpSpan between the two, N s/m
     * @param lessRebound with less fast rebound
     * @param moreRebound with more fast rebound
     * @param reboundSpan between the two, N s/m
     */
    public record Beside(
            RidePass lessBump,
            RidePass moreBump,
            double bumpSpan,
            RidePass lessRebound,
            RidePass moreRebound,
            double reboundSpan) {}

    /**
     * Best pair of rates and those that are about as good.
     *
     * @param bump of the best pair, N s/m
     * @param rebound of the best pair, N s/m
     * @param pass with the best pair
     * @param leastBump of the region
     * @param greatestBump of the region
     * @param leastRebound of the region
     * @param greatestRebound of the region
     * @param pairs in the region
     * @param atEdge whether the best pair lies on the edge of the map, so that better ones may lie beyond
     */
    public record Region(
            double bump,
            double rebound,
            RidePass pass,
            double leastBump,
            double greatestBump,
            double leastRebound,
            double greatestRebound,
            int pairs,
            boolean atEdge) {}

    @Override
    public double[] bump() {
        return bump.clone();
    }

    @Override
    public double[] rebound() {
        return rebound.clone();
    }

    /** The pass with one pair of rates. */
    public RidePass at(int bumpIndex, int reboundIndex) {
        return passes.get(bumpIndex * rebound.length + reboundIndex);
    }

    /** Best pair by a measure, nearest to the car's own rates if several are best, and the region within 2 % of it. */
    public Region best(RideMeasure measure) {
        double least = Double.POSITIVE_INFINITY;
        for (RidePass pass : passes) {
            least = Math.min(least, measure.of(pass));
        }
        int best = -1;
        for (int i = 0; i < passes.size(); i++) {
            if (measure.of(passes.get(i)) <= least + SAME && (best < 0 || distance(i) < distance(best))) {
                best = i;
            }
        }
        double limit = least + Math.max(SAME, REGION * least);
        double[] range = {Double.MAX_VALUE, -Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE};
        int pairs = 0;
        for (int i = 0; i < passes.size(); i++) {
            if (measure.of(passes.get(i)) <= limit) {
                pairs++;
                double b = bump[i / rebound.length];
                double r = rebound[i % rebound.length];
                range[0] = Math.min(range[0], b);
                range[1] = Math.max(range[1], b);
                range[2] = Math.min(range[2], r);
                range[3] = Math.max(range[3], r);
            }
        }
        int across = best / rebound.length;
        int up = best % rebound.length;
        boolean edge = across == 0 || up == 0 || across == bump.length - 1 || up == rebound.length - 1;
        return new Region(
                bump[across], rebound[up], passes.get(best), range[0], range[1], range[2], range[3], pairs, edge);
    }

    /**
     * Pair of rates.
     *
     * @param bump N s/m
     * @param rebound N s/m
     * @param pass with them
     */
    public record Pair(double bump, double rebound, RidePass pass) {}

    /** Best pair by a measure among those whose rebound is a multiple of bump within a range; the softest if several are best. */
    public Optional<Pair> best(RideMeasure measure, double leastRatio, double greatestRatio) {
        Check.finite("least ratio", leastRatio);
        Check.finite("greatest ratio", greatestRatio);
        Pair best = null;
        for (int i = 0; i < passes.size(); i++) {
            double b = bump[i / rebound.length];
            double r = rebound[i % rebound.length];
            boolean within = r >= leastRatio * b && r <= greatestRatio * b;
            if (within && (best == null || measure.of(passes.get(i)) < measure.of(best.pass()) - SAME)) {
                best = new Pair(b, r, passes.get(i));
            }
        }
        return Optional.ofNullable(best);
    }

    private double distance(int i) {
        return Math.hypot(
                bump[i / rebound.length] - car.damper().fastBump(),
                rebound[i % rebound.length] - car.damper().fastRebound());
    }

    /** Change of a measure with fast bump at the car's own rates, per N s/m. */
    public double bumpSlope(RideMeasure measure) {
        return (measure.of(beside.moreBump()) - measure.of(beside.lessBump())) / beside.bumpSpan();
    }

    /** Change of a measure with fast rebound at the car's own rates, per N s/m. */
    public double reboundSlope(RideMeasure measure) {
        return (measure.of(beside.moreRebound()) - measure.of(beside.lessRebound())) / beside.reboundSpan();
    }
}
