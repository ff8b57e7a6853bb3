package dev.lapwright.cli.option;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fit.LimitWord;
import java.util.Arrays;

/** A driver's word on which axle gives up first, as it is typed: front, or T6=rear. */
public final class LimitWordText {
    /** As which it is given. */
    public static final String GIVES_UP = "--gives-up";

    private LimitWordText() {}

    /** The word; refuses what is no end of a car. */
    public static LimitWord read(String text) {
        int at = text.lastIndexOf('=');
        String corner = at < 0 ? "" : text.substring(0, at).trim();
        String end = text.substring(at + 1).trim();
        return Arrays.stream(LimitWord.End.values())
                .filter(one -> one.name().equalsIgnoreCase(end))
                .findFirst()
                .map(one -> LimitWord.of(corner, one))
                .orElseThrow(() -> new InvalidValueException(
                        GIVES_UP, "'" + end + "' is no end of a car", "say front, rear or both, as in T6=front"));
    }
}
