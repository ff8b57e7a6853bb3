package dev.lapwright.notebook;

import dev.lapwright.car.Car;
import dev.lapwright.car.Setup;
import dev.lapwright.car.Unit;
import dev.lapwright.documents.SettingText;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.PlainText;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentFault;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.logs.LapTimes;
import dev.lapwright.report.Numbers;
import dev.lapwright.text.NearestWord;
import dev.lapwright.tyre.TreadTemperatures;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Plain text of a run: a line for each thing, its name, a colon, and what it was, as a person would write it into a notebook. Lines may stand
 * in any order and be left out; what begins with # is passed over.
 */
public final class RunText {
    /** A run without a change of setup. */
    public static final String STANDARD = "standard";

    private static final String SETUP = "setup";
    private static final String FUEL = "fuel";
    private static final String COLD = "cold";
    private static final String HOT = "hot";
    private static final String TREAD = "tread";
    private static final String LAPS = "laps";
    private static final String EXPECTED = "expected";
    private static final String DRIVER = "driver";
    private static final String TYRES = "tyres";
    private static final String REMARK = "remark";
    private static final String LOG = "log";
    private static final List<String> NAMES =
            List.of(SETUP, FUEL, COLD, HOT, TREAD, LAPS, EXPECTED, DRIVER, TYRES, REMARK, LOG);
    private static final int LONGEST_LINE = 20_000;
    /** No gauge shows more of a kilopascal. */
    private static final double TENTHS = 10;
    /** Nor any timing screen more than thousandths. */
    private static final double PER_SECOND = 1000;

    private static final Pattern READING = Pattern.compile("([A-Za-z]{2})\\s*[ :]\\s*([-+0-9.]+)\\s*([A-Za-z]*)");
    private static final Pattern TREAD_READING = Pattern.compile("([A-Za-z]{2})\\s*[ :]\\s*([-+0-9./]+)(?:\\s*degC)?");
    private static final Pattern EXPECTATION =
            Pattern.compile("([-+\u2212]?[0-9.]+)\\s*s?(?:\\s*,?\\s*give or take\\s*([0-9.]+)\\s*s?)?");
    private static final Map<String, TimingLog.Flag> FLAGS = flags();

    private RunText() {}

    private static Map<String, TimingLog.Flag> flags() {
        Map<String, TimingLog.Flag> flags = new LinkedHashMap<>();
        flags.put("out", TimingLog.Flag.OUT);
        flags.put("in", TimingLog.Flag.IN);
        flags.put("spoilt", TimingLog.Flag.SPOILT);
        return flags;
    }

    /** The text of a run of a car. */
    public static String of(EventRun run, Car car) {
        StringBuilder text =
                new StringBuilder("# A run in Lapwright's notebook: plain text, any line may be edited.\n");
        line(text, SETUP, settings(run.settings(), car));
        run.fuelLitres().ifPresent(litres -> line(text, FUEL, Check.text(litres) + " l"));
        line(text, COLD, pressures(run.tyres().coldKpa()));
        line(text, HOT, pressures(run.tyres().hotKpa()));
        line(text, TREAD, treads(run.tyres().treads()));
        line(text, LAPS, laps(run.laps()));
        run.expected().difference().ifPresent(difference -> line(text, EXPECTED, expected(run.expected(), difference)));
        line(text, DRIVER, run.words().driver());
        line(text, TYRES, run.words().tyres());
        line(text, REMARK, run.words().remark());
        run.log().ifPresent(log -> line(text, LOG, log(log)));
        return text.toString();
    }

    /** A log by its file, with what its columns hold behind it. */
    private static String log(EventRun.KeptLog log) {
        return log.columns().isEmpty() ? log.file() : log.file() + ", " + String.join(", ", log.columns());
    }

    private static EventRun.KeptLog log(String text) {
        List<String> parts =
                Arrays.stream(text.split(",", -1)).map(String::strip).toList();
        if (!EventFolder.isLog(parts.get(0))) {
            throw new InvalidValueException(
                    LOG,
                    "'" + PlainText.shown(parts.get(0)) + "' is no name of a log here",
                    "name a file of the event's folder logs, ending in .csv or .txt");
        }
        return new EventRun.KeptLog(parts.get(0), parts.subList(1, parts.size()));
    }

    private static void line(StringBuilder text, String name, String content) {
        if (!content.isEmpty()) {
            text.append(name).append(": ").append(content).append('\n');
        }
    }

    /** A setup in one line: what differs from the car's document, with units; {@link #STANDARD} where nothing does. */
    public static String settings(Map<String, Double> settings, Car car) {
        if (settings.isEmpty()) {
            return STANDARD;
        }
        return settings.entrySet().stream()
                .map(setting -> (setting.getKey() + "=" + Check.text(setting.getValue()) + " "
                                + SettingText.unit(car, setting.getKey()))
                        .strip())
                .collect(Collectors.joining(", "));
    }

    private static String pressures(Map<String, Double> kpa) {
        return kpa.entrySet().stream()
                .map(one -> one.getKey() + " " + Check.text(Math.rint(TENTHS * one.getValue()) / TENTHS) + " kPa")
                .collect(Collectors.joining(", "));
    }

