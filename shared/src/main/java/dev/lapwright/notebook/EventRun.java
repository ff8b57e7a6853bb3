package dev.lapwright.notebook;

import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.tyre.TreadTemperatures;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Run of an event: how the car was set up, what was measured, what the laps were, what was said and what had been expected.
 *
 * @param settings all that differs from the car's document, in the adjustments' units, in the order of their names; unmodifiable
 * @param laps in the order of driving; empty before it was driven
 * @param tyres pressures and temperatures
 * @param fuelLitres on board at its beginning; empty if nobody said
 * @param expected of its laps beside those of the run before; empty if nothing was
 * @param words of people
 * @param log in which its laps stand with their speeds, beside the runs; empty where none was kept
 */
public record EventRun(
        Map<String, Double> settings,
        List<TimedLap> laps,
        TyreReadings tyres,
        OptionalDouble fuelLitres,
        Expected expected,
        Words words,
        Optional<KeptLog> log) {
    /** Tyres by name: front left, front right, rear left, rear right. */
    public static final List<String> TYRES = List.of("FL", "FR", "RL", "RR");

    private static final double MOST_LITRES = 1000;

    public EventRun {
        settings = Collections.unmodifiableMap(new TreeMap<>(settings));
        laps = List.copyOf(laps);
        if (fuelLitres.isPresent()) {
            Check.inRange("fuel (l)", fuelLitres.getAsDouble(), 0, MOST_LITRES);
        }
    }

    /** Of a setup, nothing else being known. */
    public static EventRun of(Map<String, Double> settings) {
        return new EventRun(
                settings,
                List.of(),
                TyreReadings.NONE,
                OptionalDouble.empty(),
                Expected.NOTHING,
                Words.NONE,
                Optional.empty());
    }

    /** The same with other laps. */
    public EventRun with(List<TimedLap> other) {
        return new EventRun(settings, other, tyres, fuelLitres, expected, words, log);
    }

    /** The same with other readings. */
    public EventRun with(TyreReadings other) {
        return new EventRun(settings, laps, other, fuelLitres, expected, words, log);
    }

    /** The same with fuel on board. */
    public EventRun with(OptionalDouble litres) {
        return new EventRun(settings, laps, tyres, litres, expected, words, log);
    }

    /** The same with another expectation. */
    public EventRun with(Expected other) {
        return new EventRun(settings, laps, tyres, fuelLitres, other, words, log);
    }

    /** The same with other words. */
    public EventRun with(Words other) {
        return new EventRun(settings, laps, tyres, fuelLitres, expected, other, log);
    }

    /** The same with a log of its laps. */
    public EventRun with(KeptLog other) {
        return new EventRun(settings, laps, tyres, fuelLitres, expected, words, Optional.of(other));
    }

    /**
     * Log of driven laps that is kept with a run, so that all runs can be fitted together.
     *
     * @param file its name among the event's logs
     * @param columns which of its columns holds what, as {@code speed=HEADING:km/h}, where its headings do not tell
     */
    public record KeptLog(String file, List<String> columns) {
        public KeptLog {
            columns = List.copyOf(columns);
        }
    }

    /**
     * Lap as the timing screen shows it.
     *
     * @param time s
     * @param flag what is said of it
     */
    public record TimedLap(double time, TimingLog.Flag flag) {
        /** Nobody laps a circuit faster, or takes an hour for it, s. */
        private static final double SHORTEST = 5;

        private static final double LONGEST = 3600;

        public TimedLap {
            Check.inRange("lap time (s)", time, SHORTEST, LONGEST);
        }
    }

    /**
     * Readings of the tyres by their names; any may be missing.
     *
     * @param coldKpa gauge pressures as set
     * @param hotKpa gauge pressures as read after it
     * @param treads temperatures across the treads
     */
    public record TyreReadings(
            Map<String, Double> coldKpa, Map<String, Double> hotKpa, Map<String, TreadTemperatures> treads) {
        /** Nothing read. */
        public static final TyreReadings NONE = new TyreReadings(Map.of(), Map.of(), Map.of());

        private static final double LEAST_KPA = 20;
        private static final double MOST_KPA = 1000;

        public TyreReadings {
            coldKpa = ordered("cold", coldKpa);
            hotKpa = ordered("hot", hotKpa);
            treads = ordered("tread", treads);
            coldKpa.forEach((tyre, kpa) -> Check.inRange("cold " + tyre + " (kPa)", kpa, LEAST_KPA, MOST_KPA));
            hotKpa.forEach((tyre, kpa) -> Check.inRange("hot " + tyre + " (kPa)", kpa, LEAST_KPA, MOST_KPA));
        }

        private static <V> Map<String, V> ordered(String what, Map<String, V> values) {
            Map<String, V> ordered = new LinkedHashMap<>();
            TYRES.stream().filter(values::containsKey).forEach(tyre -> ordered.put(tyre, values.get(tyre)));
            if (ordered.size() < values.size()) {
                throw new InvalidValueException(
                        what, "one of " + values.keySet() + " is no tyre", "name " + String.join(", ", TYRES));
            }
            return Collections.unmodifiableMap(ordered);
        }
    }

    /**
     * What the lap time was expected to change by, beside the run before.
     *
     * @param difference s, minus where faster
     * @param deviation one standard deviation of it, s
     */
    public record Expected(OptionalDouble difference, OptionalDouble deviation) {
        /** Nothing was expected. */
        public static final Expected NOTHING = new Expected(OptionalDouble.empty(), OptionalDouble.empty());

        private static final double MOST = 600;

        public Expected {
            if (difference.isPresent()) {
                Check.inRange("expected (s)", difference.getAsDouble(), -MOST, MOST);
            }
            if (deviation.isPresent()) {
                Check.inRange("doubt of what was expected (s)", deviation.getAsDouble(), 0, MOST);
            }
        }
    }

    /**
     * What people say of it, each in one line; empty where nothing.
     *
     * @param driver the driver's words
     * @param tyres which tyres were on, how worn
     * @param remark of the garage
     */
    public record Words(String driver, String tyres, String remark) {
        /** Nothing said. */
        public static final Words NONE = new Words("", "", "");
    }
}
