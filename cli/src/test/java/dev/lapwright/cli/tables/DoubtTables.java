package dev.lapwright.cli.tables;

import dev.lapwright.aero.Areas;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.documents.Documents;
import dev.lapwright.doubt.DoubtClass;
import dev.lapwright.doubt.LatinHypercube;
import dev.lapwright.doubt.PlausibleDays;
import dev.lapwright.doubt.PlausibleRoads;
import dev.lapwright.doubt.Unknown;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.results.SensitivityReport;
import dev.lapwright.results.Standings;
import dev.lapwright.study.LapTimeBand;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.robust.AdjustmentVerdict;
import dev.lapwright.study.robust.JudgedAdjustments;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.study.robust.SettledVerdicts;
import dev.lapwright.study.sensitivity.Sensitivity;
import dev.lapwright.study.sensitivity.SensitivityResult;
import dev.lapwright.study.stint.Compound;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.study.stint.Stint;
import dev.lapwright.study.stint.StintDoubtResult;
import dev.lapwright.study.stint.StintResult;
import dev.lapwright.track.Track;
import dev.lapwright.track.survey.ImportedTrack;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;

/**
 * Prints as Markdown how well the numbers of a car are taken to be known where its document does not say; how many of 100 cars that are off
 * otherwise than that still lie in the interval told; and what of the demo car's best settings stands. Run
 * from the top of the project, packaged:
 *
 * <pre>java -cp cli/target/lapwright.jar:cli/target/test-classes dev.lapwright.cli.tables.DoubtTables [coverage|chance|few|imports [SOURCE...]|stints|best|advice|roads|width|settled]</pre>
 */
public final class DoubtTables {
    static final Conditions DAY = Conditions.STANDARD;
    private static final int DRAWS = 1000;
    private static final int TRUTHS = 1000;
    private static final long SEED = 1;
    private static final long TRUTH_SEED = Long.getLong("truths", 20_001);
    private static final int CHANCE_SEEDS = 5;
    private static final int BEST_DRAWS = 300;
    private static final int ADVICE_DRAWS = 100;
    private static final int[] FEW = {20, 40, 60, 100, 200};
    /** Cars drawn for each number of them, over all seeds. */
    private static final int FEW_IN_ALL = 1200;

    private static final double AWAY_KPA = 15;
    static final long ROADS_SEED = 7000;
    private static final int ROADS_DRAWS = 60;

    private static final Map<String, Double> CHANGES = new LinkedHashMap<>();

    static {
        CHANGES.put("rear-wing", 3.0);
        CHANGES.put("front-bar", 5.0);
        CHANGES.put("ride-height", 60.0);
        CHANGES.put("final-drive", 3.818);
    }

    private DoubtTables() {}

    /** Prints the one asked for; the classes if none is. */
    public static void main(String... asked) {
        switch (asked.length == 0 ? "" : asked[0]) {
            case "coverage" -> coverage();
            case "chance" -> chance();
            case "best" -> best();
            case "advice" -> advice();
            case "few" -> few();
            case "imports" -> ImportDoubt.print(List.of(asked).subList(1, asked.length));
            case "stints" -> stints();
            case "roads" -> roads();
            case "width" -> width();
            case "settled" -> settled();
            default -> classes().forEach(System.out::println);
        }
    }

    /** Laps that settle the word for each adjustment, beside those that tell its interval. */
    private static void settled() {
        System.out.println(
                "| circuit | car | settings | laps of all of them | laps that settle the words | words that differ |");
        System.out.println("|---|---|---|---|---|---|");
        for (String circuit : List.of("harrowmere", "castelvane")) {
            for (String name : List.of("gt-talvex", "touring-merrow", "student-pipit")) {
                Car car = Documents.car(name);
                Track line = LineSearch.of(Documents.circuit(circuit), car, LineChoices.DEFAULT)
                        .smoothest()
                        .driven();
                SensitivityResult found = Sensitivity.of(car, line, DAY).run();
                SettledVerdicts.Result settled = SettledVerdicts.of(found).run(StudyRun.onAllCores());
                Robustness all = Robustness.of(found).withDraws(SettledVerdicts.DRAWS);
                List<AdjustmentVerdict> drawn = Robustness.verdicts(found, all.run(StudyRun.onAllCores()));
                int differ = 0;
                for (int i = 0; i < drawn.size(); i++) {
                    differ += drawn.get(i) == settled.verdicts().get(i) ? 0 : 1;
                }
                int settings = JudgedAdjustments.of(found).cars().size();
                System.out.printf(
                        Locale.ROOT,
                        "| %s | %s | %d | %d | %d | %d |%n",
                        circuit,
                        car.name(),
                        settings,
                        SettledVerdicts.DRAWS * (settings + 1),
                        settled.laps(),
                        differ);
            }
        }
    }

