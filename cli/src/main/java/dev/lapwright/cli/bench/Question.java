package dev.lapwright.cli.bench;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.LineKind;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.report.UnitSystem;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * State of the page, and so a question: what lap is driven, what it is held against, and what is looked at.
 *
 * @param car name in the catalogue
 * @param circuit name in the catalogue
 * @param line that all laps are driven on
 * @param now the setup and day in hand
 * @param pins setups and days kept for comparison; the first is the reference
 * @param hand what is being turned; empty if nothing is
 * @param view which part of the page is looked at
 * @param zoom distances between which every station is wanted, m
 * @param laps clean laps there are to try something, both setups together
 * @param scatter standard deviation of the driver's lap times, s
 * @param minutes length of a race, min
 * @param said what the driver says of the reference
 * @param units that the page reads
 */
record Question(
        String car,
        String circuit,
        LineWish line,
        Stand now,
        List<Stand> pins,
        String hand,
        String view,
        Zoom zoom,
        int laps,
        double scatter,
        double minutes,
        List<String> said,
        UnitSystem units) {
    /** Kept for comparison at most. */
    static final int MOST_PINS = 6;

    /** What a driver says, at most. */
    static final int MOST_WORDS = 12;

    /** Kind of file that a state is saved as. */
    static final String MARK = "bench/1";

    private static final int MOST_SETTINGS = 200;
    private static final Set<String> NAMES = Set.of(
            "lapwright",
            "window",
            "number",
            "car",
            "circuit",
            "line",
            "now",
            "pins",
            "hand",
            "view",
            "zoom",
            "laps",
            "scatterS",
            "minutes",
            "said",
            "units",
            "study",
            "complaint",
            "name",
            "kind",
            "run",
            "runNumber",
            "do",
            "fields",
            "logName",
            "log",
            "answers");

    Question {
        pins = List.copyOf(pins);
        said = List.copyOf(said);
    }

    /**
     * A setup on a day, under a name.
     *
     * @param name for people
     * @param set settings of the car, by name, in the unit of each
     * @param day what differs from the standard day, by name without "conditions."
     */
    record Stand(String name, Map<String, Double> set, Map<String, Double> day) {
        private static final String PREFIX = "conditions.";

        /** As the car's document has it, on the standard day. */
        static final Stand STANDARD = new Stand(Setup.STANDARD.name(), Map.of(), Map.of());

        Stand {
            set = new LinkedHashMap<>(set);
            day = new LinkedHashMap<>(day);
        }

        static Stand of(Fields fields) {
            fields.only(Set.of("name", "set", "day"));
            return new Stand(
                    Documents.checkedName("name", fields.text("name", "now")),
                    fields.numbers("set", MOST_SETTINGS),
                    fields.numbers("day", Conditions.NAMES.size()));
        }

        Setup setup() {
            return new Setup(name, set);
        }

        /** The day: the known one of these values, with its name and its doubt, or one that has been turned. */
        Conditions conditions(List<Conditions> known) {
            Conditions turned = Conditions.STANDARD.named("day as turned");
            for (Map.Entry<String, Double> one : day.entrySet()) {
                turned = turned.with(PREFIX + one.getKey(), one.getValue());
            }
            Map<String, Double> values = values(turned);
            return known.stream()
                    .filter(one -> values(one).equals(values))
                    .findFirst()
                    .orElse(turned);
        }

        /** What of a day differs from the standard one, as a stand has it. */
        static Map<String, Double> values(Conditions day) {
            Map<String, Double> values = new LinkedHashMap<>();
            for (String name : Conditions.NAMES) {
                if (day.value(name) != Conditions.STANDARD.value(name)) {
                    values.put(name.substring(PREFIX.length()), day.value(name));
                }
            }
            return values;
        }

        Map<String, Object> tree() {
            Map<String, Object> tree = new LinkedHashMap<>();
            tree.put("name", name);
            tree.put("set", set);
            tree.put("day", day);
            return tree;
        }
    }

    /**
     * Line that is asked for.
     *
     * @param word smoothest, fastest or middle, or {@link #FILE} for the one named on the command line
     * @param as the setup and day for which the fastest was found
     */
    record LineWish(String word, Stand as) {
        /** Word for the line whose file was named on the command line. */
        static final String FILE = "file";

        LineWish {
            List<String> words = new ArrayList<>();
            for (LineKind kind : LineKind.values()) {
                words.add(kind.word());
            }
            words.add(FILE);
            if (!words.contains(word)) {
                throw new InvalidValueException(
                        "line", "'" + word + "' is no line", "take " + String.join(", ", words));
            }
        }

        static LineWish of(Fields fields) {
            fields.only(Set.of("kind", "as"));
            String word = fields.text("kind", LineKind.SMOOTHEST.word());
            return new LineWish(word, fields.has("as") ? Stand.of(fields.object("as")) : Stand.STANDARD);
        }

        boolean is(LineKind kind) {
            return word.equals(kind.word());
        }

        Map<String, Object> tree() {
            Map<String, Object> tree = new LinkedHashMap<>();
            tree.put("kind", word);
            if (is(LineKind.FASTEST)) {
                tree.put("as", as.tree());
            }
            return tree;
        }
    }

    /** Part of the lap, distances in m; all of it where the second is not beyond the first. */
    record Zoom(double from, double to) {
        private static final double FARTHEST = 1e6;

        static Zoom of(Fields fields) {
            return new Zoom(fields.number("from", 0, 0, FARTHEST), fields.number("to", 0, 0, FARTHEST));
        }
    }

    /**
     * Reads one.
     *
     * @throws dev.lapwright.fault.LapwrightException saying what is wrong with it
     */
    static Question of(Fields fields) {
        fields.only(NAMES);
        List<Stand> pins = new ArrayList<>();
        fields.objects("pins", MOST_PINS).forEach(pin -> pins.add(Stand.of(pin)));
        return new Question(
                fields.text("car", ""),
                fields.text("circuit", ""),
                LineWish.of(fields.object("line")),
                Stand.of(fields.object("now")),
                pins,
                fields.text("hand", ""),
                fields.text("view", "lap"),
                Zoom.of(fields.object("zoom")),
                (int) fields.number("laps", 30, 4, 100_000),
                fields.number("scatterS", 0.3, 0.001, 60),
                fields.number("minutes", 20, 0.1, 360),
                fields.texts("said", MOST_WORDS),
                units(fields));
    }

    /** The units that a page reads: those of a word, SI where there is none. */
    static UnitSystem units(Fields fields) {
        UnitSystem units = UnitSystem.of(fields.text("units", UnitSystem.SI.name()));
        if (units == null) {
            throw new InvalidValueException("units", "there are no such units here", "take si or imperial");
        }
        return units;
    }

    /** The reference; what is in hand where nothing is pinned. */
    Stand reference() {
        return pins.isEmpty() ? now : pins.get(0);
    }

    /** For a file, or for the page to begin with. */
    Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("lapwright", MARK);
        tree.put("car", car);
        tree.put("circuit", circuit);
        tree.put("line", line.tree());
        tree.put("now", now.tree());
        tree.put("pins", pins.stream().map(Stand::tree).toList());
        tree.put("view", view);
        tree.put("laps", laps);
        tree.put("scatterS", scatter);
        tree.put("minutes", minutes);
        if (units != UnitSystem.SI) {
            tree.put("units", units.name().toLowerCase(Locale.ROOT));
        }
        if (!said.isEmpty()) {
            tree.put("said", said);
        }
        return tree;
    }

    /** The car as its document has it, set up so; refuses what it does not have. */
    static Car car(Car bare, Stand stand) {
        return bare.with(stand.setup());
    }
}
