package dev.lapwright.study.pressures;

import dev.lapwright.tyre.GasLaw;
import dev.lapwright.tyre.Wheel;
import java.util.List;

/**
 * One tyre: its logged pairs, and the cold setting they lead to. All pressures are gauge pressures in kPa.
 *
 * @param wheel where it runs
 * @param pairs logged, oldest first, at least one; the last is the one that stands on the car
 * @param targetKpa hot pressure wanted
 */
public record TyrePressure(Wheel wheel, List<PressurePair> pairs, double targetKpa) {
    public TyrePressure {
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