    /** The class table, line by line. */
    public static List<String> classes() {
        List<String> lines = new ArrayList<>();
        lines.add("| unknown | off by | what moves | how to know it better |");
        lines.add("|---|---|---|---|");
        for (DoubtClass kind : DoubtClass.values()) {
            lines.add("| " + kind.title().replace("%s", "…") + " | " + size(kind) + " | " + moved(kind) + " | "
                    + kind.measure() + " |");
        }
        return lines;
    }

    private static String size(DoubtClass kind) {
        String size = BigDecimal.valueOf(kind.size()).stripTrailingZeros().toPlainString() + " " + kind.unit();
        return kind.isLimit() ? "at most " + size : size;
    }

    private static String moved(DoubtClass kind) {
        return kind.quantities().stream()
                .map(Quantity::path)
                .map(path -> "`" + path + "`")
                .collect(Collectors.joining(", "));
    }

    private static Track castelvane(Car car) {
        return LineSearch.of(Documents.circuit("castelvane"), car, LineChoices.DEFAULT)
                .smoothest()
                .driven();
    }

    /** What is asked of each car: settings beside it as it stands, and all hot pressures off. */
    static List<Car> settings(Car car) {
        List<Car> cars = new ArrayList<>();
        CHANGES.forEach((name, value) -> cars.add(car.with(name, value)));
        cars.add(car.with(Quantity.HOT_PRESSURE_FRONT, car.value(Quantity.HOT_PRESSURE_FRONT) + AWAY_KPA)
                .with(Quantity.HOT_PRESSURE_REAR, car.value(Quantity.HOT_PRESSURE_REAR) + AWAY_KPA));
        return cars;
    }

    static Robustness study(Car car, Track track) {
        Robustness study = Robustness.of(car, track, DAY).withDraws(DRAWS).withSeed(SEED);
        for (Car setting : settings(car)) {
            study = study.against(setting);
        }
        return study;
    }

    static void head(String first) {
        List<String> columns = new ArrayList<>();
        CHANGES.forEach((name, value) -> columns.add(name + " " + plain(value)));
        columns.add("hot pressures +" + plain(AWAY_KPA) + " kPa");
        System.out.println("| " + first + " | " + String.join(" | ", columns) + " |");
        System.out.println("|---|" + "---|".repeat(columns.size()));
    }

