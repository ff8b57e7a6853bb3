package dev.lapwright.evidence;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * Test days drawn from worlds whose truth is known. As a program it prints how often intervals hold it, and how often a
 * difference that is none is called real: {@code cover DAYS ORDER LAPS} or {@code alarm DAYS ORDER LAPS}, the order growing by
 * two runs at a look.
 */
final class SimulatedDays {
    private static final double GAIN = -0.2;
    private static final long FIRST_SEED = 1000;

    /**
     * A world.
     *
     * @param name for the table
     * @param run deviation that the laps of a run have in common, s
     * @param correlation of neighbouring laps
     * @param drift through the session, s a lap
     * @param bend of the drift, s a lap²
     * @param slow share of laps that traffic slows by 0.3 to 2 s
     */
    record World(String name, double run, double correlation, double drift, double bend, double slow) {
        /** From lap to lap, s. */
        static final double LAP = 0.2;
    }

    static final List<World> WORLDS = List.of(
            new World("laps independent", 0, 0, 0, 0, 0),
            new World("runs differ by 0.05 s", 0.05, 0, 0, 0, 0),
            new World("runs differ by 0.10 s", 0.1, 0, 0, 0, 0),
            new World("runs differ by 0.15 s", 0.15, 0, 0, 0, 0),
            new World("runs differ by 0.20 s", 0.2, 0, 0, 0, 0),
            new World("neighbours correlate by 0.4", 0, 0.4, 0, 0, 0),
            new World("neighbours correlate by 0.5", 0, 0.5, 0, 0, 0),
            new World("drift of 0.02 s a lap", 0, 0, 0.02, 0, 0),
            new World("drift of -0.02 s a lap that dies away", 0, 0, -0.02, 0.0004, 0),
            new World("one lap in eight slow", 0, 0, 0, 0, 0.125),
            new World("all: runs 0.10 s, 0.4, drift, slow laps", 0.1, 0.4, 0.02, 0, 0.125));

    private SimulatedDays() {}

    /** A day's log: one run for each letter of the order, each an out lap and then flying laps; B has the gain, s. */
    static TimingLog day(World world, String order, int laps, double gain, long seed) {
        RandomGenerator random = new Well19937c(seed);
        List<TimingLog.Lap> log = new ArrayList<>();
        int count = order.length() * (laps + 1);
        for (int run = 0; run < order.length(); run++) {
            String setup = order.substring(run, run + 1);
            double level = 90 + ("B".equals(setup) ? gain : 0) + world.run * random.nextGaussian();
            double error = World.LAP * random.nextGaussian();
            log.add(new TimingLog.Lap(log.size() + 1, level + 25, setup, "", TimingLog.Flag.OUT));
            for (int i = 0; i < laps; i++) {
                int number = log.size() + 1;
                double from = number - count / 2.0;
                double drift = world.drift * number + world.bend * from * from;
                double traffic = random.nextDouble() < world.slow ? 0.3 + 1.7 * random.nextDouble() : 0;
                log.add(new TimingLog.Lap(number, level + drift + error + traffic, setup, "", TimingLog.Flag.NONE));
                error = world.correlation * error
                        + Math.sqrt(1 - world.correlation * world.correlation) * World.LAP * random.nextGaussian();
            }
        }
        return TimingLog.of(log);
    }

    /** The first runs of a day. */
    static TimingLog beginning(TimingLog day, int runs) {
        return TimingLog.of(IntStream.range(0, day.laps().size())
                .filter(i -> day.run(i) < runs)
                .mapToObj(i -> day.laps().get(i))
                .toList());
    }

    private static DayModel model(TimingLog log) {
        return DayModel.of(CleanLaps.of(log, CleanLaps.Rule.DEFAULT), Evidence.Prior.DEFAULT);
    }

    /** Shares of days and half widths. */
    record Coverage(double once, double half, double repeated, double repeatedHalf, double toldHalf) {}

    static Coverage coverage(World world, int days, String order, int laps) {
        double[] sums = new double[5];
        for (int d = 0; d < days; d++) {
            DayModel model = model(day(world, order, laps, GAIN, FIRST_SEED + d));
            EvidenceResult.Difference difference =
                    EvidenceResult.Difference.of(model.known("A", "B"), Evidence.DEFAULT.share());
            sums[0] += difference.once().holds(GAIN) ? 1 : 0;
            sums[1] += difference.once().half();
            sums[2] += difference.repeated().holds(GAIN) ? 1 : 0;
            sums[3] += difference.repeated().half();
            MixedModel.Variances told = new MixedModel.Variances(World.LAP, world.run, world.correlation);
            sums[4] += 1.96 * Math.sqrt(model.model().at(told).variance(model.difference("A", "B")));
        }
        return new Coverage(sums[0] / days, sums[1] / days, sums[2] / days, sums[3] / days, sums[4] / days);
    }

    /** Whether two setups that are alike are called different. */
    static boolean isAlarm(TimingLog log) {
        DayModel model = model(log);
        Map<EvidenceResult.Assumption, EvidenceResult.Difference> differences =
                new EnumMap<>(EvidenceResult.Assumption.class);
        double share = Evidence.DEFAULT.share();
        differences.put(EvidenceResult.Assumption.DAY, EvidenceResult.Difference.of(model.known("A", "B"), share));
        if (!differences.get(EvidenceResult.Assumption.DAY).repeated().isSure()) {
            return false;
        }
        Evidence.Prior prior = Evidence.Prior.DEFAULT;
        differences.put(
                EvidenceResult.Assumption.EVEN_DRIFT,
                EvidenceResult.Difference.of(
                        model.with(prior.drift(prior.drift(), 0)).known("A", "B"), share));
        differences.put(
                EvidenceResult.Assumption.NO_DRIFT,
                EvidenceResult.Difference.of(model.with(prior.drift(0, 0)).known("A", "B"), share));
        return Comparer.verdict(differences, 0.1).finding() == EvidenceResult.Finding.REAL;
    }

    /** Share of days on which one of the looks, after four runs and then after every two more, finds what is not there. */
    static double alarms(World world, int days, String order, int laps) {
        int alarms = 0;
        for (int d = 0; d < days; d++) {
            TimingLog day = day(world, order, laps, 0, FIRST_SEED + d);
            boolean alarm = false;
            for (int runs = 4; runs <= order.length() && !alarm; runs += 2) {
                alarm = isAlarm(beginning(day, runs));
            }
            alarms += alarm ? 1 : 0;
        }
        return (double) alarms / days;
    }

    public static void main(String... arguments) {
        int days = Integer.parseInt(arguments[1]);
        String order = arguments[2];
        int laps = Integer.parseInt(arguments[3]);
        System.out.printf(Locale.ROOT, "%s, %d laps a run, %d days, seeds from %d%n", order, laps, days, FIRST_SEED);
        for (World world : WORLDS) {
            if ("cover".equals(arguments[0])) {
                Coverage c = coverage(world, days, order, laps);
                System.out.printf(
                        Locale.ROOT,
                        "| %s | %.1f | %.3f | %.1f | %.3f | %.3f |%n",
                        world.name,
                        100 * c.once,
                        c.half,
                        100 * c.repeated,
                        c.repeatedHalf,
                        c.toldHalf);
            } else {
                System.out.printf(Locale.ROOT, "| %s | %.1f |%n", world.name, 100 * alarms(world, days, order, laps));
            }
        }
    }
}
