package dev.lapwright.cli.option;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.results.Standings;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.robust.Robustness;
import java.util.Optional;
import java.util.function.Supplier;
import picocli.CommandLine.Option;

/** Options for how well the car is known. */
public final class DoubtOptions {
    private static final String DRAWS = "--draws";

    @Option(
            names = DRAWS,
            paramLabel = "N",
            description =
                    "Draws so many cars that this one may be, by what is known of it, and tells each difference with its"
                            + " interval of 90 %% and its chance; 200 are a good number. None if left out.")
    Integer draws;

    @Option(names = "--seed", paramLabel = "N", description = "Begins the draws elsewhere; 1 if left out.")
    Long seed;

    @Option(
            names = "--as-stated",
            description = "Draws by what the car's document states of doubt alone, and assumes nothing of the rest.")
    boolean asStated;

    /** Finds fault with what does not go together. */
    public void check(LineOptions line) {
        if (draws == null && (seed != null || asStated)) {
            throw new InvalidValueException(
                    seed != null ? "--seed" : "--as-stated", "no cars are drawn", "add --draws 200, or leave it out");
        }
        if (draws != null) {
            Robustness.checkedDraws(DRAWS, draws);
            if (LineOptions.REFRESH.equals(line.line)) {
                throw new InvalidValueException(
                        DRAWS,
                        "drawn cars are all driven on one line, and --line refresh finds one for each",
                        "take --line fastest, or leave " + DRAWS + " out");
            }
        }
    }

    /** How settings stand on drawn cars, if that is asked for; progress is shown. */
    public Optional<Standings> standings(Supplier<Robustness> settings, StudyRun how, Console console) {
        if (draws == null) {
            return Optional.empty();
        }
        Robustness study = settings.get().withDraws(draws);
        study = seed == null ? study : study.withSeed(seed);
        study = asStated ? study.asStated() : study;
        try (ProgressBar bar = new ProgressBar(console, "drawn cars")) {
            return Optional.of(new Standings(study.run(how.reporting(bar))));
        }
    }
}
