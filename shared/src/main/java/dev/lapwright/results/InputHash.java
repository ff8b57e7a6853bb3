package dev.lapwright.results;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.fit.DrivenLap;
import dev.lapwright.fit.FitResult;
import dev.lapwright.lap.Lap;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.ride.RideResult;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Track;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
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

    /** Car as set up, conditions, and circuit. */
    static InputHash of(Car car, Conditions conditions, Track track) {
        InputHash hash = new InputHash();
        hash.inputs.putAll(inputs(car, conditions, track));
        return hash;
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
        Map<String, Object> inputs = inputs(lap.vehicle().car(), lap.vehicle().conditions(), lap.track());
        inputs.put("stations", lap.count());
        return sha256(JsonLayout.text(inputs));
    }

    /** Car as set up, conditions, circuit, the axes, and how strong tow and head wind are. */
    public static String of(GearingResult gearing) {
        Map<String, Object> inputs = inputs(gearing.car(), gearing.conditions(), gearing.track());
        inputs.put("axes", axes(gearing.axes()));
        Map<String, Object> scenarios = new LinkedHashMap<>();
        for (GearingResult.Scenario scenario : gearing.scenarios()) {
            scenarios.put(scenario.kind().name(), scenario.amount());
        }
        inputs.put("scenarios", scenarios);
        return sha256(JsonLayout.text(inputs));
    }

    /** Car as set up, conditions, speed, and what it was driven over. */
    public static String of(RideResult ride) {
        Map<String, Object> inputs = new LinkedHashMap<>();
        inputs.put("car", DocumentWriter.tree(ride.car()));
        inputs.put("settings", ride.car().settings());
        inputs.put("conditions", DocumentWriter.tree(ride.conditions()));
        inputs.put("speed", ride.speed());
        inputs.put("over", RideSummary.over(ride));
        return sha256(JsonLayout.text(inputs));
    }

    /** Car as set up, conditions, circuit, the laps driven, what was fitted and with which confidence. */
    public static String of(FitResult fit) {
        Map<String, Object> inputs = inputs(fit.car(), fit.conditions(), fit.track());
        List<Object> laps = new ArrayList<>();
        for (FitResult.LapFit fitted : fit.laps()) {
            DrivenLap lap = fitted.lap();
            laps.add(List.of(
                    list(lap.distance()),
                    list(lap.speed()),
                    list(lap.time()),
                    list(lap.throttle()),
                    list(lap.brake()),
                    list(lap.gear()),
                    list(lap.longitudinalAcceleration()),
                    list(lap.lateralAcceleration())));
        }
        inputs.put("laps", laps);
        inputs.put(
                "fitted",
                fit.estimates().stream().map(e -> e.parameter().name()).toList());
        inputs.put("confidence", fit.confidence());
        return sha256(JsonLayout.text(inputs));
    }

    /** Car as set up, circuits with their weights, days, what is searched, limits and seed. */
    public static String of(OptimisationResult result) {
        Map<String, Object> inputs = new LinkedHashMap<>();
        inputs.put("car", DocumentWriter.tree(result.task().car()));
        inputs.put("settings", result.task().car().settings());
        List<Object> circuits = new ArrayList<>();
        for (Optimisation.Circuit circuit : result.task().circuits()) {
            Map<String, Object> one = new LinkedHashMap<>(DocumentWriter.tree(circuit.track()));
            one.put("weight", circuit.weight());
            circuits.add(one);
        }
        inputs.put("circuits", circuits);
        inputs.put(
                "days", result.task().days().stream().map(DocumentWriter::tree).toList());
        inputs.put("worst", result.task().forTheWorstDay());
        inputs.put("limits", result.task().limits().toString());
        inputs.put("seed", result.task().seed());
        Map<String, Object> axes = new LinkedHashMap<>();
        result.search().axes().forEach(axis -> axes.put(axis.name(), axis.settings()));
        inputs.put("axes", axes);
        return sha256(JsonLayout.text(inputs));
    }

    /** Axes by name with their values. */
    static Map<String, Object> axes(List<SweepAxis> list) {
        Map<String, Object> axes = new LinkedHashMap<>();
        for (SweepAxis axis : list) {
            axes.put(axis.name(), list(axis.values()));
        }
        return axes;
    }

    private static Map<String, Object> inputs(Car car, Conditions conditions, Track track) {
        Map<String, Object> inputs = new LinkedHashMap<>();
        inputs.put("car", DocumentWriter.tree(car));
        inputs.put("settings", car.settings());
        inputs.put("conditions", DocumentWriter.tree(conditions));
        inputs.put("circuit", DocumentWriter.tree(track));
        return inputs;
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