    private static String treads(Map<String, TreadTemperatures> treads) {
        return treads.entrySet().stream()
                .map(one -> one.getKey() + " " + Check.text(one.getValue().innerC()) + "/"
                        + Check.text(one.getValue().middleC()) + "/"
                        + Check.text(one.getValue().outerC()) + " degC")
                .collect(Collectors.joining(", "));
    }

    private static String laps(List<EventRun.TimedLap> laps) {
        return laps.stream().map(RunText::lap).collect(Collectors.joining(", "));
    }

    private static String lap(EventRun.TimedLap lap) {
        String flag = FLAGS.entrySet().stream()
                .filter(one -> one.getValue() == lap.flag())
                .map(one -> " " + one.getKey())
                .findFirst()
                .orElse("");
        return Numbers.lapTime(lap.time()) + flag;
    }

    private static String expected(EventRun.Expected expected, double difference) {
        return Check.text(difference) + " s"
                + (expected.deviation().isPresent()
                        ? ", give or take " + Check.text(expected.deviation().getAsDouble()) + " s"
                        : "");
    }

    /**
     * The run of a text.
     *
     * @param car it was driven in
     * @throws DocumentException with all that is wrong with it, by its lines
     */
    public static EventRun read(DocumentSource source, Car car) {
        Map<String, String> found = new LinkedHashMap<>();
        Map<String, Integer> places = new LinkedHashMap<>();
        List<DocumentFault> faults = new ArrayList<>();
        String[] lines = source.text().split("\\R", -1);
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i].strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            int colon = line.indexOf(':');
            String name = colon < 0 ? line : line.substring(0, colon).strip().toLowerCase(Locale.ROOT);
            if (line.length() > LONGEST_LINE) {
                faults.add(fault(i + 1, "", "the line is too long", "keep it below " + LONGEST_LINE + " characters"));
            } else if (!NAMES.contains(name)) {
                faults.add(fault(
                        i + 1,
                        "",
                        "'" + PlainText.shown(name) + "' is nothing of a run",
                        NearestWord.remedy(name, NAMES, "begin it with one of " + String.join(", ", NAMES))));
            } else if (found.containsKey(name)) {
                faults.add(fault(i + 1, name, "it is given twice", "keep one of the two"));
            } else {
                found.put(name, line.substring(colon + 1).strip());
                places.put(name, i + 1);
            }
        }
        EventRun run = EventRun.of(Map.of());
        try {
            run = new Reader(found, places, faults).run(car);
        } catch (InvalidValueException fault) {
            faults.add(fault(1, "", fault.place() + ": " + fault.problem(), fault.remedy()));
        }
        if (!faults.isEmpty()) {
            throw new DocumentException(source.name(), faults);
        }
        return run;
    }

    private static DocumentFault fault(int line, String name, String problem, String remedy) {
        return new DocumentFault(DocumentFault.Kind.FORM, name, line, 1, problem, remedy);
    }

    /** Readers of the parts, which are those of an answer on the command line too. */
    private record Reader(Map<String, String> found, Map<String, Integer> places, List<DocumentFault> faults) {
        EventRun run(Car car) {
            return new EventRun(
                    part(SETUP, text -> settings(text, car), Map.of()),
                    part(LAPS, RunText::laps, List.of()),
                    new EventRun.TyreReadings(
                            part(COLD, text -> pressures(text, Unit.KILOPASCAL), Map.of()),
                            part(HOT, text -> pressures(text, Unit.KILOPASCAL), Map.of()),
                            part(TREAD, RunText::treads, Map.of())),
                    part(FUEL, RunText::litres, OptionalDouble.empty()),
                    part(EXPECTED, RunText::expected, EventRun.Expected.NOTHING),
                    new EventRun.Words(
                            part(DRIVER, RunText::plain, ""),
                            part(TYRES, RunText::plain, ""),
                            part(REMARK, RunText::plain, "")),
                    part(LOG, text -> Optional.of(log(text)), Optional.empty()));
        }

        private <T> T part(String name, Function<String, T> read, T absent) {
            String text = found.get(name);
            if (text == null || text.isEmpty()) {
                return absent;
            }
            try {
                return read.apply(text);
            } catch (InvalidValueException fault) {
                faults.add(fault(
                        places.get(name),
                        name,
                        fault.place().equals(name) ? fault.problem() : fault.place() + ": " + fault.problem(),
                        fault.remedy()));
                return absent;
            }
        }
    }

    /** Settings written as name=value, with commas between them. */
    public static Map<String, Double> settings(String text, Car car) {
        Map<String, Double> settings = new LinkedHashMap<>();
        if (text.strip().equalsIgnoreCase(STANDARD)) {
            return settings;
        }
        for (String part : text.split(",", -1)) {
            int equals = part.indexOf('=');
            if (equals < 1) {
                throw new InvalidValueException(
                        SETUP, "'" + part.strip() + "' is no setting", "write it like rear-wing=7, or " + STANDARD);
            }
            String name = part.substring(0, equals).strip();
            settings.put(
                    name,
                    SettingText.value(car, name, part.substring(equals + 1).strip()));
        }
        car.with(new Setup("", settings));
        return settings;
    }

    /** A time as a timing screen shows it, to the thousandth, s. */
    public static double milliseconds(double time) {
        return Math.rint(PER_SECOND * time) / PER_SECOND;
    }

    /** Laps written as times with commas between them, each with out, in or spoilt behind it if it was. */
    public static List<EventRun.TimedLap> laps(String text) {
        List<EventRun.TimedLap> laps = new ArrayList<>();
        for (String part : text.split(",", -1)) {
            String[] words = part.strip().split("\\s+", 2);
            TimingLog.Flag flag = words.length < 2
                    ? TimingLog.Flag.NONE
                    : FLAGS.get(words[1].strip().toLowerCase(Locale.ROOT));
            double time = LapTimes.seconds(words[0]).orElse(Double.NaN);
            // A whole number may be what a decimal comma left.
            boolean isWhole = words[0].chars().allMatch(Character::isDigit);
            if (!(time > 0) || flag == null || isWhole) {
                throw new InvalidValueException(
                        LAPS,
                        "'" + part.strip() + "' is no lap",
                        "write laps like 1:45.103, 1:44.87, 2:01.5 out; behind a time may stand "
                                + String.join(", ", FLAGS.keySet()));
            }
            laps.add(new EventRun.TimedLap(milliseconds(time), flag));
        }
        return laps;
    }

    /**
     * Gauge pressures, kPa, written as FL 24 psi, FR 24 psi, …, with commas between them.
     *
     * @param standard unit of those without one
     */
    public static Map<String, Double> pressures(String text, Unit standard) {
        Map<String, Double> pressures = new LinkedHashMap<>();
        for (String part : text.split(",", -1)) {
            Matcher reading = READING.matcher(part.strip());
            OptionalDouble value = reading.matches() ? DecimalText.number(reading.group(2)) : OptionalDouble.empty();
            if (value.isEmpty()) {
                throw new InvalidValueException(
                        "pressure",
                        "'" + part.strip() + "' is none",
                        "write them like FL 24psi, FR 24psi, RL 23psi, RR 23psi");
            }
            Unit unit = reading.group(3).isEmpty() ? standard : Unit.ofSymbol(reading.group(3));
            put(pressures, reading.group(1), unit.convert(value.getAsDouble(), Unit.KILOPASCAL));
        }
        return pressures;
    }

    private static <V> void put(Map<String, V> values, String tyre, V value) {
        if (values.put(tyre.toUpperCase(Locale.ROOT), value) != null) {
            throw new InvalidValueException(tyre, "it is given twice", "give each tyre once");
        }
    }

    /** Temperatures across the treads, degC, written as FL 92/86/80, …, inner edge first. */
    public static Map<String, TreadTemperatures> treads(String text) {
        Map<String, TreadTemperatures> treads = new LinkedHashMap<>();
        for (String part : text.split(",", -1)) {
            Matcher reading = TREAD_READING.matcher(part.strip());
            List<OptionalDouble> values = reading.matches()
                    ? Arrays.stream(reading.group(2).split("/", -1))
                            .map(DecimalText::number)
                            .toList()
                    : List.of();
            if (values.size() != 3 || values.stream().anyMatch(OptionalDouble::isEmpty)) {
                throw new InvalidValueException(
                        TREAD, "'" + part.strip() + "' is none", "write them like FL 92/86/80, inner edge first");
            }
            put(
                    treads,
                    reading.group(1),
                    new TreadTemperatures(
                            values.get(0).getAsDouble(),
                            values.get(1).getAsDouble(),
                            values.get(2).getAsDouble()));
        }
        return treads;
    }

    /** Fuel in litres. */
    public static OptionalDouble litres(String text) {
        String number = text.strip().replaceFirst("\\s*(l|litres?)$", "");
        OptionalDouble litres = DecimalText.number(number);
        if (litres.isEmpty()) {
            throw new InvalidValueException(FUEL, "'" + text + "' is none", "write it in litres, like 38 l");
        }
        return litres;
    }

    /** What was expected, written as -0.25 s, give or take 0.1 s. */
    public static EventRun.Expected expected(String text) {
        Matcher parts = EXPECTATION.matcher(text.strip());
        OptionalDouble difference = parts.matches() ? DecimalText.number(parts.group(1)) : OptionalDouble.empty();
        if (difference.isEmpty()) {
            throw new InvalidValueException(
                    EXPECTED, "'" + text + "' is none", "write it like -0.25 s, give or take 0.1 s; minus is faster");
        }
        return new EventRun.Expected(
                difference, parts.group(2) == null ? OptionalDouble.empty() : DecimalText.number(parts.group(2)));
    }

    /** Words in one line, without what cannot be seen. */
    public static String plain(String text) {
        String words = text.strip();
        PlainText.problem(words).ifPresent(problem -> {
            throw new InvalidValueException("words", problem, "leave it out");
        });
        return words;
    }
}
