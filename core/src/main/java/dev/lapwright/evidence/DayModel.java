package dev.lapwright.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Mixed model of a day's clean laps: the setup, the lap in its run, an even and a bending drift through the session, an effect
 * that the laps of a run share, and scatter in which neighbouring laps may hang together (docs/evidence.md, E.2).
 */
final class DayModel {
    /** Columns after those of the setups: lap of the run, lap of the session, its square. */
    private static final int COURSES = 3;
    /** A course that is not to be is held at nought by a prior as narrow as this, s a lap. */
    private static final double NOTHING = 1e-9;

    private final List<String> setups;
    private final Middle middle;
    private final List<MixedModel.Group> groups;
    private final Evidence.Prior prior;
    private final MixedModel model;

    /** Where the courses are nought: a lap of the run, and of the session. */
    record Middle(double lapOfRun, double lapOfSession) {}

    private DayModel(List<String> setups, Middle middle, List<MixedModel.Group> groups, Evidence.Prior prior) {
        this.setups = setups;
        this.middle = middle;
        this.groups = groups;
        this.prior = prior;
        double[] precision = new double[setups.size() + COURSES];
        precision[setups.size()] = precision(prior.lapSlope());
        precision[setups.size() + 1] = precision(prior.drift());
        precision[setups.size() + 2] = precision(prior.bend());
        model = new MixedModel(groups.toArray(MixedModel.Group[]::new), precision);
    }

    private static double precision(double deviation) {
        double least = Math.max(deviation, NOTHING);
        return 1 / (least * least);
    }

    static DayModel of(CleanLaps laps, Evidence.Prior prior) {
        TimingLog log = laps.log();
        int[] clean = laps.clean();
        List<String> setups = log.setups().stream()
                .filter(setup -> laps.clean(setup).length > 0)
                .toList();
        Middle middle = new Middle(
                Arrays.stream(clean).map(log::runLap).average().orElseThrow(),
                Arrays.stream(clean).map(log::sessionLap).average().orElseThrow());
        double level = Arrays.stream(clean)
                .mapToDouble(i -> log.laps().get(i).time())
                .average()
                .orElseThrow();
        List<MixedModel.Group> groups = new ArrayList<>();
        for (int run = 0; run < log.runs(); run++) {
            int wanted = run;
            int[] members =
                    Arrays.stream(clean).filter(i -> log.run(i) == wanted).toArray();
            double[] y = Arrays.stream(members)
                    .mapToDouble(i -> log.laps().get(i).time() - level)
                    .toArray();
            double[][] x = Arrays.stream(members)
                    .mapToObj(i -> row(
                            setups.size(),
                            setups.indexOf(log.laps().get(i).setup()),
                            log.runLap(i) - middle.lapOfRun,
                            log.sessionLap(i) - middle.lapOfSession))
                    .toArray(double[][]::new);
            if (members.length > 0) {
                groups.add(new MixedModel.Group(
                        y, x, Arrays.stream(members).map(log::sessionLap).toArray()));
            }
        }
        return new DayModel(setups, middle, groups, prior);
    }

    /** A day without a lap yet. */
    static DayModel fresh(Evidence.Prior prior) {
        return new DayModel(List.of("A", "B"), new Middle(0, 0), List.of(), prior);
    }

    private static double[] row(int setups, int setup, double lapOfRun, double lapOfSession) {
        double[] row = new double[setups + COURSES];
        row[setup] = 1;
        row[setups] = lapOfRun;
        row[setups + 1] = lapOfSession;
        row[setups + 2] = lapOfSession * lapOfSession;
        return row;
    }

    /** The same with other priors. */
    DayModel with(Evidence.Prior other) {
        return new DayModel(setups, middle, groups, other);
    }

    /**
     * The same with further runs, whose lap times are not known, each after an in lap and an out lap.
     *
     * @param runs the setup of each
     * @param laps clean laps of each, at least 1
     */
    DayModel with(List<String> runs, int laps) {
        List<MixedModel.Group> more = new ArrayList<>(groups);
        int last = groups.isEmpty() ? 0 : last(groups.get(groups.size() - 1).t());
        Middle about = groups.isEmpty() ? new Middle((laps + 1) / 2.0, runs.size() * (laps + 2) / 2.0) : middle;
        for (String run : runs) {
            last += 2;
            double[][] x = new double[laps][];
            int[] t = new int[laps];
            for (int k = 0; k < laps; k++) {
                t[k] = last + 1 + k;
                x[k] = row(setups.size(), setups.indexOf(run), 2 + k - about.lapOfRun, t[k] - about.lapOfSession);
            }
            more.add(new MixedModel.Group(new double[laps], x, t));
            last += laps;
        }
        return new DayModel(setups, about, more, prior);
    }

    private static int last(int... numbers) {
        return numbers[numbers.length - 1];
    }

    int runs() {
        return groups.size();
    }

    Middle middle() {
        return middle;
    }

    MixedModel model() {
        return model;
    }

    /** The second setup less the first, as weights of the model's coefficients. */
    double[] difference(String before, String after) {
        double[] weights = new double[setups.size() + COURSES];
        weights[setups.indexOf(before)] = -1;
        weights[setups.indexOf(after)] = 1;
        return weights;
    }

    private double[] course(int which) {
        double[] weights = new double[setups.size() + COURSES];
        weights[setups.size() + which] = 1;
        return weights;
    }

    /** What the laps tell of the difference of two setups, then of the courses over run, session, and session squared. */
    MixedModel.Posterior posterior(String before, String after) {
        return model.posterior(variances(), difference(before, after), course(0), course(1), course(2));
    }

    /** What the laps tell of the difference of two setups. */
    NormalMixture known(String before, String after) {
        return model.posterior(variances(), difference(before, after))
                .combinations()
                .get(0);
    }

    /** What the laps tell of the courses over run, session, and session squared. */
    MixedModel.Posterior courses() {
        return model.posterior(variances(), course(0), course(1), course(2));
    }

    MixedModel.VariancePrior variances() {
        return new MixedModel.VariancePrior(prior.runToRun(), Evidence.Prior.LOG_RUN_TO_RUN, prior.mostCorrelation());
    }
}
