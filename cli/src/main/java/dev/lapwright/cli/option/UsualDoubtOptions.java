package dev.lapwright.cli.option;

import java.util.OptionalInt;

/** Options for how well the car is known, where it costs so little that cars are drawn if nothing is said. */
public final class UsualDoubtOptions extends SeededDoubtOptions {
    /** A second or so for two setups; an interval's ends to a fifth of its width. */
    public static final int USUAL = 60;

    @Override
    OptionalInt count() {
        return isAsked() || isRefused() ? super.count() : OptionalInt.of(USUAL);
    }
}
