package dev.lapwright.cli.option;

import dev.lapwright.fault.InvalidValueException;
import java.util.OptionalInt;
import picocli.CommandLine.Option;

/** Options for how well the car is known, where it costs so little that cars are drawn if nothing is said. */
public final class UsualDoubtOptions extends SeededDoubtOptions {
    /** A second or so for two setups; an interval's ends to a fifth of its width. */
    public static final int USUAL = 60;

    @Option(
            names = "--no-doubt",
            description = "Draws no cars. If neither this nor " + DRAWS + " is given, " + USUAL + " are drawn.")
    boolean none;

    @Override
    OptionalInt count() {
        if (none) {
            return OptionalInt.empty();
        }
        return isAsked() ? super.count() : OptionalInt.of(USUAL);
    }

    @Override
    public void check(LineOptions line) {
        if (none && (isAsked() || ofTheDraws() != null)) {
            throw new InvalidValueException(
                    "--no-doubt",
                    "it says to draw none, and " + (isAsked() ? DRAWS : ofTheDraws()) + " to draw some",
                    "keep one of them");
        }
        super.check(line);
    }
}