    /** Cars whose errors are not those assumed: how many of 100 gains lie in the interval that the tool tells. */
    private static void coverage() {
        Car car = Documents.car("gt-talvex");
        Track track = castelvane(car);
        RobustnessResult told = study(car, track).run(StudyRun.onAllCores());
        System.out.println("Talvex GT at Castelvane, " + DRAWS + " cars drawn (seed " + SEED + "), " + TRUTHS
                + " true cars a row (seed " + TRUTH_SEED + ").");
        System.out.println();
        head("the true cars");
        StringBuilder interval = new StringBuilder("| interval told, s |");
        for (RobustnessResult.Standing standing : told.standings()) {
            interval.append(String.format(Locale.ROOT, " %+.2f to %+.2f |", standing.low(), standing.high()));
        }
        System.out.println(interval);
        PlausibleDays days = PlausibleDays.of(car, track, DAY, true, List.of());
        int n = days.unknowns().size();
        Truth truth = new Truth(told, days, car, track, UnaryOperator.identity());
        truth.row("as assumed", plainly(n));
        truth.row("off half as far again", scaled(plainly(n), 1.5));
        truth.row("off 0.7 times as far", scaled(plainly(n), 0.7));
        truth.row("heavy tails (Student, 4 degrees, same deviation)", heavy(n));
        truth.row("errors of neighbours in the table correlated by 0.7", neighbours(n));
        truth.row("errors of all in the table correlated by 0.3", together(n));
        new Truth(told, days, car, track, set -> set.with(Quantity.SLIP_STIFFNESS_FALL, 0))
                .row("slip stiffness does not fall (`tyres.slipStiffnessFallPercent` 0)", plainly(n));
        int slides = days.unknowns().stream().map(Unknown::title).toList().indexOf(DoubtClass.LIGHT_WHEEL.title());
        for (double slide : new double[] {-3, 3}) {
            double[][] drawn = plainly(n);
            for (double[] draw : drawn) {
                draw[slides] = slide;
            }
            truth.row("brakes: " + (slide < 0 ? "no wheel locks" : "the light wheel slides"), drawn);
        }
        LineSearch search = LineSearch.of(Documents.circuit("castelvane"), car, LineChoices.DEFAULT);
        new Truth(told, days, car, search.fastest(Vehicle.of(car, DAY)).driven(), UnaryOperator.identity())
                .row("driven on the fastest line, told on the smoothest", plainly(n));
        new Truth(told, days, car, Documents.circuit("castelvane"), UnaryOperator.identity())
                .row("driven on the middle of the road", plainly(n));
    }

    /** The row "as assumed" of the coverage with other draws and other true cars: what chance alone makes of it. */
    private static void chance() {
        Car car = Documents.car("gt-talvex");
        Track track = castelvane(car);
        PlausibleDays days = PlausibleDays.of(car, track, DAY, true, List.of());
        head("seeds");
        for (long seed = SEED; seed <= CHANCE_SEEDS; seed++) {
            RobustnessResult told = study(car, track).withSeed(seed).run(StudyRun.onAllCores());
            new Truth(told, days, car, track, UnaryOperator.identity())
                    .row(
                            seed + ", " + (TRUTH_SEED + seed - SEED),
                            plainly(days.unknowns().size(), TRUTH_SEED + seed - SEED));
        }
    }

    /** The row "as assumed" told by few drawn cars: the mean over many seeds. */
    private static void few() {
        Car car = Documents.car("gt-talvex");
        Track track = castelvane(car);
        PlausibleDays days = PlausibleDays.of(car, track, DAY, true, List.of());
        // The true cars are driven once: seeds differ in what is told.
        List<double[]> gains = gains(car, track, days);
        head("cars drawn, seeds");
        for (int draws : FEW) {
            int seeds = FEW_IN_ALL / draws;
            double[] inside = new double[settings(car).size()];
            for (long seed = SEED; seed < SEED + seeds; seed++) {
                RobustnessResult told =
                        study(car, track).withDraws(draws).withSeed(seed).run(StudyRun.onAllCores());
                for (double[] truth : gains) {
                    for (int k = 0; k < inside.length; k++) {
                        RobustnessResult.Standing standing = told.standings().get(k);
                        inside[k] += truth[k] >= standing.low() && truth[k] <= standing.high() ? 1 : 0;
                    }
                }
            }
            StringBuilder line = new StringBuilder("| " + draws + ", " + seeds + " |");
            for (double count : inside) {
                line.append(String.format(Locale.ROOT, " %.0f |", 100 * count / gains.size() / seeds));
            }
            System.out.println(line);
        }
    }

    private static List<double[]> gains(Car car, Track track, PlausibleDays days) {
        double[][] errors = plainly(days.unknowns().size());
        return StudyRun.onAllCores()
                .inParallel(
                        errors.length,
                        () -> track,
                        (any, i) -> gains(days, car, LapSolver.on(days.road(errors[i])), errors[i]),
                        done -> {});
    }

