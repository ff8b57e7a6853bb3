package dev.lapwright.cli.tables;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.doubt.PlausibleCars;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;

/**
 * Prints how often the setting that is best for a fitted car is best for the cars that may be it: cars are drawn from the doubt in its
 * document. Uses the public API alone; run from the top of the project, with the command built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/DecisionTable.java 40 one.json two.json</pre>
 *
 * with documents of the Talvex GT that {@code fit --to} wrote.
 */
public final class DecisionTable {
    private static final long SEED = 3;
    private static final List<String> ASKED = List.of("rear-wing", "front-bar");

    private final LapSolver solver =
            LapSolver.on(LineSearch.of(Documents.circuit("castelvane"), Documents.car("gt-talvex"), LineChoices.DEFAULT)
                    .smoothest()
                    .driven());

    private DecisionTable() {}

    /** Prints the table. */
    public static void main(String... arguments) {
        DecisionTable table = new DecisionTable();
        int draws = Integer.parseInt(arguments[0]);
        System.out.println("| document | adjustment | best for it | best for so many of " + draws
                + " | mean time that it costs the others and them, s |");
        System.out.println("|---|---|---|---|---|");
        for (int i = 1; i < arguments.length; i++) {
            for (String adjustment : ASKED) {
                table.print(arguments[i], adjustment, draws);
            }
        }
    }

    private void print(String document, String adjustment, int draws) {
        Car car = Documents.car(document);
        PlausibleCars cars = PlausibleCars.asStated(car, Conditions.STANDARD);
        double best = best(car, car.adjustment(adjustment), setUp -> setUp);
        int same = 0;
        double cost = 0;
        for (double[] draw : cars.draws(draws, SEED)) {
            UnaryOperator<Car> deviating = setUp -> cars.car(setUp, draw);
            double own = best(car, car.adjustment(adjustment), deviating);
            same += own == best ? 1 : 0;
            cost += time(deviating.apply(car.with(adjustment, best)))
                    - time(deviating.apply(car.with(adjustment, own)));
        }
        System.out.println(String.format(
                Locale.ROOT, "| %s | %s | %.0f | %d | %.4f |", document, adjustment, best, same, cost / draws));
    }

    private double time(Car car) {
        return solver.lapTime(Vehicle.of(car, Conditions.STANDARD));
    }

    /** The setting on which a car is fastest that differs from what it is set up as. */
    private double best(Car car, Adjustment adjustment, UnaryOperator<Car> deviating) {
        return adjustment.legalSettings().stream()
                .min(Comparator.comparingDouble(setting -> time(deviating.apply(car.with(adjustment.name(), setting)))))
                .orElseThrow();
    }
}
