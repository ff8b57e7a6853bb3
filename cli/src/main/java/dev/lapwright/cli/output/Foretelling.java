package dev.lapwright.cli.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Time that work will take, by some of its parts, timed before the others are done.
 *
 * @param seconds of the whole
 * @param timed parts that tell it
 */
record Foretelling(double seconds, int timed) {
    /** Shorter work is not worth a word, s. */
    static final double SHORT = 10;

    /** Time spent on parts, s. */
    private static final double TIMING = 1.5;
    /** Of the parts timed the last in so many tell: while Java still compiles what they do, they take longer. */
    private static final int LAST_OF = 3;
    /** So many parts at least before work is found to be short. */
    private static final int LEAST = 4;
    /** No more than a part in so many, for they are done on one thread. */
    private static final int OF = 5;

    private static final double NANOSECONDS = 1e9;

    /**
     * What is to be told; nothing of work that is short, or of so few parts that one of them is most of it.
     *
     * @param part does one
     */
    static Optional<Foretelling> of(long parts, int threads, Runnable part, LongSupplier nanoseconds) {
        List<Long> times = new ArrayList<>();
        long ofLast = 0;
        int before = 0;
        double whole = 0;
        long begin = nanoseconds.getAsLong();
        for (long now = begin; now - begin < TIMING * NANOSECONDS && OF * (times.size() + 1L) <= parts; ) {
            part.run();
            long after = nanoseconds.getAsLong();
            times.add(after - now);
            now = after;
            ofLast += times.get(times.size() - 1);
            for (int i = before; i < times.size() - last(times); i++) {
                ofLast -= times.get(i);
            }
            before = times.size() - last(times);
            whole = ofLast / NANOSECONDS / last(times) * parts / threads;
            if (times.size() >= LEAST && whole < SHORT) {
                return Optional.empty();
            }
        }
        return whole < SHORT ? Optional.empty() : Optional.of(new Foretelling(whole, last(times)));
    }

    private static int last(List<Long> times) {
        return (times.size() + LAST_OF - 1) / LAST_OF;
    }
}
