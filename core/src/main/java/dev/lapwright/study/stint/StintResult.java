package dev.lapwright.study.stint;

import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.powertrain.FuelConsumption;
import java.util.List;

/**
 * Fuel and laps of a stint, on each compound. All runs begin with the same fuel, what the thirstiest needs.
 *
 * @param lap the first lap of the first run
 * @param use of the engine on that lap
 * @param consumption of the engine
 * @param race how far it goes
 * @param runs one for each compound, in the order given
 * @param startFuel kg on board before the formation lap
 * @param timePerKg difference of the first lap with a kg of fuel more, s
 * @param timePerGrip difference of the first lap with one percent more grip, s, minus where faster
 * @param onSetFuel what the fuel that is set does, one for each run
 */
public record StintResult(
        Lap lap,
        FuelUse use,
        FuelConsumption consumption,
        RaceLength race,
        List<Run> runs,
        double startFuel,
        double timePerKg,
        double timePerGrip,
        List<SetFuel> onSetFuel) {
    public StintResult {
        runs = List.copyOf(runs);
        onSetFuel = List.copyOf(onSetFuel);
    }

    /**
     * Lap of a stint.
     *
     * @param number from 1
     * @param time s
     * @param fuelAtStart kg on board as it begins
     * @param fuelUsed kg
     * @param grip of the compound on this lap, relative to the car's tyre data
     */
    public record RunLap(int number, double time, double fuelAtStart, double fuelUsed, double grip) {}

    /**
     * Stint on one compound.
     *
     * @param compound what it is driven on
     * @param laps at least one
     * @param formationFuel kg, burnt before the first lap
     * @param raceFuel kg, burnt on the laps
     * @param reserveFuel kg, that must be left at the flag
     */
    public record Run(Compound compound, List<RunLap> laps, double formationFuel, double raceFuel, double reserveFuel) {
        public Run {
            laps = List.copyOf(laps);
        }

        /** Fuel this stint needs before the formation lap, kg. */
        public double fuelNeeded() {
            return formationFuel + raceFuel + reserveFuel;
        }

        /** Time of all laps, s. */
        public double time() {
            return timeAfter(laps.size());
        }

        /** Time of the first so many laps, s. */
        public double timeAfter(int count) {
            return laps.subList(0, count).stream().mapToDouble(RunLap::time).sum();
        }

        /** Mean fuel of a lap, kg. */
        public double fuelPerLap() {
            return raceFuel / laps.size();
        }

        /** First lap that another compound drives faster, having been slower or as fast before; 0 if there is none. */
        public int fasterFrom(Run other) {
            int common = Math.min(laps.size(), other.laps.size());
            for (int i = 1; i < common; i++) {
                if (other.laps.get(i).time() < laps.get(i).time()
                        && other.laps.get(i - 1).time() >= laps.get(i - 1).time()) {
                    return i + 1;
                }
            }
            return 0;
        }

        /** First lap after which another compound is ahead in all, having been behind or level before; 0 if there is none. */
        public int aheadFrom(Run other) {
            int common = Math.min(laps.size(), other.laps.size());
            double lead = 0;
            for (int i = 0; i < common; i++) {
                double before = lead;
                lead += laps.get(i).time() - other.laps.get(i).time();
                if (i > 0 && lead > 0 && before <= 0) {
                    return i + 1;
                }
            }
            return 0;
        }
    }

    /**
     * Stint on the fuel that is set, beside one that begins with what it needs.
     *
     * @param fuel set, kg before the formation lap
     * @param lapsOfFuel whole laps that it lasts, those of the race at most
     * @param laps of the race
     * @param spare kg beyond what is needed with the reserve; negative where it falls short of that
     * @param reserve kg, part of what is needed
     * @param cost s over the laps that both drive, of carrying the spare fuel; negative where less is carried
     */
    public record SetFuel(double fuel, int lapsOfFuel, int laps, double spare, double reserve, double cost) {
        static SetFuel of(double fuel, Run set, Run needed) {
            int lasts = 0;
            while (lasts < set.laps().size()
                    && set.laps().get(lasts).fuelAtStart()
                            >= set.laps().get(lasts).fuelUsed()) {
                lasts++;
            }
            int common = Math.min(set.laps().size(), needed.laps().size());
            return new SetFuel(
                    fuel,
                    lasts,
                    set.laps().size(),
                    fuel - needed.fuelNeeded(),
                    needed.reserveFuel(),
                    set.timeAfter(common) - needed.timeAfter(common));
        }

        /** Whether it lasts to the flag. */
        public boolean reachesTheFlag() {
            return lapsOfFuel >= laps;
        }
    }

    /**
     * Work of the engine on a lap and the fuel for it: ∫ X ds/η with X the drive force at the wheels and η the share of
     * engine torque that reaches them. Neglects what the engine burns off the throttle.
     *
     * @param engineWork J, at the crankshaft
     * @param fuel kg
     */
    public record FuelUse(double engineWork, double fuel) {
        /** Of a lap, by the trapezoidal rule between stations. */
        static FuelUse of(Lap lap, FuelConsumption consumption) {
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
}
