package dev.lapwright.cli.option;

import dev.lapwright.cli.output.Console;
import dev.lapwright.results.Standings;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.robust.Robustness;
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
    public Optional<Standings> standings(Supplier<Robustness> settings, StudyRun how, Console console) {
        return super.standings(
                () -> seed == null ? settings.get() : settings.get().withSeed(seed), how, console);
    }
}
