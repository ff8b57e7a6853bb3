package dev.lapwright.results;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.fit.DrivenLap;
import dev.lapwright.lap.Lap;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Track;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * SHA-256 (FIPS 180-4) of what a result was computed from, in hexadecimal. It is taken over the content, written in the
 * fixed form of {@link DocumentWriter}, so that spaces, units and the order of fields in the documents do not matter;
 * two results with the same hash and the same version of the tool are the same.
 */
public final class InputHash {
    private final Map<String, Object> inputs = new LinkedHashMap<>();

    /** A hash of nothing yet. */
    InputHash() {}

    /** Car as set up, and conditions. */
    static InputHash of(Car car, Conditions conditions) {
        return new InputHash()
                .with("car", DocumentWriter.tree(car))
                .with("settings", car.settings())
                .with("conditions", DocumentWriter.tree(conditions));
    }

    /** Car as set up, conditions, and circuit. */
    static InputHash of(Car car, Conditions conditions, Track track) {
        return of(car, conditions).with("circuit", DocumentWriter.tree(track));
    }

    /** The same with one more input, as {@link JsonLayout} writes it. */
    InputHash with(String name, Object value) {
        inputs.put(name, value);
        return this;
    }

    /** The hash in hexadecimal. */
    String sha256() {
        return sha256(JsonLayout.text(inputs));
    }

    /** Car as set up, conditions, circuit and its sampling. */
    public static String of(Lap lap) {
        InputHash hash =
                of(lap.vehicle().car(), lap.vehicle().conditions(), lap.track()).with("stations", lap.count());
        return (lap.isByAnotherModel() ? hash.with("model", LapModel.FULLER.word()) : hash).sha256();
    }

    /** Car as set up, conditions, circuit, how many stations it is sampled at, and the program that drives there. */
    public static String of(Car car, Conditions conditions, Track track, int stations, String program) {
        return of(car, conditions, track)
                .with("stations", stations)
                .with("program", program)
                .sha256();
    }

    /**
     * Of work about cars as set up, each on its day and on its circuit or line there.
     *
     * @param asked all else that it depends on, in any words
     */
    public static String of(List<Subject> subjects, List<String> asked) {
        InputHash hash = new InputHash().with("asked", asked);
        for (int i = 0; i < subjects.size(); i++) {
            Subject one = subjects.get(i);
            hash.with("subject " + i, of(one.car(), one.day(), one.driven()).sha256());
        }
        return hash.sha256();
    }

    /** What was logged on laps, in whatever file. */
    public static String of(List<DrivenLap> laps) {
        InputHash hash = new InputHash();
        for (int i = 0; i < laps.size(); i++) {
            DrivenLap lap = laps.get(i);
            double[][] channels = {
                lap.distance(),
                lap.speed(),
                lap.time(),
                lap.throttle(),
                lap.brake(),
                lap.gear(),
                lap.longitudinalAcceleration(),
                lap.lateralAcceleration(),
                lap.steering().angle(),
                lap.steering().yawRate()
            };
            hash.with("lap " + i, Arrays.stream(channels).map(InputHash::list).toList());
        }
        return hash.sha256();
    }

    /** Axes by name with their values. */
    static Map<String, Object> axes(List<SweepAxis> list) {
        Map<String, Object> axes = new LinkedHashMap<>();
        for (SweepAxis axis : list) {
            axes.put(axis.name(), list(axis.values()));
        }
        return axes;
    }

    /** Values as a list, for JSON. */
    public static List<Double> list(double[] values) {
        List<Double> list = new ArrayList<>(values.length);
        for (double value : values) {
            list.add(value);
        }
        return list;
    }

    static String sha256(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
