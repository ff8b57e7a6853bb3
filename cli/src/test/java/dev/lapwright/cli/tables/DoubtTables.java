package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.documents.Documents;
import dev.lapwright.doubt.DoubtClass;
import dev.lapwright.doubt.LatinHypercube;
import dev.lapwright.doubt.PlausibleCars;
import dev.lapwright.doubt.PlausibleRoads;
import dev.lapwright.doubt.Unknown;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.study.LapTimeBand;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.track.Track;
import dev.lapwright.track.survey.ImportedTrack;
import java.math.BigDecimal;
import java.util.ArrayList;
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
 * <pre>java -cp cli/target/lapwright.jar:cli/target/test-classes dev.lapwright.cli.tables.DoubtTables [coverage|best|roads|width]</pre>
 */
public final class DoubtTables {
    private static final Conditions DAY = Conditions.STANDARD;
    private static final int DRAWS = 1000;
    private static final int TRUTHS = 400;
    private static final long SEED = 1;
    private static final long TRUTH_SEED = 20_001;
    private static final int BEST_DRAWS = 300;
    private static final long ROADS_SEED = 7000;
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
            case "best" -> best();
            case "roads" -> roads();
            case "width" -> width();
            default -> classes().forEach(System.out::println);
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

    /** Cars whose errors are not those assumed: how many of 100 gains lie in the interval that the tool tells. */
    private static void coverage() {
        Car car = Documents.car("gt-talvex");
        Track track = castelvane(car);
        Robustness study = Robustness.of(car, track, DAY).withDraws(DRAWS).withSeed(SEED);
        for (Map.Entry<String, Double> change : CHANGES.entrySet()) {
            study = study.against(car.with(change.getKey(), change.getValue()));
        }
        RobustnessResult told = study.run(StudyRun.onAllCores());
        System.out.println("Talvex GT at Castelvane, " + DRAWS + " cars drawn (seed " + SEED + "), " + TRUTHS
                + " true cars a row (seed " + TRUTH_SEED + ").");
        System.out.println();
        StringBuilder head = new StringBuilder("| the true cars |");
        StringBuilder interval = new StringBuilder("| interval told, s |");
        int place = 0;
        for (Map.Entry<String, Double> change : CHANGES.entrySet()) {
            head.append(' ')
                    .append(change.getKey())
                    .append(' ')
                    .append(plain(change.getValue()))
                    .append(" |");
            RobustnessResult.Standing standing = told.standings().get(place++);
            interval.append(String.format(Locale.ROOT, " %+.2f to %+.2f |", standing.low(), standing.high()));
        }
        System.out.println(head);
        System.out.println("|---|" + "---|".repeat(CHANGES.size()));
        System.out.println(interval);
        PlausibleCars cars = PlausibleCars.of(car, DAY);
        int n = cars.unknowns().size();
        row("as assumed", told, cars, track, plainly(n), UnaryOperator.identity());
        row("off half as far again", told, cars, track, scaled(plainly(n), 1.5), UnaryOperator.identity());
        row("off 0.7 times as far", told, cars, track, scaled(plainly(n), 0.7), UnaryOperator.identity());
        row("heavy tails (Student, 4 degrees, same deviation)", told, cars, track, heavy(n), UnaryOperator.identity());
        row(
                "errors of neighbours in the table correlated by 0.7",
                told,
                cars,
                track,
                neighbours(n),
                UnaryOperator.identity());
        row(
                "slip stiffness does not fall across (`tyres.slipStiffnessFallPercent` 0)",
                told,
                cars,
                track,
                plainly(n),
                setUp -> setUp.with(Quantity.SLIP_STIFFNESS_FALL, 0));
        for (double slide : new double[] {-3, 3}) {
            double[][] drawn = plainly(n);
            int at = cars.unknowns().stream().map(Unknown::title).toList().indexOf(DoubtClass.LIGHT_WHEEL.title());
            for (double[] draw : drawn) {
                draw[at] = slide;
            }
            row(
                    "brakes: " + (slide < 0 ? "no wheel locks" : "the light wheel slides"),
                    told,
                    cars,
                    track,
                    drawn,
                    UnaryOperator.identity());
        }
    }

    private static void row(
            String what,
            RobustnessResult told,
            PlausibleCars cars,
            Track track,
            double[][] errors,
            UnaryOperator<Car> otherwise) {
        Car car = Documents.car("gt-talvex");
        List<boolean[]> in = StudyRun.onAllCores()
                .inParallel(
                        errors.length,
                        () -> LapSolver.on(track),
                        (solver, i) -> {
                            double before = time(solver, cars, otherwise.apply(car), errors[i]);
                            boolean[] within = new boolean[CHANGES.size()];
                            int place = 0;
                            for (Map.Entry<String, Double> change : CHANGES.entrySet()) {
                                Car setUp = otherwise.apply(car.with(change.getKey(), change.getValue()));
                                double gain = time(solver, cars, setUp, errors[i]) - before;
                                RobustnessResult.Standing standing =
                                        told.standings().get(place);
                                within[place++] = gain >= standing.low() && gain <= standing.high();
                            }
                            return within;
                        },
                        done -> {});
        StringBuilder line = new StringBuilder("| " + what + " |");
        for (int k = 0; k < CHANGES.size(); k++) {
            int place = k;
            long inside = in.stream().filter(within -> within[place]).count();
            line.append(String.format(Locale.ROOT, " %.0f |", 100.0 * inside / in.size()));
        }
        System.out.println(line);
    }

    private static double time(LapSolver solver, PlausibleCars cars, Car setUp, double[] errors) {
        return solver.lapTime(Vehicle.of(cars.car(setUp, errors), cars.day(DAY, errors)));
    }

    /** Plain random numbers, not the tool's own way of drawing. */
    private static double[][] plainly(int n) {
        Random random = new Random(TRUTH_SEED);
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
