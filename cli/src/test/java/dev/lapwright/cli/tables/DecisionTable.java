package dev.lapwright.cli.tables;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

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
        double best = best(car, car.adjustment(adjustment));
        Random random = new Random(SEED);
        int same = 0;
        double cost = 0;
        for (int k = 0; k < draws; k++) {
            Car drawn = possible(car, random);
            double own = best(drawn, car.adjustment(adjustment));
            same += own == best ? 1 : 0;
            cost += time(drawn, adjustment, best) - time(drawn, adjustment, own);
        }
        System.out.println(String.format(
                Locale.ROOT, "| %s | %s | %.0f | %d | %.4f |", document, adjustment, best, same, cost / draws));
    }

    private double time(Car car, String adjustment, double setting) {
        return solver.solve(Vehicle.of(car.with(adjustment, setting), Conditions.STANDARD))
                .time();
    }

    private double best(Car car, Adjustment adjustment) {
        double best = adjustment.min();
        double least = Double.POSITIVE_INFINITY;
        for (double setting = adjustment.min(); setting <= adjustment.max(); setting += adjustment.step()) {
            double time = time(car, adjustment.name(), setting);
            if (time < least) {
                least = time;
                best = setting;
            }
        }
        return best;
    }

    /** A car that may be it; one that no document holds, as with a resistance below nought, is drawn again. */
    private static Car possible(Car car, Random random) {
        while (true) {
            try {
                return drawn(car, random);
            } catch (InvalidValueException e) {
                // Drawn again.
            }
        }
    }

    private static Car drawn(Car car, Random random) {
        CarDoubt doubt = car.doubt();
        List<String> names = doubt.correlated();
        double[][] root = root(doubt.correlation());
        List<Double> independent = new ArrayList<>();
        names.forEach(name -> independent.add(random.nextGaussian()));
        Car drawn = car;
        for (int i = 0; i < names.size(); i++) {
            double sum = 0;
            for (int j = 0; j <= i; j++) {
                sum += root[i][j] * independent.get(j);
            }
            double value = car.value(names.get(i));
            drawn = drawn.with(
                    names.get(i),
                    value + sum * doubt.quantities().get(names.get(i)).standardDeviation(value));
        }
        return drawn;
    }

    /** Lower triangle R of R Rᵀ = C by Cholesky's rows; what rounding makes of a nought below is nought. */
    private static double[][] root(double[][] c) {
        int n = c.length;
        double[][] r = new double[n][n];
        for (int i = 0; i < n; i++) {
            double rest = c[i][i];
            for (int j = 0; j < i; j++) {
                double sum = c[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= r[i][k] * r[j][k];
                }
                // A row that hangs wholly on those above has nothing of its own.
                r[i][j] = r[j][j] > 1e-2 ? sum / r[j][j] : 0;
                rest -= r[i][j] * r[i][j];
            }
            r[i][i] = Math.sqrt(Math.max(0, rest));
        }
        return r;
    }
}
