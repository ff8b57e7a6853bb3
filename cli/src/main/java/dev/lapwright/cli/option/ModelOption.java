package dev.lapwright.cli.option;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.results.LapModel;
import dev.lapwright.track.Track;
import java.util.Arrays;
import java.util.Iterator;
import picocli.CommandLine.Option;

/** Option for the model that laps are solved by. */
public final class ModelOption {
    @Option(
            names = "--model",
            paramLabel = "MODEL",
            completionCandidates = Words.class,
            description =
                    "fast, which all studies use, or fuller: steer, sideslip and slip of four wheels in equilibrium at each"
                            + " place, some fifty times slower. If not given: fast.")
    String word = LapModel.FAST.word();

    /** Words that name a model. */
    static final class Words implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return Arrays.stream(LapModel.values()).map(LapModel::word).iterator();
        }
    }

    /** @throws InvalidValueException for a word that is no model */
    public void check() {
        read("--model", word);
    }

    /** The model that an option names. */
    public static LapModel read(String option, String word) {
        return LapModel.named(word)
                .orElseThrow(() -> new InvalidValueException(
                        option + " " + word, "there is no such model", "give fast or fuller"));
    }

    /** A solver of laps by it, at the default spacing. */
    public LapSolver on(Track track) {
        return read("--model", word).on(track);
    }
}
