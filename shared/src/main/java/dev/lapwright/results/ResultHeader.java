package dev.lapwright.results;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Track;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/** Beginning of every result in JSON: what it is, what made it, and from what. */
final class ResultHeader {
    /** Name of the hash of what a result was computed from. */
    static final String HASH = "inputsSha256";

    private ResultHeader() {}

    static Map<String, Object> of(String mark, String inputHash, Car car, Track track, Conditions conditions) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put(DocumentKind.MARK, mark);
        tree.put("version", version());
        tree.put(HASH, inputHash);
        tree.put("car", car.name());
        tree.put("circuit", track.name());
        tree.put("circuitLengthM", track.length());
        tree.put("settings", car.settings());
        tree.put("conditions", day(conditions));
        return tree;
    }

    /** The same with a hash that is taken when it is first read: within another result nobody reads it. */
    static Map<String, Object> of(
            String mark, Supplier<String> inputHash, Car car, Track track, Conditions conditions) {
        Map<String, Object> tree = of(mark, "", car, track, conditions);
        tree.put(HASH, new LaterText(inputHash));
        return tree;
    }

    /** The same about a lap. */
    static Map<String, Object> later(String mark, Lap lap) {
        return of(
                mark,
                () -> InputHash.of(lap),
                lap.vehicle().car(),
                lap.track(),
                lap.vehicle().conditions());
    }

    static Map<String, Object> of(String mark, String inputHash, Lap lap) {
        return of(
                mark, inputHash, lap.vehicle().car(), lap.track(), lap.vehicle().conditions());
    }

    static Map<String, Object> day(Conditions conditions) {
        Map<String, Object> day = new LinkedHashMap<>();
        day.put("name", conditions.name());
        for (String name : Conditions.NAMES) {
            day.put(name.substring(name.indexOf('.') + 1), conditions.value(name));
        }
        return day;
    }

    /** Version in the manifest of the jar these classes came from. */
    static String version() {
        String version = ResultHeader.class.getPackage().getImplementationVersion();
        return version == null ? "unreleased" : version;
    }

    /** Text that is put together when it is first read: who leaves it out does not pay for it. */
    private static final class LaterText implements CharSequence {
        private Supplier<String> source;
        private String text;

        LaterText(Supplier<String> source) {
            this.source = source;
        }

        @Override
        public synchronized String toString() {
            if (text == null) {
                text = source.get();
                source = null;
            }
            return text;
        }

        @Override
        public int length() {
            return toString().length();
        }

        @Override
        public char charAt(int index) {
            return toString().charAt(index);
        }

        @Override
        public CharSequence subSequence(int start, int end) {
            return toString().subSequence(start, end);
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof LaterText that && toString().equals(that.toString());
        }

        @Override
        public int hashCode() {
            return toString().hashCode();
        }
    }
}
