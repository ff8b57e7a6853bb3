package dev.lapwright.cli.option;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.results.Standings;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.robust.Robustness;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Supplier;
import picocli.CommandLine.Option;

/** Options for how well the car is known. */
public class DoubtOptions {
    /** As which the number of draws is given. */
    public static final String DRAWS = "--draws";

    private static final String NO_DOUBT = "--no-doubt";

    @Option(
            names = DRAWS,
            paramLabel = "N",
            description =
                    "Draws so many cars that this one may be, by what is known of it, and tells each difference with its"
                            + " interval of nine in ten and its chance; 200 are a good number.")
    Integer draws;

    @Option(
            names = NO_DOUBT,
            description =
                    "Draws no cars. If neither this nor " + DRAWS + " is given, compare, pressures and stint draw "
                            + UsualDoubtOptions.USUAL + " and all others none.")
    boolean none;

    @Option(
            names = "--as-stated",
            description = "Draws by what the car's document states of doubt alone, and assumes nothing of the rest.")
    boolean asStated;

    @Option(
            names = {DriverWordText.DRIVER, LimitWordText.GIVES_UP},
            paramLabel = "WORD",
            description =
                    "What the driver says of the setup above. Which end gives up first: front, rear or neutral, of one corner, as in"
                            + " T6=rear, or of all. Or what was read: T3=92km/h, the slowest there, top=251km/h, lap=1:36.4; +-ERROR"
                            + " behind it. May be repeated. Only drawn cars that go with it count.")
    List<String> said = new ArrayList<>();

    /** How many cars are drawn; none if that is not asked for. */
    OptionalInt count() {
        return draws == null ? OptionalInt.empty() : OptionalInt.of(draws);
    }

    /** Name of an option that asks for something of the draws; null if none is given. */
    String ofTheDraws() {
        if (!said.isEmpty()) {
            return DriverWordText.DRIVER;
        }
        return asStated ? "--as-stated" : null;
    }

    /** Refuses what the driver says where nothing listens. */
    void refuseWords(String study) {
        if (!said.isEmpty()) {
            throw new InvalidValueException(
                    DriverWordText.DRIVER, "the draws of " + study + " do not listen to it", "leave it out");
        }
    }

    /** What of it the draws depend on, in words. */
    public List<String> asked() {
        List<String> asked = new ArrayList<>(List.of(DRAWS + " " + count(), "--as-stated " + asStated));
        asked.addAll(said);
        return asked;
    }

    /** Whether cars are drawn. */
    public boolean isDrawing() {
        return count().isPresent();
    }

    /** Whether a number of draws was asked for by name. */
    public boolean isAsked() {
        return draws != null;
    }

    /** Whether drawn cars were refused by name. */
    boolean isRefused() {
        return none;
    }

    /** Finds fault with what does not go together. */
    public void check(LineOptions line) {
        if (none && (isAsked() || ofTheDraws() != null)) {
            throw new InvalidValueException(
                    NO_DOUBT,
                    "it says to draw none, and " + (isAsked() ? DRAWS : ofTheDraws()) + " to draw some",
                    "keep one of them");
        }
        if (count().isEmpty() && ofTheDraws() != null) {
            throw new InvalidValueException(ofTheDraws(), "no cars are drawn", "add --draws 200, or leave it out");
        }
        said.forEach(DriverWordText::read);
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
        if (count().isEmpty()) {
            return Optional.empty();
        }
        Robustness study = settings.get().withDraws(count().getAsInt());
        study = asStated ? study.asStated() : study;
        study = study.hearing(said.stream().map(DriverWordText::read).toList());
        try (ProgressBar bar = new ProgressBar(console, "drawn cars")) {
            return Optional.of(new Standings(study.run(how.reporting(bar))));
        }
    }
}
