package dev.lapwright.evidence;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.List;

/**
 * Lap log: timed laps in the order in which they were driven, divided into runs. A new run begins with another setup, another name of
 * a run, an out lap, or after an in lap.
 */
public final class TimingLog {
    private final List<Lap> laps;
    private final List<String> setups;
    private final int[] run;
    private final int[] runLap;
    private final int[] sessionLap;

    private TimingLog(List<Lap> laps) {
        this.laps = List.copyOf(laps);
        setups = laps.stream().map(Lap::setup).distinct().toList();
        run = new int[laps.size()];
        runLap = new int[laps.size()];
        sessionLap = new int[laps.size()];
    }

    /**
     * The log of these laps.
     *
     * @throws InvalidValueException if there are none, or if their numbers do not rise although no run with a name of its own
     *     begins
     */
    public static TimingLog of(List<Lap> laps) {
        if (laps.isEmpty()) {
            throw new InvalidValueException("lap log", "it holds no laps", "log some laps");
        }
        TimingLog log = new TimingLog(laps);
        int beginning = 0;
        for (int i = 0; i < laps.size(); i++) {
            Lap lap = laps.get(i);
            if (i == 0) {
                log.sessionLap[0] = lap.number();
            } else {
                Lap before = laps.get(i - 1);
                log.place(i, before, lap);
                if (log.run[i] != log.run[i - 1]) {
                    beginning = i;
                }
            }
            log.runLap[i] = log.sessionLap[i] - log.sessionLap[beginning] + 1;
        }
        return log;
    }

    private void place(int i, Lap before, Lap lap) {
        boolean rises = lap.number() > before.number();
        boolean otherRun = !lap.run().equals(before.run());
        if (!rises && !otherRun) {
            String problem = lap.number() == before.number()
                    ? "it stands twice, one after the other"
                    : "it follows lap " + before.number() + ": this looks like two logs in one";
            throw new InvalidValueException(
                    "lap " + lap.number(), problem, "give each log by itself, or each run a name in a column run");
        }
        boolean begins =
                otherRun || !lap.setup().equals(before.setup()) || before.flag() == Flag.IN || lap.flag() == Flag.OUT;
        run[i] = begins ? run[i - 1] + 1 : run[i - 1];
        sessionLap[i] = sessionLap[i - 1] + (rises ? lap.number() - before.number() : 1);
    }

    /** In the order of driving; unmodifiable. */
    public List<Lap> laps() {
        return laps;
    }

    /** Names of the setups in the order of their first laps; unmodifiable. */
    public List<String> setups() {
        return setups;
    }

    /** How many runs there are. */
    public int runs() {
        return run[run.length - 1] + 1;
    }

    /** The run of a lap; both counted from 0. */
    public int run(int index) {
        return run[index];
    }

    /** Number of a lap in its run, from 1; the lap counted from 0. */
    public int runLap(int index) {
        return runLap[index];
    }

    /** Number of a lap in the session, as logged; where numbers start anew they are counted on. The lap counted from 0. */
    public int sessionLap(int index) {
        return sessionLap[index];
    }

    /**
     * Lap as the timing screen shows it.
     *
     * @param number as it was counted, 0 or more
     * @param time s
     * @param setup what the car was set to: a name, not blank
     * @param run which run it belongs to, as the log names it; empty if it does not
     * @param flag what the log says of it
     */
    public record Lap(int number, double time, String setup, String run, Flag flag) {
        /** @throws InvalidValueException if the number is below nought, the time not above it, or the setup has no name */
        public Lap {
            if (number < 0) {
                throw new InvalidValueException("lap number", number + " is below nought", "count laps from 1");
            }
            Check.positive("time (s) of lap " + number, time);
            if (setup.isBlank()) {
                throw new InvalidValueException("setup of lap " + number, "it has no name", "name the setup");
            }
        }
    }

    /** Mark of a lap in the log. */
    public enum Flag {
        /** Nothing: a flying lap. */
        NONE("flying lap"),
        /** It began in the pits. */
        OUT("out lap"),
        /** It ended in the pits. */
        IN("in lap"),
        /** Something spoilt it: traffic, flags, a mistake. */
        SPOILT("spoilt lap");

        private final String label;

        Flag(String label) {
            this.label = label;
        }

        /** For people. */
        public String label() {
            return label;
        }
    }
}
