package examples;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapDerivatives;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import java.util.Comparator;
import java.util.Locale;

/** What one percent more of each quantity of a car is worth, from one solved lap. */
public final class WorthOfEveryQuantity {
    private WorthOfEveryQuantity() {}

    public static void main(String[] arguments) {
        Car car = Documents.car("gt-talvex");
        LapSolver solver = LapSolver.on(Documents.circuit("castelvane"));
        LapDerivatives slopes = solver.derivatives(Vehicle.of(car, Conditions.STANDARD), car.quantityNames());
        Comparator<String> byWorth = Comparator.comparingDouble(name -> -Math.abs(perPercent(car, slopes, name)));
        slopes.names().stream()
                .filter(name -> !Double.isNaN(slopes.of(name).mean()))
                .sorted(byWorth)
                .limit(8)
                .forEach(name -> System.out.printf(
                        Locale.ROOT, "%-28s %+6.3f s for one percent more%n", name, perPercent(car, slopes, name)));
    }

    private static double perPercent(Car car, LapDerivatives slopes, String name) {
        return 0.01 * car.value(name) * slopes.of(name).mean();
    }
}
