package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.slip.SlipModel;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import java.util.List;
import java.util.Locale;

/** Prints the table of docs/validation.md: the fuller model beside the fast one on the nine demo laps, and one click of each bar. */
public final class ModelTables {
    private ModelTables() {}

    /** No arguments. */
    public static void main(String... none) {
        System.out.println(
                "| car | circuit | fast, s | fuller, s | difference, % | slowest corner, fast, km/h | fuller |"
                        + " front bar one step stiffer, fast, s | fuller | unchecked stations |");
        System.out.println("|---|---|---|---|---|---|---|---|---|---|");
        for (String name : List.of("gt-talvex", "touring-merrow", "student-pipit")) {
            for (String circuit : List.of("harrowmere", "castelvane", "skarnfell")) {
                row(Documents.car(name), Documents.circuit(circuit).stations(StationSpacing.DEFAULT));
            }
        }
    }

    private static void row(Car car, Stations stations) {
        LapSolver fast = new LapSolver(stations);
        LapSolver fuller = SlipModel.laps(stations);
        Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
        Lap fastLap = fast.solve(vehicle);
        Lap fullerLap = fuller.solve(vehicle);
        LapFigures fastFigures = fastLap.figures();
        LapFigures fullerFigures = fullerLap.figures();
        Car stiffer = car.with("front-bar", car.setting("front-bar") + 1);
        Vehicle changed = Vehicle.of(stiffer, Conditions.STANDARD);
        long unchecked = 0;
        for (int i = 0; i < fullerLap.count(); i++) {
            unchecked += fullerLap.isUnchecked(i) ? 1 : 0;
        }
        System.out.printf(
                Locale.ROOT,
                "| %s | %s | %.3f | %.3f | %+.1f | %.1f | %.1f | %+.3f | %+.3f | %d of %d |%n",
                car.name(),
                stations.track().name(),
                fastLap.time(),
                fullerLap.time(),
                100 * (fullerLap.time() / fastLap.time() - 1),
                3.6 * fastFigures.minimumCornerSpeed(),
                3.6 * fullerFigures.minimumCornerSpeed(),
                fast.lapTime(changed) - fastLap.time(),
                fuller.lapTime(changed) - fullerLap.time(),
                unchecked,
                fullerLap.count());
    }
}
