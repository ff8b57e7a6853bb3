package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.study.pressures.Pressures;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.track.Track;
import dev.lapwright.tyre.GasLaw;
import dev.lapwright.tyre.Wheel;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Cold pressures to start from on a day: by logged pairs, or by what the car's document knows of its tyres. */
final class PressureStart {
    private static final double HPA_PER_KPA = 10;

    private final Car car;
    private final Track track;
    private final Conditions conditions;

    PressureStart(Car car, Track track, Conditions conditions) {
        this.car = car;
        this.track = track;
        this.conditions = conditions;
    }

    BriefResult.StartPressures of(List<PressurePair> logged) {
        return logged.isEmpty() ? result(supposed(), false) : result(forToday(logged), true);
    }

    private BriefResult.StartPressures result(PressureResult study, boolean logged) {
        return new BriefResult.StartPressures(
                study,
                logged,
                logged ? Double.NaN : car.value(Quantity.TYRE_TEMPERATURE),
                car.value(Quantity.HOT_PRESSURE_FRONT),
                car.value(Quantity.HOT_PRESSURE_REAR),
                Optional.empty());
    }

    /** Pressures with what it is worth to set them as wanted, where some were logged. */
    static BriefResult.StartPressures worth(BriefResult.StartPressures found, BriefDoubt doubt) {
        if (!found.logged()) {
            return found;
        }
        PressureResult study = found.study();
        Optional<RobustnessResult> drawn = doubt.beside(
                        study.logged(), List.of(study.lap().vehicle().car()))
                .value();
        double difference = -study.measuredCost();
        boolean isGain = drawn.map(all -> all.isFirmGain(all.standings().get(0)))
                .orElse(difference <= -LapTimeDifference.COUNTS);
        return new BriefResult.StartPressures(
                study,
                true,
                found.gasTempC(),
                found.hotFrontKpa(),
                found.hotRearKpa(),
                Optional.of(new BriefResult.PressureWorth(
                        difference, drawn.map(all -> all.standings().get(0)), isGain)));
    }

    /** Track and cold tyres are taken to be as much warmer or colder than at the last run as the air is. */
    private PressureResult forToday(List<PressurePair> logged) {
        PressurePair last = logged.get(logged.size() - 1);
        double warmer = conditions.airTempC() - last.day().airTempC();
        return Pressures.of(car, track, conditions, logged)
                .forDay(day(last.day().trackTempC() + warmer), last.coldTempC() + warmer)
                .run();
    }

    private PressureDay day(double trackTempC) {
        return new PressureDay(conditions.airTempC(), trackTempC, conditions.airPressureHpa());
    }

    private PressureResult supposed() {
        double air = conditions.airTempC();
        double gas = car.value(Quantity.TYRE_TEMPERATURE);
        if (!(gas > air)) {
            throw new InvalidValueException(
                    Quantity.TYRE_TEMPERATURE.path(),
                    "at " + Check.text(gas) + " degC the tyres are no warmer than the air (" + Check.text(air)
                            + " degC), so nothing is known of how far their pressure rises",
                    "give the temperature at which they run in the car's document, or log cold and hot pressures");
        }
        List<PressurePair> pairs = Arrays.stream(Wheel.values())
                .map(wheel -> supposed(wheel, gas, air))
                .toList();
        return Pressures.of(car, track, conditions, pairs).run();
    }

    private PressurePair supposed(Wheel wheel, double gas, double air) {
        double hot = car.value(wheel.isFront() ? Quantity.IDEAL_PRESSURE_FRONT : Quantity.IDEAL_PRESSURE_REAR);
        double cold = GasLaw.pressure(hot, gas, air, conditions.airPressureHpa() / HPA_PER_KPA);
        return new PressurePair(wheel, cold, hot, air, day(air));
    }
}
