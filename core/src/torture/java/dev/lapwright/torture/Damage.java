package dev.lapwright.torture;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Damage done to a text as by a slip of the hand, a broken transfer or another program's habits: one to four pieces, the same for the same numbers. */
public final class Damage {
    private static final String ALPHABET = "{}[]\",:.-+eE0123456789 \n\ttruefalsnmkgMPaüß\\/'\0<&;=";
    private static final List<String> VALUES = List.of(
            "0",
            "-0",
            "-1",
            "1e308",
            "-1e308",
            "1e-308",
            "1e400",
            "NaN",
            "Infinity",
            "null",
            "true",
            "\"x\"",
            "[]",
            "{}",
            "1,5",
            "0x10",
            "");
    private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(\\.[0-9]+)?([eE][-+]?[0-9]+)?");
    /** One that stands by itself, as a field's value or in a cell. */
    private static final Pattern ALONE = Pattern.compile("(?<=[ ,:\\[\\n])-?[0-9]+(\\.[0-9]+)?(?=[ ,\\]}\\r\\n])");

    private static final int SPAN = 40;
    private static final int LONG_SPAN = 2000;
    private static final int MOST_TIMES = 50;

    private final StringBuilder text;
    private final Random random;

    private Damage(String text, Random random) {
        this.text = new StringBuilder(text);
        this.random = random;
    }

    /** A text, damaged: half of the time only numbers, so that it can still be read. */
    public static String to(String text, Random random) {
        Damage damage = new Damage(text, random);
        boolean mild = random.nextBoolean();
        for (int i = random.nextInt(4); i >= 0; i--) {
            if (mild) {
                damage.number(true);
            } else {
                damage.one();
            }
        }
        return damage.text.toString();
    }

    private void one() {
        if (text.isEmpty()) {
            text.append(other());
            return;
        }
        int at = random.nextInt(text.length());
        switch (random.nextInt(12)) {
            case 0 -> text.deleteCharAt(at);
            case 1 -> text.insert(at, other());
            case 2 -> text.setCharAt(at, other());
            case 3 -> text.insert(at, span(at, SPAN));
            case 4 -> text.delete(at, at + span(at, SPAN).length());
            case 5 -> text.delete(at, at + span(at, LONG_SPAN).length());
            case 6 -> text.setLength(at);
            case 7 -> text.insert(at, span(at, LONG_SPAN).repeat(1 + random.nextInt(MOST_TIMES)));
            case 8 -> line(at);
            default -> number(random.nextBoolean());
        }
    }

    private char other() {
        return ALPHABET.charAt(random.nextInt(ALPHABET.length()));
    }

    private String span(int at, int most) {
        return text.substring(at, Math.min(text.length(), at + 1 + random.nextInt(most)));
    }

    /** A line twice, away, or before the first. */
    private void line(int at) {
        int from = text.lastIndexOf("\n", at) + 1;
        int end = text.indexOf("\n", at);
        int to = end < 0 ? text.length() : end + 1;
        if (from >= to) {
            return;
        }
        String line = text.substring(from, to);
        switch (random.nextInt(3)) {
            case 0 -> text.insert(from, line);
            case 1 -> text.delete(from, to);
            default -> text.insert(0, line);
        }
    }

    /** A number that is a quarter larger or smaller, or so; or else another, in another unit, or none. */
    private void number(boolean mild) {
        List<MatchResult> numbers =
                (mild ? ALONE : NUMBER).matcher(text).results().toList();
        if (numbers.isEmpty()) {
            return;
        }
        MatchResult one = numbers.get(random.nextInt(numbers.size()));
        String was = one.group();
        if (mild) {
            double scale = Math.exp(random.nextGaussian() / 4);
            String other = BigDecimal.valueOf(Double.parseDouble(was) * scale)
                    .round(MathContext.DECIMAL32)
                    .toPlainString();
            text.replace(one.start(), one.end(), other);
            return;
        }
        text.replace(
                one.start(),
                one.end(),
                switch (random.nextInt(6)) {
                    case 0 -> numbers.get(random.nextInt(numbers.size())).group();
                    case 1 -> was.startsWith("-") ? was.substring(1) : "-" + was;
                    case 2 -> was + "000";
                    case 3 -> Double.toString(Double.parseDouble(was) / 1000);
                    default -> VALUES.get(random.nextInt(VALUES.size()));
                });
    }
}
