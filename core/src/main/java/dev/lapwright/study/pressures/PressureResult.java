package dev.lapwright.study.pressures;

import dev.lapwright.lap.Lap;
import dev.lapwright.tyre.TreadTemperatures;
import dev.lapwright.tyre.Wheel;
import java.util.List;
import java.util.Map;

/**
 * A study of tyre pressures.
 *
 * @param lap with all hot pressures at the car's ideal
 * @param energy into each tyre on that lap
 * @param tyres those with logged pairs, in the order of {@link Wheel}
 * @param next the day to set up for
 * @param coldTempC temperature of the tyres when they will be set, degC
 * @param weather other days
 * @param costs of distance from the ideal, nearest first
 * @param measuredCost lap time at the hot pressures logged last, over that at the ideal, s; an axle without pairs stays at
 *     the ideal
 * @param tread temperatures across the treads, where known
 */
public record PressureResult(
        Lap lap,
        TyreEnergy energy,
        List<TyrePressure> tyres,
        PressureDay next,
        double coldTempC,
        List<PressureDay> weather,
        List<PressureCost> costs,
        double measuredCost,
        Map<Wheel, TreadTemperatures> tread) {
    public PressureResult {
        tyres = List.copyOf(tyres);
        weather = List.copyOf(weather);
        costs = List.copyOf(costs);
        tread = Map.copyOf(tread);
    }

    /** The cold setting that a tyre's pairs lead to, kPa gauge. */
    public double nextCold(TyrePressure tyre) {
        return tyre.coldFor(next, coldTempC);
    }
}