    /** What all settings gain on one true car, s; NaN where one has no lap. */
    static double[] gains(PlausibleDays days, Car car, LapSolver solver, double[] errors) {
        return settings(car).stream()
                .mapToDouble(setUp -> {
                    try {
                        return time(days, setUp, solver, errors) - time(days, car, solver, errors);
                    } catch (LapwrightException noLap) {
                        return Double.NaN;
                    }
                })
                .toArray();
    }

    private static double time(PlausibleDays days, Car setUp, LapSolver solver, double[] errors) {
        return solver.lapTime(Vehicle.of(days.car(setUp, errors), days.day(DAY, errors)));
    }

    /** Stints told by three laps of each drawn car, and solved lap by lap on true ones. */
    private static void stints() {
        Car car = Documents.car("gt-talvex");
        Track track = LineSearch.of(Documents.circuit("harrowmere"), car, LineChoices.DEFAULT)
                .smoothest()
                .driven();
        List<Compound> compounds = List.of(Compound.steady("soft", 1.01, 0.002), Compound.steady("hard", 1, 0.0005));
        RaceLength race = new RaceLength(20, 0, 1, 0.6, 1);
        StintDoubtResult told = Stint.of(car, track, DAY, race)
                .onCompounds(compounds)
                .doubted()
                .withDraws(DRAWS)
                .withSeed(SEED)
                .run(StudyRun.onAllCores());
        List<Unknown> own = told.unknowns()
                .subList(
                        PlausibleDays.of(car, track, DAY, true, List.of())
                                .unknowns()
                                .size(),
                        told.unknowns().size());
        PlausibleDays days = PlausibleDays.of(car, track, DAY, true, own);
        double[][] errors = plainly(days.unknowns().size());
        List<boolean[]> in = StudyRun.onAllCores()
                .inParallel(
                        errors.length,
                        () -> track,
                        (any, i) -> {
                            double[] others = days.others(errors[i]);
                            List<Compound> worn = new ArrayList<>();
                            for (int c = 0; c < 2; c++) {
                                Compound one = compounds.get(c);
                                worn.add(Compound.steady(
                                        one.name(),
                                        one.grip() * DoubtClass.COMPOUND_GRIP.factor(others[1 + 2 * c]),
                                        one.wear() * DoubtClass.WEAR.factor(others[2 + 2 * c])));
                            }
                            StintResult driven = Stint.of(
                                            set(car, days.car(car, errors[i])),
                                            days.road(errors[i]),
                                            days.day(DAY, errors[i]),
                                            race)
                                    .withConsumption(FuelConsumption.constant(
                                            FuelConsumption.RACING_ENGINE * DoubtClass.CONSUMPTION.factor(others[0])))
                                    .onCompounds(worn)
                                    .run(StudyRun.onThreads(1));
                            double fuel = Math.max(
                                    driven.runs().get(0).fuelNeeded(),
                                    driven.runs().get(1).fuelNeeded());
                            double difference = driven.runs().get(1).time()
                                    - driven.runs().get(0).time();
                            return new boolean[] {
                                within(told.runs().get(0).fuelNeeded(), fuel),
                                within(told.runs().get(1).difference(), difference)
                            };
                        },
                        done -> {});
        System.out.printf(
                Locale.ROOT,
                "20 laps of Harrowmere, %d cars drawn (seed %d), %d true stints solved lap by lap (seed %d): of 100 the"
                        + " fuel needed lies in its interval for %.1f, the difference of the compounds for %.1f; counts are known to %.1f of"
                        + " 100.%n",
                DRAWS,
                SEED,
                in.size(),
                TRUTH_SEED,
                100.0 * in.stream().filter(one -> one[0]).count() / in.size(),
                100.0 * in.stream().filter(one -> one[1]).count() / in.size(),
                100 * Math.sqrt(0.9 * 0.1 / in.size()));
    }

