package dev.lapwright.cli.document;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.car.Nearest;
import dev.lapwright.car.Unit;
import dev.lapwright.draft.CarAnswers;
import dev.lapwright.draft.DownforceClass;
import dev.lapwright.draft.DrivenWheels;
import dev.lapwright.draft.EngineKind;
import dev.lapwright.draft.TyreKind;
import dev.lapwright.draft.TyreSize;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The ten questions: how each is asked, by which option it is answered, and what an answer is. */
public enum CarQuestion {
    MASS("mass", "--mass", "Mass with driver, without fuel (as 1045, 1045kg or 2304lb)", false),
    DRIVEN("driven", "--driven", "Driven wheels (front, rear or all)", false),
    POWER(
            "power",
            "--power",
            "Power at the engine and the speed of it (as 147kW@7100, 200PS@7100, 197hp@7100; with ,turbo or ,electric behind)",
            false),
    TYRES(
            "tyres",
            "--tyres",
            "Tyres, size and kind: road, track, slick or soft-slick (as 205/50R15,track or 300/680-18,310/710-18,slick; or"
                    + " the width alone)",
            false),
    WHEELBASE("wheelbase", "--wheelbase", "Wheelbase (as 2.47, 2470mm or 97.2in; nothing if not known)", true),
    FRONT_WEIGHT(
            "front weight", "--front-weight", "Percent of the weight on the front axle (nothing if not known)", true),
    DOWNFORCE(
            "downforce",
            "--downforce",
            "Downforce: none (a road car's body), open (an open car without wings), small (a touring car's), large (splitter,"
                    + " floor and a large wing) or wings (open wheels with wings and floor)",
            false),
    GEARS(
            "gears",
            "--gears",
            "Gear ratios, a colon, and the final drive (as 3.15,2.05,1.48,1.16,0.96,0.82:4.06), or how many there are (as 6)",
            false),
    TOP_SPEED(
            "top speed",
            "--top-speed",
            "Top speed (as 235 or 146mph; with ,limiter behind where the rev limiter stops the car)",
            false),
    BRAKES(
            "brakes",
            "--brakes",
            "Hardest stop from 100 km/h (as 1.05g, or 37m for its length; nothing if nobody measured)",
            true);

    private static final String NOT_KNOWN = "?";
    private static final double MECHANICAL_HORSEPOWER_W = 745.69987158227022;
    private static final double METRIC_HORSEPOWER_W = 735.49875;
    private static final Pattern WITH_UNIT = Pattern.compile("([-+0-9.eE]+)\\s*([a-zA-Z/]*)");

    private final String title;
    private final String option;
    private final String asking;
    private final boolean mayBeOpen;

    CarQuestion(String title, String option, String asking, boolean mayBeOpen) {
        this.title = title;
        this.option = option;
        this.asking = asking;
        this.mayBeOpen = mayBeOpen;
    }

    /** In a word or two, as a contradiction names it. */
    public String title() {
        return title;
    }

    /** The option that answers it. */
    public String option() {
        return option;
    }

    /** The question as it is asked. */
    public String asking() {
        return asking;
    }

    /** Whether it may stay without an answer. */
    public boolean mayBeOpen() {
        return mayBeOpen;
    }

    /** Whether a text is no answer. */
    public static boolean isOpen(String answer) {
        return answer == null || answer.isBlank() || answer.strip().equals(NOT_KNOWN);
    }

    /** All answers together. */
    public static CarAnswers answers(String name, Function<CarQuestion, String> texts) {
        return new CarAnswers(
                name,
                MASS.number(texts.apply(MASS), Unit.KILOGRAM),
                DRIVEN.word(texts.apply(DRIVEN), DrivenWheels.values(), DrivenWheels::word),
                POWER.power(texts.apply(POWER)),
                TYRES.tyres(texts.apply(TYRES)),
                WHEELBASE.ifKnown(texts.apply(WHEELBASE), text -> WHEELBASE.number(text, Unit.METRE)),
                FRONT_WEIGHT.ifKnown(texts.apply(FRONT_WEIGHT), text -> FRONT_WEIGHT.number(text, Unit.PERCENT)),
                DOWNFORCE.word(texts.apply(DOWNFORCE), DownforceClass.values(), DownforceClass::word),
                GEARS.gears(texts.apply(GEARS)),
                TOP_SPEED.topSpeed(texts.apply(TOP_SPEED)),
                BRAKES.ifKnown(texts.apply(BRAKES), BRAKES::stop));
    }

    /** Reads one answer alone, to find fault with it at once. */
    public void check(String answer) {
        if (isOpen(answer)) {
            if (!mayBeOpen) {
                throw fault("it needs an answer", asking);
            }
            return;
        }
        switch (this) {
            case MASS -> number(answer, Unit.KILOGRAM);
            case DRIVEN -> word(answer, DrivenWheels.values(), DrivenWheels::word);
            case POWER -> power(answer);
            case TYRES -> tyres(answer);
            case WHEELBASE -> number(answer, Unit.METRE);
            case FRONT_WEIGHT -> number(answer, Unit.PERCENT);
            case DOWNFORCE -> word(answer, DownforceClass.values(), DownforceClass::word);
            case GEARS -> gears(answer);
            case TOP_SPEED -> topSpeed(answer);
            case BRAKES -> stop(answer);
        }
    }

    private OptionalDouble ifKnown(String text, Function<String, Double> read) {
        return isOpen(text) ? OptionalDouble.empty() : OptionalDouble.of(read.apply(text));
    }

