package dev.lapwright.doubt;

import dev.lapwright.fault.InvalidValueException;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.RandomDataGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * Latin hypercube sample of independent numbers (McKay, Beckman and Conover, Technometrics 21 (1979) 239): of n draws
 * each of the n slices of equal chance of each unknown holds one. The same for the same seed.
 */
public final class LatinHypercube {
    private static final int MOST = 1_000_000;

    private LatinHypercube() {}

    /**
     * A sample of standard normal numbers.
     *
     * @param draws number of draws, at least 1
     * @param unknowns number of unknowns
     * @return draws by unknowns; the caller's
     */
    public static double[][] normal(int draws, int unknowns, long seed) {
        double[][] sample = uniform(draws, unknowns, seed);
        NormalDistribution normal = new NormalDistribution(null, 0, 1);
        for (double[] draw : sample) {
            for (int k = 0; k < unknowns; k++) {
                draw[k] = normal.inverseCumulativeProbability(draw[k]);
            }
        }
        return sample;
    }

    /** The same of numbers between 0 and 1, all alike likely. */
    public static double[][] uniform(int draws, int unknowns, long seed) {
        if (draws < 1 || draws > MOST) {
            throw new InvalidValueException("draws", draws + " is no number of draws", "give 1 to " + MOST);
        }
        RandomDataGenerator random = new RandomDataGenerator(new Well19937c(seed));
        double[][] sample = new double[draws][unknowns];
        for (int k = 0; k < unknowns; k++) {
            int[] slices = random.nextPermutation(draws, draws);
            for (int i = 0; i < draws; i++) {
                double within = random.nextUniform(0, 1, false);
                sample[i][k] = (slices[i] + within) / draws;
            }
        }
        return sample;
    }
}