    /** A car with the numbers of one that deviates from its document, as settings: so a stint can set fuel and grip on top. */
    private static Car set(Car car, Car deviating) {
        Map<Quantity, Double> values = new EnumMap<>(Quantity.class);
        for (Quantity quantity : Quantity.values()) {
            values.put(quantity, deviating.value(quantity));
        }
        // As the wings stand, what they are off by is as much of the whole car's areas.
        for (int i = 0; i < car.wings().size(); i++) {
            double angle = car.value("aero.wings." + car.wings().get(i).name() + ".angleDeg");
            Areas stated = car.wings().get(i).at(angle);
            Areas truly = deviating.wings().get(i).at(angle);
            values.merge(Quantity.DRAG_AREA, truly.drag() - stated.drag(), Double::sum);
            values.merge(Quantity.LIFT_AREA_FRONT, truly.liftFront() - stated.liftFront(), Double::sum);
            values.merge(Quantity.LIFT_AREA_REAR, truly.liftRear() - stated.liftRear(), Double::sum);
        }
        Car set = car;
        for (Map.Entry<Quantity, Double> one : values.entrySet()) {
            if (one.getValue() != car.value(one.getKey())) {
                set = set.with(one.getKey(), one.getValue());
            }
        }
        Track track = Documents.circuit("harrowmere");
        double off = LapSolver.lap(set, track, DAY).time()
                - LapSolver.lap(deviating, track, DAY).time();
        if (!(Math.abs(off) < 1e-4)) {
            throw new IllegalStateException("a car set otherwise laps otherwise, by " + off + " s");
        }
        return set;
    }

    private static boolean within(StintDoubtResult.Interval interval, double value) {
        return value >= interval.low() && value <= interval.high();
    }

    /** What is true, held against what was told. */
    private static final class Truth {
        private final RobustnessResult told;
        private final PlausibleDays days;
        private final Car car;
        private final Track track;
        private final UnaryOperator<Car> otherwise;

        Truth(RobustnessResult told, PlausibleDays days, Car car, Track track, UnaryOperator<Car> otherwise) {
            this.told = told;
            this.days = days;
            this.car = car;
            this.track = track;
            this.otherwise = otherwise;
        }

        void row(String what, double[][] errors) {
            StringBuilder line = new StringBuilder("| " + what + " |");
            for (int count : count(errors)) {
                line.append(String.format(Locale.ROOT, " %.0f |", 100.0 * count / errors.length));
            }
            System.out.println(line);
        }

        int[] count(double[][] errors) {
            PlausibleRoads roads = PlausibleRoads.of(track);
            List<Car> settings = settings(car);
            List<boolean[]> in = StudyRun.onAllCores()
                    .inParallel(
                            errors.length,
                            () -> track,
                            (any, i) -> {
                                int ofRoads = roads.unknowns().size();
                                double[] road =
                                        Arrays.copyOfRange(errors[i], errors[i].length - ofRoads, errors[i].length);
                                LapSolver solver = LapSolver.on(roads.road(road));
                                boolean[] within = new boolean[settings.size()];
                                try {
                                    double before = time(solver, otherwise.apply(car), errors[i]);
                                    for (int k = 0; k < within.length; k++) {
                                        double gain =
                                                time(solver, otherwise.apply(settings.get(k)), errors[i]) - before;
                                        RobustnessResult.Standing standing =
                                                told.standings().get(k);
                                        within[k] = gain >= standing.low() && gain <= standing.high();
                                    }
                                } catch (LapwrightException noLap) {
                                    Arrays.fill(within, false);
                                }
                                return within;
                            },
                            done -> {});
            int[] counts = new int[settings.size()];
            for (boolean[] one : in) {
                for (int k = 0; k < counts.length; k++) {
                    counts[k] += one[k] ? 1 : 0;
                }
            }
            return counts;
        }

        private double time(LapSolver solver, Car setUp, double[] draw) {
            return solver.lapTime(Vehicle.of(days.car(setUp, draw), days.day(DAY, draw)));
        }
    }

    private static double[][] plainly(int n) {
        return plainly(n, TRUTH_SEED);
    }

    /** Plain random numbers, not the tool's own way of drawing. */
    private static double[][] plainly(int n, long seed) {
        Random random = new Random(seed);
        double[][] drawn = new double[TRUTHS][n];
        for (double[] draw : drawn) {
            for (int k = 0; k < n; k++) {
                draw[k] = random.nextGaussian();
            }
        }
        return drawn;
    }

