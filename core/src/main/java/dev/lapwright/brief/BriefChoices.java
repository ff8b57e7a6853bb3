package dev.lapwright.brief;

import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fit.DrivenRun;
import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.robust.DriverWord;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.stint.Compound;
import dev.lapwright.study.stint.RaceLength;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Options of a brief beside car, circuit and day.
 *
 * @param testing laps to test with
 * @param racing the race
 * @param vary adjustments that the suggestion may turn; empty for those that the sensitivity chooses
 * @param draws cars drawn to say how far each difference is to be trusted; 0 for none
 * @param logged what was logged before; empty before driving
 * @param words what the driver says of the car as it stands; may be empty
 */
public record BriefChoices(
        Testing testing, Racing racing, List<String> vary, int draws, Logged logged, List<DriverWord> words) {
    /** Cars drawn if nothing is said: an interval's ends to a quarter of its width. */
    public static final int DRAWS = 40;

    /** Scatter of lap times where nobody says one and no log tells it, s: common practice, no source. */
    public static final double USUAL_SCATTER = 0.3;

    /**
     * Laps that scatter as the log tells or else as usual, 30 laps to test with, a race of 20 minutes with one formation lap and one lap in
     * reserve, a racing engine without a turbocharger, a tyre that loses a thousandth of its grip a lap (common practice, no source); forty
     * cars drawn; nothing logged.
     */
    public static final BriefChoices DEFAULT = new BriefChoices(
            new Testing(OptionalDouble.empty(), 30),
            new Racing(
                    new RaceLength(0, 20 * 60, 1, RaceLength.FORMATION_SHARE, 1),
                    FuelConsumption.constant(FuelConsumption.RACING_ENGINE),
                    Compound.steady("tyre", 1, 0.001)),
            List.of(),
            DRAWS,
            Logged.NOTHING,
            List.of());

    public BriefChoices {
        if (draws != 0) {
            Robustness.checkedDraws("draws", draws);
        }
        vary = List.copyOf(vary);
        words = List.copyOf(words);
    }

    /** The same with other laps to test with. */
    public BriefChoices with(Testing other) {
        return new BriefChoices(other, racing, vary, draws, logged, words);
    }

    /** The same with another race. */
    public BriefChoices with(Racing other) {
        return new BriefChoices(testing, other, vary, draws, logged, words);
    }

    /** The same with other logs. */
    public BriefChoices with(Logged other) {
        return new BriefChoices(testing, racing, vary, draws, other, words);
    }

    /** The same with these adjustments for the suggestion to turn. */
    public BriefChoices turning(List<String> names) {
        return new BriefChoices(testing, racing, names, draws, logged, words);
    }

    /** The same with this many cars drawn; 0 for none. */
    public BriefChoices withDraws(int count) {
        return new BriefChoices(testing, racing, vary, count, logged, words);
    }

    /** The same with what the driver says of the car as it stands. */
    public BriefChoices hearing(List<DriverWord> said) {
        return new BriefChoices(testing, racing, vary, draws, logged, said);
    }

    /**
     * Laps that there are to test with.
     *
     * @param scatter standard deviation of lap times on the timing screen, s; empty for that of the log, and where none tells it {@link
     *     #USUAL_SCATTER}
     * @param laps how many clean laps there are, all setups together; 4 to 100 000
     */
    public record Testing(OptionalDouble scatter, int laps) {
        private static final double LEAST_SCATTER = 1e-3;
        private static final double MOST_SCATTER = 60;
        private static final int FEWEST_LAPS = 4;
        private static final int MOST_LAPS = 100_000;

        public Testing {
            if (scatter.isPresent()) {
                Check.inRange("lap-to-lap scatter (s)", scatter.getAsDouble(), LEAST_SCATTER, MOST_SCATTER);
            }
            if (laps < FEWEST_LAPS || laps > MOST_LAPS) {
                throw new InvalidValueException(
                        "laps",
                        laps + " are no laps to compare two setups",
                        "give " + FEWEST_LAPS + " to " + MOST_LAPS);
            }
        }
    }

    /**
     * Race to carry fuel for.
     *
     * @param length how far it goes
     * @param consumption of the engine
     * @param compound of the tyre
     */
    public record Racing(RaceLength length, FuelConsumption consumption, Compound compound) {}

    /**
     * Logs of what was driven.
     *
     * @param pressures pairs of cold and hot pressures, oldest first; may be empty
     * @param times lap times with the names of the setups; empty before driving
     * @param evidence how to look at them; its two setups and the prediction are not looked at
     * @param runs laps driven with their speeds, a run for each setup, to fit the car to; may be empty
     */
    public record Logged(
            List<PressurePair> pressures, Optional<TimingLog> times, Evidence evidence, List<DrivenRun> runs) {
        /** Nothing. */
        public static final Logged NOTHING = new Logged(List.of(), Optional.empty(), Evidence.DEFAULT, List.of());

        public Logged {
            pressures = List.copyOf(pressures);
            runs = List.copyOf(runs);
        }
    }
}
