package dev.lapwright.study.stint;

import dev.lapwright.lap.Lap;
import dev.lapwright.powertrain.FuelConsumption;
import java.util.List;

/**
 * A study of fuel and stint. All runs begin with the same fuel, what the thirstiest needs.
 *
 * @param lap the first lap of the first run
 * @param use of the engine on that lap
 * @param consumption of the engine
 * @param race how far it goes
 * @param runs one for each compound, in the order given
 * @param startFuel kg on board before the formation lap
 * @param timePerKg how much a kg of fuel costs on the first lap, s
 * @param timePerGrip how much one percent more grip gains on the first lap, s
 */
public record StintResult(
        Lap lap,
        FuelUse use,
        FuelConsumption consumption,
        RaceLength race,
        List<StintRun> runs,
        double startFuel,
        double timePerKg,
        double timePerGrip) {
    public StintResult {
        runs = List.copyOf(runs);
    }
}