    private static double[][] scaled(double[][] drawn, double factor) {
        for (double[] draw : drawn) {
            for (int k = 0; k < draw.length; k++) {
                draw[k] *= factor;
            }
        }
        return drawn;
    }

    /** Student's t of 4 degrees of freedom has variance 2. */
    private static double[][] heavy(int n) {
        Random random = new Random(TRUTH_SEED);
        double[][] drawn = new double[TRUTHS][n];
        for (double[] draw : drawn) {
            for (int k = 0; k < n; k++) {
                double squares = 0;
                for (int j = 0; j < 4; j++) {
                    double one = random.nextGaussian();
                    squares += one * one;
                }
                draw[k] = random.nextGaussian() / Math.sqrt(squares / 4) / Math.sqrt(2);
            }
        }
        return drawn;
    }

    private static double[][] neighbours(int n) {
        double[][] drawn = plainly(n);
        for (double[] draw : drawn) {
            for (int k = 1; k < n; k++) {
                draw[k] = 0.7 * draw[k - 1] + Math.sqrt(1 - 0.49) * draw[k];
            }
        }
        return drawn;
    }

    /** All by a part that they have in common. */
    private static double[][] together(int n) {
        Random common = new Random(TRUTH_SEED + 1);
        double[][] drawn = plainly(n);
        for (double[] draw : drawn) {
            double shared = Math.sqrt(0.3) * common.nextGaussian();
            for (int k = 0; k < n; k++) {
                draw[k] = shared + Math.sqrt(0.7) * draw[k];
            }
        }
        return drawn;
    }