    private InvalidValueException fault(String problem, String remedy) {
        return new InvalidValueException(option, problem, remedy);
    }

    private InvalidValueException notUnderstood(String text) {
        return fault("'" + text + "' is no answer", asking);
    }

    private double number(String text, Unit standard) {
        Matcher parts = WITH_UNIT.matcher(text.strip().replace("%", ""));
        if (!parts.matches()) {
            throw notUnderstood(text);
        }
        double value = DecimalText.number(parts.group(1)).orElseThrow(() -> notUnderstood(text));
        if (parts.group(2).isEmpty()) {
            return value;
        }
        Unit unit = unit(parts.group(2), standard).orElseThrow(() -> notUnderstood(text));
        return unit.convert(value, standard);
    }

    private static Optional<Unit> unit(String symbol, Unit standard) {
        return standard.alternatives().stream()
                .filter(unit -> unit.symbol().equalsIgnoreCase(symbol))
                .findFirst();
    }

    private <E> E word(String text, E[] all, Function<E, String> word) {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        List<String> words = Arrays.stream(all).map(word).toList();
        return Arrays.stream(all)
                .filter(one -> word.apply(one).equals(wanted))
                .findFirst()
                .orElseThrow(() -> fault("'" + text + "' is not known", Nearest.remedy(wanted, words)));
    }

    private static List<String> parts(String text) {
        return Arrays.stream(text.split(",", -1)).map(String::strip).toList();
    }

    private CarAnswers.Power power(String text) {
        List<String> parts = parts(text);
        EngineKind kind =
                parts.size() < 2 ? EngineKind.ASPIRATED : word(parts.get(1), EngineKind.values(), EngineKind::word);
        String[] at = parts.get(0).split("@", -1);
        if (parts.size() > 2 || at.length != 2) {
            throw notUnderstood(text);
        }
        Matcher power = WITH_UNIT.matcher(at[0].strip());
        if (!power.matches()) {
            throw notUnderstood(text);
        }
        double watts = DecimalText.number(power.group(1)).orElseThrow(() -> notUnderstood(text))
                * switch (power.group(2).toLowerCase(Locale.ROOT)) {
                    case "", "kw" -> 1000;
                    case "w" -> 1;
                    case "hp", "bhp" -> MECHANICAL_HORSEPOWER_W;
                    case "ps", "cv" -> METRIC_HORSEPOWER_W;
                    default -> throw notUnderstood(text);
                };
        return new CarAnswers.Power(watts, number(at[1], Unit.RPM), kind);
    }

    private CarAnswers.Tyres tyres(String text) {
        List<TyreSize> sizes = new ArrayList<>();
        List<TyreKind> kinds = new ArrayList<>();
        for (String part : parts(text)) {
            if (!part.isEmpty() && Character.isLetter(part.charAt(0))) {
                kinds.add(word(part, TyreKind.values(), TyreKind::word));
            } else {
                sizes.add(TyreSize.of(part));
            }
        }
        if (sizes.isEmpty() || sizes.size() > 2 || kinds.size() != 1) {
            throw notUnderstood(text);
        }
        return new CarAnswers.Tyres(sizes.get(0), sizes.get(sizes.size() - 1), kinds.get(0));
    }

    private CarAnswers.Gears gears(String text) {
        String[] halves = text.split(":", -1);
        List<Double> numbers = parts(halves[0]).stream()
                .map(part -> DecimalText.number(part).orElseThrow(() -> notUnderstood(text)))
                .toList();
        OptionalDouble finalDrive = halves.length < 2 ? OptionalDouble.empty() : DecimalText.number(halves[1]);
        if (halves.length > 2 || (halves.length == 2 && finalDrive.isEmpty())) {
            throw notUnderstood(text);
        }
        boolean counted = numbers.size() == 1 && numbers.get(0) == Math.rint(numbers.get(0));
        return counted
                ? new CarAnswers.Gears(List.of(), numbers.get(0).intValue(), finalDrive)
                : new CarAnswers.Gears(numbers, numbers.size(), finalDrive);
    }

    private CarAnswers.TopSpeed topSpeed(String text) {
        List<String> parts = parts(text);
        boolean limiter = parts.size() == 2 && parts.get(1).equalsIgnoreCase("limiter");
        if (parts.size() > 1 && !limiter) {
            throw notUnderstood(text);
        }
        double kmh = number(parts.get(0), Unit.KILOMETRE_PER_HOUR);
        return new CarAnswers.TopSpeed(Unit.KILOMETRE_PER_HOUR.convert(kmh, Unit.METRE_PER_SECOND), limiter);
    }

    /** In g; a length s tells a = v²/(2 s). */
    private double stop(String text) {
        Matcher parts = WITH_UNIT.matcher(text.strip());
        if (!parts.matches()) {
            throw notUnderstood(text);
        }
        double value = DecimalText.number(parts.group(1)).orElseThrow(() -> notUnderstood(text));
        String unit = parts.group(2).toLowerCase(Locale.ROOT);
        if (unit.equals("g") || unit.isEmpty()) {
            return value;
        }
        double metres =
                unit(unit, Unit.METRE).orElseThrow(() -> notUnderstood(text)).convert(value, Unit.METRE);
        if (!(metres > 0)) {
            throw notUnderstood(text);
        }
        return CarAnswers.STOP_FROM * CarAnswers.STOP_FROM / (2 * metres) / StandardAtmosphere.GRAVITY;
    }
}
