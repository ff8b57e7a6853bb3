package dev.lapwright.evidence;

import dev.lapwright.fault.InvalidValueException;
import java.util.List;

/**
 * Laps in the order in which they were driven, and the runs they make. A new run begins with another setup, another name of
 * a run, an out lap, or after an in lap.
 */
public final class TimingLog {
    private final List<TimedLap> laps;
    private final List<String> setups;
    private final int[] run;
    private final int[] runLap;
    private final int[] sessionLap;

    private TimingLog(List<TimedLap> laps) {
        this.laps = List.copyOf(laps);
        setups = laps.stream().map(TimedLap::setup).distinct().toList();
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
    public static TimingLog of(List<TimedLap> laps) {
        if (laps.isEmpty()) {
            throw new InvalidValueException("lap log", "it holds no laps", "log some laps");
        }
        TimingLog log = new TimingLog(laps);
        int beginning = 0;
        for (int i = 0; i < laps.size(); i++) {
            TimedLap lap = laps.get(i);
            if (i == 0) {
                log.sessionLap[0] = lap.number();
            } else {
                TimedLap before = laps.get(i - 1);
                log.place(i, before, lap);
                if (log.run[i] != log.run[i - 1]) {
                    beginning = i;
                }
            }
            log.runLap[i] = log.sessionLap[i] - log.sessionLap[beginning] + 1;
        }
        return log;
    }

    private void place(int i, TimedLap before, TimedLap lap) {
        boolean rises = lap.number() > before.number();
        boolean otherRun = !lap.run().equals(before.run());
        if (!rises && !otherRun) {
            String problem = lap.number() == before.number()
                    ? "it stands twice, one after the other"
                    : "it follows lap " + before.number() + ": this looks like two logs in one";
            throw new InvalidValueException(
                    "lap " + lap.number(), problem, "give each log by itself, or each run a name in a column run");
        }
        boolean begins = otherRun
                || !lap.setup().equals(before.setup())
                || before.flag() == LapFlag.IN
                || lap.flag() == LapFlag.OUT;
        run[i] = begins ? run[i - 1] + 1 : run[i - 1];
        sessionLap[i] = sessionLap[i - 1] + (rises ? lap.number() - before.number() : 1);
    }

    /** In the order of driving; unmodifiable. */
    public List<TimedLap> laps() {
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
}
