package dev.lapwright.results;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Track;
import java.util.LinkedHashMap;
import java.util.Map;

/** What every result in JSON begins with: what it is, what made it, and from what. */
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
}
