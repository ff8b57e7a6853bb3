package dev.lapwright.brief;

import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.stint.Compound;
import dev.lapwright.study.stint.RaceLength;
import java.util.List;
import java.util.Optional;

/**
 * Options of a brief beside car, circuit and day.
 *
 * @param scatter standard deviation of lap times on the timing screen, s
 * @param laps how many clean laps there are to test with, all setups together; 4 to 100 000
 * @param race how far it goes
 * @param consumption of the engine
 * @param compound of the tyre in the race
 * @param vary adjustments that the suggestion may turn; empty for those that the sensitivity chooses
 * @param pairs logged pairs of cold and hot pressures, oldest first; may be empty
 * @param draws cars drawn to say how far each difference is to be trusted; 0 for none
 * @param log of laps driven; empty before driving
 * @param evidence how to look at the log; its two setups and the prediction are not looked at
 */
public record BriefChoices(
        double scatter,
        int laps,
        RaceLength race,
        FuelConsumption consumption,
        Compound compound,
        List<String> vary,
        List<PressurePair> pairs,
        int draws,
        Optional<TimingLog> log,
        Evidence evidence) {
    /** Cars drawn if nothing is said: an interval's ends to a quarter of its width. */
    public static final int DRAWS = 40;

    /**
     * Laps that scatter by 0.3 s, 30 laps to test with, a race of 20 minutes with one formation lap and one lap in reserve, a
     * racing engine without a turbocharger, a tyre that loses a thousandth of its grip a lap (common practice, no source); forty
     * cars drawn; no pressures and no laps logged.
     */
    public static final BriefChoices DEFAULT = new BriefChoices(
            0.3,
            30,
            new RaceLength(0, 20 * 60, 1, RaceLength.FORMATION_SHARE, 1),
            FuelConsumption.constant(FuelConsumption.RACING_ENGINE),
            Compound.steady("tyre", 1, 0.001),
            List.of(),
            List.of(),
            DRAWS,
            Optional.empty(),
            Evidence.DEFAULT);

    private static final double LEAST_SCATTER = 1e-3;
    private static final double MOST_SCATTER = 60;
    private static final int FEWEST_LAPS = 4;
    private static final int MOST_LAPS = 100_000;

    public BriefChoices {
        Check.inRange("lap-to-lap scatter (s)", scatter, LEAST_SCATTER, MOST_SCATTER);
        if (laps < FEWEST_LAPS || laps > MOST_LAPS) {
            throw new InvalidValueException(
                    "laps", laps + " are no laps to compare two setups", "give " + FEWEST_LAPS + " to " + MOST_LAPS);
        }
        if (draws != 0) {
            Robustness.checkedDraws("draws", draws);
        }
        vary = List.copyOf(vary);
        pairs = List.copyOf(pairs);
    }
}
