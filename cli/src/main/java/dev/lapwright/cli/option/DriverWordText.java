package dev.lapwright.cli.option;

import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fit.LimitWord;
import dev.lapwright.study.robust.DriverWord;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A driver's word as it is typed: T6=rear, neutral at T5, T3=92km/h, top=251km/h+-3, lap=1:36.4. */
public final class DriverWordText {
    /** As which it is given. */
    public static final String DRIVER = "--driver";

    private static final String EXAMPLES =
            "say T6=rear, neutral at T5, T3=92km/h, top=251km/h or lap=1:36.4, each with +-ERROR if known";

    private static final double KMH = 3.6;
    private static final double MPH = 3600 / 1609.344;
    private static final Pattern AT = Pattern.compile("(\\S+)\\s+(?:at|in)\\s+(\\S.*)");
    private static final Pattern SPEED =
            Pattern.compile("([0-9.]+)\\s*(km/h|kmh|mph|m/s)?(?:\\s*(?:\\+-|\u00b1)\\s*([0-9.]+))?");
    private static final Pattern TIME =
            Pattern.compile("(?:([0-9]+):)?([0-9.]+)\\s*s?(?:\\s*(?:\\+-|\u00b1)\\s*([0-9.]+))?");

    private DriverWordText() {}

    /** The word; refuses what is none. */
    public static DriverWord read(String text) {
        String word = text.strip();
        Matcher at = AT.matcher(word);
        int equals = word.lastIndexOf('=');
        String place = at.matches()
                ? at.group(2)
                : equals < 0 ? "" : word.substring(0, equals).strip();
        String what = (at.matches() ? at.group(1) : word.substring(equals + 1).strip()).toLowerCase(Locale.ROOT);
        return switch (what) {
            case "front" -> limit(place, LimitWord.End.FRONT);
            case "rear" -> limit(place, LimitWord.End.REAR);
            case "both", "neutral" -> limit(place, LimitWord.End.BOTH);
            default -> figure(text, place, what);
        };
    }

    private static DriverWord limit(String corner, LimitWord.End end) {
        return new DriverWord.OfLimit(LimitWord.of(corner, end));
    }

    private static DriverWord figure(String text, String place, String what) {
        if (place.equalsIgnoreCase("lap")) {
            Matcher time = TIME.matcher(what);
            if (!time.matches()) {
                throw unread(text);
            }
            double minutes = time.group(1) == null ? 0 : number(text, time.group(1));
            return figure(
                    text,
                    DriverWord.Reading.LAP_TIME,
                    "",
                    60 * minutes + number(text, time.group(2)),
                    time.group(3),
                    1);
        }
        Matcher speed = SPEED.matcher(what);
        if (place.isEmpty() || !speed.matches()) {
            throw unread(text);
        }
        String unit = speed.group(2) == null ? "km/h" : speed.group(2);
        double per = unit.equals("m/s") ? 1 : unit.equals("mph") ? MPH : KMH;
        boolean top = place.equalsIgnoreCase("top");
        return figure(
                text,
                top ? DriverWord.Reading.TOP_SPEED : DriverWord.Reading.MINIMUM_SPEED,
                top ? "" : place,
                number(text, speed.group(1)) / per,
                speed.group(3),
                per);
    }

    private static DriverWord figure(
            String text, DriverWord.Reading reading, String corner, double value, String error, double per) {
        if (!(value > 0)) {
            throw unread(text);
        }
        return error == null
                ? DriverWord.OfFigure.of(reading, corner, value)
                : new DriverWord.OfFigure(reading, corner, value, number(text, error) / per);
    }

    private static double number(String text, String digits) {
        OptionalDouble number = DecimalText.number(digits);
        return number.orElseThrow(() -> unread(text));
    }

    private static InvalidValueException unread(String text) {
        return new InvalidValueException(DRIVER + " " + text, "it is no word of a driver that is known here", EXAMPLES);
    }
}
