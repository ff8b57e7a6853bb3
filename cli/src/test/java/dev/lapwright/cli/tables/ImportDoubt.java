package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.documents.Documents;
import dev.lapwright.doubt.DoubtClass;
import dev.lapwright.doubt.PlausibleDays;
import dev.lapwright.doubt.PlausibleRoads;
import dev.lapwright.doubt.Unknown;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Table of how often intervals told on circuits as imported, by the documents' own bands, hold what true cars gain on the circuits that they were
 * drawn from; of other circuits by {@code -Dfirst=SEED -Dcircuits=EACH -Ddraws=CARS}.
 */
final class ImportDoubt {
    private static final int DRAWS = Integer.getInteger("draws", 200);
    private static final int TRUTHS = 42;
    /** Circuits of each of three forms. */
    private static final int EACH = Integer.getInteger("circuits", 8);
    /** First seed of the circuits; another one tells of circuits that nothing was looked up on. */
    private static final long FIRST = Long.getLong("first", 12_000);

    private ImportDoubt() {}

    /** Forms of {@link DrawnCircuit#drawn}, in its order. */
    private static final List<String> FORMS =
            List.of("straights, transitions and arcs", "waves all the way round", "outlines drawn by hand");

    /** How many true cars' gains lie below, in and above the interval, for each question on one circuit. */
    private record Count(int form, int[] below, int[] within, int[] above) {
        static Count of(int form, int questions) {
            return new Count(form, new int[questions], new int[questions], new int[questions]);
        }
    }

    /**
     * Prints it.
     *
     * @param sources names of {@link DrawnSurvey.Source}; all if empty
     */
    static void print(List<String> sources) {
        Car car = Documents.car("gt-talvex");
        System.out.printf(
                Locale.ROOT,
                "Talvex GT, %d cars drawn on each import, %d true cars on each true circuit, %d circuits a row from seed %d on, each with a seed of its own. Of 100 true cars so many within, give or take one standard deviation (below, above).%n%n",
                DRAWS,
                TRUTHS,
                3 * EACH,
                FIRST);
        DoubtTables.head("imported from");
        List<Count> all = new ArrayList<>();
        for (DrawnSurvey.Source source : DrawnSurvey.Source.values()) {
            if (!sources.isEmpty() && !sources.contains(source.name())) {
                continue;
            }
            List<Count> counts = StudyRun.onAllCores()
                    .inParallel(3 * EACH, () -> car, (any, i) -> count(car, source, FIRST + i / 3, i % 3), done -> {})
                    .stream()
                    .filter(Objects::nonNull)
                    .toList();
            row(source.words(), counts);
            all.addAll(counts);
        }
        for (int form = 0; form < FORMS.size(); form++) {
            int of = form;
            row(
                    "all of them, on circuits of " + FORMS.get(form),
                    all.stream().filter(count -> count.form() == of).toList());
        }
    }

    private static void row(String what, List<Count> counts) {
        StringBuilder line = new StringBuilder("| " + what + " |");
        for (int k = 0; k < counts.get(0).within().length; k++) {
            int at = k;
            double[] within = counts.stream()
                    .mapToDouble(count -> 100.0 * count.within()[at] / TRUTHS)
                    .toArray();
            double mean = mean(within);
            double squares = 0;
            for (double one : within) {
                squares += (one - mean) * (one - mean);
            }
            // Of circuits, which are few; their cars share each its import's errors.
            double error = Math.sqrt(squares / (within.length - 1) / within.length);
            line.append(String.format(
                    Locale.ROOT,
                    " %.1f ± %.1f (%.1f, %.1f) |",
                    mean,
                    error,
                    mean(counts.stream()
                            .mapToDouble(count -> 100.0 * count.below()[at] / TRUTHS)
                            .toArray()),
                    mean(counts.stream()
                            .mapToDouble(count -> 100.0 * count.above()[at] / TRUTHS)
                            .toArray())));
        }
        System.out.println(line);
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    /** Null where the import is refused. */
    private static Count count(Car car, DrawnSurvey.Source source, long seed, int form) {
        Track truth = DrawnCircuit.drawn(1, seed).get(form).truth();
        Track found;
        try {
            found = ImportTables.imported(DrawnSurvey.of(truth, source, car, seed))
                    .track();
        } catch (LapwrightException refused) {
            return null;
        }
        RobustnessResult told = DoubtTables.study(car, found)
                .withDraws(DRAWS)
                .withSeed(3 * seed + form)
                .run();
        PlausibleDays days = PlausibleDays.of(car, truth, DoubtTables.DAY, true, List.of());
        Random random = new Random((3 * seed + form) * DrawnSurvey.Source.values().length + source.ordinal());
        int questions = told.standings().size();
        Count count = Count.of(form, questions);
        Set<String> ofRoad =
                PlausibleRoads.of(truth).unknowns().stream().map(Unknown::title).collect(Collectors.toSet());
        for (double[] errors : errors(days, ofRoad, random)) {
            double[] gains = DoubtTables.gains(days, car, LapSolver.on(days.road(errors)), errors);
            for (int k = 0; k < questions; k++) {
                RobustnessResult.Standing standing = told.standings().get(k);
                count.below()[k] += gains[k] < standing.low() ? 1 : 0;
                count.above()[k] += gains[k] > standing.high() ? 1 : 0;
                count.within()[k] += gains[k] >= standing.low() && gains[k] <= standing.high() ? 1 : 0;
            }
        }
        return count;
    }

    /** Car, day and grip of the road as assumed; where a true road goes is no question. */
    private static List<double[]> errors(PlausibleDays days, Set<String> ofRoad, Random random) {
        List<Unknown> unknowns = days.unknowns();
        String grip = DoubtClass.ROAD_GRIP.title().replace("%s", "");
        List<double[]> all = new ArrayList<>();
        for (int t = 0; t < TRUTHS; t++) {
            double[] errors = new double[unknowns.size()];
            for (int k = 0; k < errors.length; k++) {
                String title = unknowns.get(k).title();
                boolean itself = ofRoad.contains(title) && !title.startsWith(grip);
                errors[k] = itself ? 0 : random.nextGaussian();
            }
            all.add(errors);
        }
        return all;
    }
}
