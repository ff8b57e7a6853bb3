package dev.lapwright.fit;

import dev.lapwright.study.StudyMemory;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Rounds of least squares of one fit, one after the other. The same fit does the same rounds: what one that was broken off has done is recalled. */
final class FitRounds {
    private final StudyMemory memory;
    private final Map<String, double[]> recalled = new HashMap<>();
    private int round;

    FitRounds(StudyMemory memory) {
        this.memory = memory;
        memory.recall((name, numbers, words) -> recalled.put(name, numbers));
    }

    /** Begins the next round: what it came to where it was done before, as so many numbers. */
    Optional<double[]> next(int numbers) {
        round++;
        return Optional.ofNullable(recalled.get(Integer.toString(round))).filter(kept -> kept.length == numbers);
    }

    /** Keeps what the round came to. */
    void keep(double[] numbers) {
        memory.keep(Integer.toString(round), numbers, "");
    }
}
