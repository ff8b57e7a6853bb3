package dev.lapwright.study.robust;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * Measurement of drawn cars, one after the other, by a driver's words: each is kept with the chance that its driver would say all the words (rejection
 * sampling), so that those that are kept are as many as they count for.
 */
final class Hearing {
    /** Draws of what is heard are not those of the cars. */
    private static final long OTHER_SEED = 0x9E3779B97F4A7C15L;

    private final List<DriverWord> words;
    private final RandomGenerator random;
    private int seen;
    private int kept;

    /**
     * What is said of cars.
     *
     * @param seed with which the cars are drawn
     * @param described a lap of the car as it is described: words of a corner that is not there are refused before the waiting
     */
    Hearing(List<DriverWord> words, long seed, Lap described) {
        this.words = words;
        random = new Well19937c(seed ^ OTHER_SEED);
        likelihood(described);
    }

    /** How likely all words would be said of a lap, as a share of the greatest that it may be. */
    double likelihood(Lap lap) {
        return words.stream().mapToDouble(word -> word.likelihood(lap)).reduce(1, (a, b) -> a * b);
    }

    /** Whether the next drawn car is kept. */
    boolean keeps(double likelihood) {
        seen++;
        boolean keeps = random.nextDouble() < likelihood;
        kept += keeps ? 1 : 0;
        return keeps;
    }

    int seen() {
        return seen;
    }

    int kept() {
        return kept;
    }

    /** Refuses words with which so few cars go that nothing can be told. */
    void checkEnough(String otherwise) {
        if (kept < Robustness.FEWEST_DRAWS) {
            throw new InvalidValueException(
                    "what the driver says", "only " + kept + " of " + seen + " cars drawn go with it", otherwise);
        }
    }
}
