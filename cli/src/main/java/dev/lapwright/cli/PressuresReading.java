package dev.lapwright.cli;

import dev.lapwright.car.Conditions;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.files.SafeFile;
import dev.lapwright.logs.GaugeText;
import dev.lapwright.logs.PressureLog;
import dev.lapwright.results.Subject;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.study.pressures.Pressures;
import dev.lapwright.tyre.TreadTemperatures;
import dev.lapwright.tyre.Wheel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Reads what the options say of tyres and makes the study of it. */
final class PressuresReading {
    private final PressuresOptions options;
    private final Unit unit;

    PressuresReading(PressuresOptions options) {
        this.options = options;
        unit = GaugeText.unit("--unit", options.unit);
    }

    PressuresOutcome study(Subject subject) {
        Conditions day = subject.day();
        PressureDay run = new PressureDay(
                day.airTempC(), options.trackTempC == null ? day.airTempC() : options.trackTempC, day.airPressureHpa());
        List<PressurePair> pairs = new ArrayList<>();
        Map<Wheel, TreadTemperatures> tread = Map.of();
        String columns = "";
        if (options.log != null) {
            double cold = options.coldTempC == null ? Double.NaN : options.coldTempC;
            PressureLog log = PressureLog.read(DocumentSource.ofFile(SafeFile.path(options.log)), run, cold, unit);
            pairs.addAll(log.pairs());
            tread = log.tread();
            columns = log.columns();
        }
        for (String pair : options.pairs) {
            pairs.addAll(pair(pair, run));
        }
        if (pairs.isEmpty()) {
            throw new InvalidValueException(
                    "pressures", "no pair of cold and hot is given", "add --pair all:17psi:24psi, or --log FILE");
        }
        Pressures study = Pressures.of(subject.car(), subject.track(), day, pairs);
        for (Map.Entry<Wheel, TreadTemperatures> one : tread.entrySet()) {
            study = study.withTread(one.getKey(), one.getValue());
        }
        for (String text : options.treads) {
            study = tread(study, text);
        }
        for (String target : options.targets) {
            List<String> parts = parts("--target", target, 2, "front:24psi");
            double kpa = GaugeText.kpa("--target " + target, parts.get(1), unit);
            for (Wheel wheel : Wheel.named(parts.get(0))) {
                study = study.withTarget(wheel, kpa);
            }
        }
        PressureResult result = next(study, pairs.get(pairs.size() - 1)).run();
        return new PressuresOutcome(subject, result, unit, columns);
    }

    private Pressures next(Pressures study, PressurePair last) {
        PressureDay before = last.day();
        double air = options.nextAirTempC == null ? before.airTempC() : options.nextAirTempC;
        double shift = air - before.airTempC();
        double track = options.nextTrackTempC == null ? before.trackTempC() + shift : options.nextTrackTempC;
        double cold = options.nextColdTempC == null ? last.coldTempC() + shift : options.nextColdTempC;
        return study.forDay(new PressureDay(air, track, before.airPressureHpa()), cold);
    }

    private List<PressurePair> pair(String text, PressureDay run) {
        List<String> parts = parts("--pair", text, 3, "FL:17psi:24psi");
        double cold = GaugeText.kpa("--pair " + text, parts.get(1), unit);
        double hot = GaugeText.kpa("--pair " + text, parts.get(2), unit);
        double coldTemp = options.coldTempC == null ? run.airTempC() : options.coldTempC;
        return Wheel.named(parts.get(0)).stream()
                .map(wheel -> new PressurePair(wheel, cold, hot, coldTemp, run))
                .toList();
    }

    private static Pressures tread(Pressures study, String text) {
        List<String> parts = parts("--tread", text, 2, "FL:92/86/80");
        String[] temperatures = parts.get(1).split("/", -1);
        double[] values = new double[3];
        boolean numbers = temperatures.length == values.length;
        for (int i = 0; numbers && i < values.length; i++) {
            values[i] = DecimalText.number(temperatures[i]).orElse(Double.NaN);
            numbers = !Double.isNaN(values[i]);
        }
        if (!numbers) {
            throw new InvalidValueException(
                    "--tread " + text,
                    "'" + parts.get(1) + "' is not three temperatures",
                    "write inner/middle/outer, as in FL:92/86/80");
        }
        Pressures with = study;
        for (Wheel wheel : Wheel.named(parts.get(0))) {
            with = with.withTread(wheel, new TreadTemperatures(values[0], values[1], values[2]));
        }
        return with;
    }

    private static List<String> parts(String option, String text, int count, String example) {
        List<String> parts = List.of(text.split(":", -1));
        if (parts.size() != count) {
            throw new InvalidValueException(
                    option + " " + text,
                    "it has " + parts.size() + " parts, not " + count,
                    "write it as in " + example);
        }
        return parts;
    }
}
