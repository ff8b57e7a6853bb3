package dev.lapwright.study.pressures;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Lap;
import dev.lapwright.tyre.GasLaw;
import dev.lapwright.tyre.TreadTemperatures;
import dev.lapwright.tyre.Wheel;
import java.util.List;
import java.util.Map;

/**
 * Cold pressures to set, and what pressures away from the ideal cost.
 *
 * @param lap with all hot pressures at the car's ideal
 * @param energy into each tyre on that lap
 * @param tyres those with logged pairs, in the order of {@link Wheel}
 * @param next the day to set up for
 * @param coldTempC temperature of the tyres when they will be set, degC
 * @param weather other days
 * @param costs of distance from the ideal, nearest first
 * @param logged the car at the hot pressures logged last; an axle without pairs stays at the ideal
 * @param measuredCost lap time at the hot pressures logged last, over that at the ideal, s; an axle without pairs stays at
 *     the ideal
 * @param tread temperatures across the treads, where known
 */
public record PressureResult(
        Lap lap,
        TyreEnergy energy,
        List<Tyre> tyres,
        PressureDay next,
        double coldTempC,
        List<PressureDay> weather,
        List<Cost> costs,
        Car logged,
        double measuredCost,
        Map<Wheel, TreadTemperatures> tread) {
    public PressureResult {
        tyres = List.copyOf(tyres);
        weather = List.copyOf(weather);
        costs = List.copyOf(costs);
        tread = Map.copyOf(tread);
    }

    /** The car with all tyres so far from the car's ideal hot pressures, kPa. */
    public Car away(double awayKpa) {
        Car ideal = lap.vehicle().car();
        return ideal.with(Quantity.HOT_PRESSURE_FRONT, ideal.value(Quantity.HOT_PRESSURE_FRONT) + awayKpa)
                .with(Quantity.HOT_PRESSURE_REAR, ideal.value(Quantity.HOT_PRESSURE_REAR) + awayKpa);
    }

    /** The cold setting that a tyre's pairs lead to, kPa gauge. */
    public double nextCold(Tyre tyre) {
        return tyre.coldFor(next, coldTempC);
    }

    /**
     * Cost on a lap of hot pressures away from the ideal.
     *
     * @param awayKpa distance from the ideal, kPa
     * @param gripLost share of grip lost at an axle so far away, 0 to 1
     * @param front lap time over that at the ideal, front tyres away, s
     * @param rear the same, rear tyres away, s
     * @param both the same, all tyres away, s
     */
    public record Cost(double awayKpa, double gripLost, double front, double rear, double both) {}

    /**
     * Tyre with its logged pairs, and the cold setting they lead to. All pressures are gauge pressures in kPa.
     *
     * @param wheel where it runs
     * @param pairs logged, oldest first, at least one; the last is the one that stands on the car
     * @param targetKpa hot pressure wanted
     */
    public record Tyre(Wheel wheel, List<PressurePair> pairs, double targetKpa) {
        public Tyre {
            pairs = List.copyOf(pairs);
            PressurePair.checkGauge(wheel.code() + " target", targetKpa);
        }

        /** The pair logged last. */
        public PressurePair last() {
            return pairs.get(pairs.size() - 1);
        }

        /** Mean over the pairs of how much hotter than air and track the gas ran, K. */
        public double rise() {
            return pairs.stream().mapToDouble(PressurePair::rise).average().orElseThrow();
        }

        /** Greatest less least rise of the pairs, K; 0 with one pair. */
        public double riseSpread() {
            double most = pairs.stream().mapToDouble(PressurePair::rise).max().orElseThrow();
            return most - pairs.stream().mapToDouble(PressurePair::rise).min().orElseThrow();
        }

        /** Gas temperature to expect hot on a day, degC. */
        public double hotTempC(PressureDay day) {
            return day.referenceC() + rise();
        }

        /** Cold pressure, set at a temperature (degC), that gives the target on a day, kPa. */
        public double coldFor(PressureDay day, double coldTempC) {
            return GasLaw.pressure(targetKpa, hotTempC(day), coldTempC, day.airPressureHpa() / 10);
        }

        /** Hot pressure on a day if the tyre is set to a cold pressure (kPa) at a temperature (degC), kPa. */
        public double hotFrom(double coldKpa, double coldTempC, PressureDay day) {
            return GasLaw.pressure(coldKpa, coldTempC, hotTempC(day), day.airPressureHpa() / 10);
        }

        /** How much one more kPa cold adds hot on a day. */
        public double hotPerCold(PressureDay day, double coldTempC) {
            return hotFrom(last().coldKpa() + 1, coldTempC, day) - hotFrom(last().coldKpa(), coldTempC, day);
        }
    }
}
