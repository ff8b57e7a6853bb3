package dev.lapwright.cli.option;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.results.Standings;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.stint.Stint;
import dev.lapwright.study.stint.StintDoubt;
import dev.lapwright.study.stint.StintDoubtResult;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import picocli.CommandLine.Option;

/** Options for how well the car is known, where nothing else is random. */
public class SeededDoubtOptions extends DoubtOptions {
    @Option(names = "--seed", paramLabel = "N", description = "Begins the draws elsewhere; 1 if left out.")
    Long seed;

    @Override
    String ofTheDraws() {
        return seed != null ? "--seed" : super.ofTheDraws();
    }

    @Override
    public List<String> asked() {
        List<String> asked = super.asked();
        asked.add("--seed " + seed);
        return asked;
    }

    /**
     * How a stint stands on drawn cars, if that is asked for; progress is shown.
     *
     * @param drives memory of these draws
     */
    public Optional<StintDoubtResult> stint(Stint stint, StudyMemory drives, StudyRun how, Console console) {
        if (count().isEmpty()) {
            return Optional.empty();
        }
        refuseWords("a stint");
        StintDoubt study = stint.doubted().withDraws(count().getAsInt()).remembering(drives);
        study = asStated ? study.asStated() : study;
        study = seed == null ? study : study.withSeed(seed);
        try (ProgressBar bar = new ProgressBar(console, "drawn cars")) {
            return Optional.of(study.run(how.reporting(bar)));
        }
    }

    @Override
    public Optional<Standings> standings(Supplier<Robustness> settings, StudyRun how, Console console) {
        return super.standings(
                () -> seed == null ? settings.get() : settings.get().withSeed(seed), how, console);
    }
}