    /** How often the best setting of the demo car is the best. */
    private static void best() {
        Car car = Documents.car("gt-talvex");
        Track track = castelvane(car);
        System.out.println("Talvex GT at Castelvane, " + BEST_DRAWS + " cars drawn (seed " + SEED + ").");
        System.out.println();
        System.out.println("| adjustment | best as the document has it | best for so many of " + BEST_DRAWS
                + " | most often best | for so many | keeping the present one loses on average, s |");
        System.out.println("|---|---|---|---|---|---|");
        for (String name : List.of("rear-wing", "front-bar", "ride-height", "final-drive", "rear-bar", "rake")) {
            List<Double> settings = car.adjustment(name).legalSettings();
            Robustness study =
                    Robustness.of(car, track, DAY).withDraws(BEST_DRAWS).withSeed(SEED);
            LapSolver solver = LapSolver.on(track);
            int best = 0;
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < settings.size(); i++) {
                Car setUp = car.with(name, settings.get(i));
                study = study.against(setUp, DAY, settings.get(i));
                double time = solver.lapTime(Vehicle.of(setUp, DAY));
                if (time < least) {
                    least = time;
                    best = i;
                }
            }
            RobustnessResult found = study.run();
            int most = found.mostOftenBest().orElseThrow();
            System.out.println(String.format(
                    Locale.ROOT,
                    "| %s | %s | %d | %s | %d | %.2f |",
                    name,
                    plain(settings.get(best)),
                    found.standings().get(best).best(),
                    plain(settings.get(most)),
                    found.standings().get(most).best(),
                    found.present().cost()));
        }
    }

    /** What `sensitivity` names as faster without drawn cars, of each demo car, and whether that stands. */
    private static void advice() {
        System.out.println("| car, circuit | adjustment | named as faster at | by, s | nine in ten, s | gain on % of "
                + ADVICE_DRAWS + " cars | stands |");
        System.out.println("|---|---|---|---|---|---|---|");
        Map<String, String> demos = new LinkedHashMap<>();
        demos.put("gt-talvex", "castelvane");
        demos.put("touring-merrow", "harrowmere");
        demos.put("student-pipit", "skarnfell");
        demos.forEach((name, circuit) -> {
            Car car = Documents.car(name);
            Track track = LineSearch.of(Documents.circuit(circuit), car, LineChoices.DEFAULT)
                    .smoothest()
                    .driven();
            SensitivityResult named = Sensitivity.of(car, track, DAY).run();
            RobustnessResult drawn =
                    Robustness.of(named).withDraws(ADVICE_DRAWS).withSeed(SEED).run();
            List<AdjustmentVerdict> verdicts = Robustness.verdicts(named, drawn);
            for (int i = 0; i < verdicts.size(); i++) {
                SensitivityResult.Worth worth = named.worths().get(i);
                double gain = worth.best().difference();
                if (!worth.hasFaster() || !LapTimeDifference.counts(gain)) {
                    continue;
                }
                RobustnessResult.Standing standing = drawn.standings().get(i);
                System.out.println(String.format(
                        Locale.ROOT,
                        "| %s, %s | %s | %s | %s | %s | %.0f | %s |",
                        name,
                        circuit,
                        worth.adjustment().name(),
                        SensitivityReport.setting(worth, worth.best().setting()),
                        Standings.signed(gain, standing),
                        Standings.interval(standing),
                        100 * drawn.chanceOfGain(standing),
                        verdicts.get(i) == AdjustmentVerdict.GAIN
                                ? "yes"
                                : "no: " + verdicts.get(i).label()));
            }
        });
    }

    /** How far lap times of roads drawn by a circuit's document spread, over those of its import's own band. */
    private static void roads() {
        Car car = Documents.car("gt-talvex");
        Vehicle vehicle = Vehicle.of(car, DAY);
        List<Double> ratios = new ArrayList<>();
        for (DrawnSurvey.Source source : DrawnSurvey.Source.values()) {
            for (DrawnCircuit circuit : DrawnCircuit.drawn(1, ROADS_SEED)) {
                ImportedTrack found = ImportTables.imported(DrawnSurvey.of(circuit.truth(), source, car, ROADS_SEED));
                PlausibleRoads roads = PlausibleRoads.asStated(found.track());
                double[][] draws =
                        LatinHypercube.normal(ROADS_DRAWS, roads.unknowns().size(), SEED);
                double[] times = Stream.of(draws)
                        .mapToDouble(draw -> LapSolver.on(roads.road(draw)).lapTime(vehicle))
                        .toArray();
                double band = LapTimeBand.of(found, car, DAY).deviation();
                ratios.add(Math.log(new StandardDeviation().evaluate(times) / band));
            }
        }
        double mean = ratios.stream().mapToDouble(r -> r).average().orElseThrow();
        double spread = Math.sqrt(ratios.stream()
                .mapToDouble(r -> (r - mean) * (r - mean))
                .average()
                .orElseThrow());
        System.out.printf(
                Locale.ROOT,
                "%d imports (circuits and errors from seed %d, %d roads each): %.2f times, within a factor of %.2f%n",
                ratios.size(),
                ROADS_SEED,
                ROADS_DRAWS,
                Math.exp(mean),
                Math.exp(spread));
    }

    /** What less width costs on lines found anew, and as it is drawn. */
    private static void width() {
        System.out.println("| circuit | 0.2 m more margin on each side, line found anew, s | as drawn, s |");
        System.out.println("|---|---|---|");
        for (String name : List.of("castelvane", "harrowmere", "skarnfell")) {
            Car car = Documents.car("gt-talvex");
            Vehicle vehicle = Vehicle.of(car, DAY);
            Track road = Documents.circuit(name);
            double margin = LineChoices.DEFAULT.marginLeft();
            Track line =
                    LineSearch.of(road, car, LineChoices.DEFAULT).smoothest().driven();
            Track narrow = LineSearch.of(road, car, LineChoices.DEFAULT.withMargin(margin + 0.2))
                    .smoothest()
                    .driven();
            PlausibleRoads roads = PlausibleRoads.of(line);
            double[] draw = new double[roads.unknowns().size()];
            draw[roads.unknowns().stream().map(Unknown::title).toList().indexOf(DoubtClass.WIDTH.title())] = -1;
            double before = LapSolver.on(line).lapTime(vehicle);
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %+.2f | %+.2f |%n",
                    name,
                    LapSolver.on(narrow).lapTime(vehicle) - before,
                    LapSolver.on(roads.road(draw)).lapTime(vehicle) - before);
        }
    }

    private static String plain(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
