package dev.lapwright.study.stint;

import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.powertrain.FuelConsumption;

/**
 * Work of the engine on a lap, ∫ X ds/η with X the drive force at the wheels and η the share of engine torque that reaches
 * them, and the fuel for it. Neglects what the engine burns off the throttle.
 *
 * @param engineWork J, at the crankshaft
 * @param fuel kg
 */
public record FuelUse(double engineWork, double fuel) {
    /** Of a lap, by the trapezoidal rule between stations. */
    public static FuelUse of(Lap lap, FuelConsumption consumption) {
        double efficiency = lap.vehicle().car().value(Quantity.EFFICIENCY);
        double work = 0;
        double fuel = 0;
        for (int i = 1; i < lap.count(); i++) {
            double ds = lap.value(Channel.DISTANCE, i) - lap.value(Channel.DISTANCE, i - 1);
            for (int end : new int[] {i - 1, i}) {
                double part = 0.5 * ds * lap.value(Channel.DRIVE_FORCE, end) / efficiency;
                work += part;
                fuel += part * consumption.kgPerJoule(lap.value(Channel.ENGINE_SPEED, end));
            }
        }
        return new FuelUse(work, fuel);
    }
}
