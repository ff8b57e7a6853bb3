package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Prints as Markdown what each optional term of the car's forces is worth on the nine demo laps: lap time with the term less lap
 * time without it, all else as the demo car has it. Uses the public API alone; run from the top of the project, with the command
 * built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/TermTables.java</pre>
 */
public final class TermTables {
    private static final List<String> CARS = List.of("gt-talvex", "touring-merrow", "student-pipit");
    private static final List<String> CIRCUITS = List.of("castelvane", "harrowmere", "skarnfell");

    /** A term, with the quantities that switch it on and off; what is not named stays as the demo car has it. */
    private record Term(String name, Map<String, Double> with, Map<String, Double> without) {}

    private static final List<Term> TERMS = List.of(
            term("shift time: as it is against none", Map.of(), Map.of("gearbox.shiftTimeS", 0.0)),
            term(
                    "lowest gear: second against first",
                    one("gearbox.lowestGearOnRoad", 2),
                    one("gearbox.lowestGearOnRoad", 1)),
            term(
                    "slip of driven tyres: 3 % against none",
                    one("drive.tyreSlipPercent", 3), one("drive.tyreSlipPercent", 0)),
            term(
                    "differentials: open against what is fitted",
                    Map.of(
                            "drive.front.powerLockPercent", 0.0,
                            "drive.front.coastLockPercent", 0.0,
                            "drive.rear.powerLockPercent", 0.0,
                            "drive.rear.coastLockPercent", 0.0),
                    Map.of()),
            term(
                    "differentials: preload of 50 Nm against none",
                    Map.of("drive.front.preloadNm", 50.0, "drive.rear.preloadNm", 50.0),
                    Map.of("drive.front.preloadNm", 0.0, "drive.rear.preloadNm", 0.0)),
            term(
                    "slip stiffness: half the cornering stiffness against all of it",
                    one("tyres.slipStiffnessPercent", 50),
                    one("tyres.slipStiffnessPercent", 100)),
            term(
                    "slip stiffness: twice the cornering stiffness against all of it",
                    one("tyres.slipStiffnessPercent", 200),
                    one("tyres.slipStiffnessPercent", 100)),
            term(
                    "slip stiffness: no fall in bends against that of a usual curve",
                    one("tyres.slipStiffnessFallPercent", 0),
                    one("tyres.slipStiffnessFallPercent", 100)),
            term(
                    "engine drag on the overrun: none against 20 %",
                    one("engine.overrunDragPercent", 0), one("engine.overrunDragPercent", 20)),
            term(
                    "light inner wheel: none locks against 50 %",
                    one("brakes.lightWheelPercent", 0), one("brakes.lightWheelPercent", 50)),
            term(
                    "light inner wheel: may slide against 50 %",
                    one("brakes.lightWheelPercent", 100), one("brakes.lightWheelPercent", 50)),
            term(
                    "ride heights follow brakes and drive, springs carry all of it",
                    Map.of("suspension.front.pitchPercent", 100.0, "suspension.rear.pitchPercent", 100.0),
                    Map.of()),
            term("ride heights follow crests, dips and banks", one("suspension.heavePercent", 100), Map.of()),
            term(
                    "ride heights follow both",
                    Map.of(
                            "suspension.front.pitchPercent", 100.0,
                            "suspension.rear.pitchPercent", 100.0,
                            "suspension.heavePercent", 100.0),
                    Map.of()));

    private TermTables() {}

    private static Map<String, Double> one(String quantity, double value) {
        return Map.of(quantity, value);
    }

    private static Term term(String name, Map<String, Double> with, Map<String, Double> without) {
        return new Term(name, new TreeMap<>(with), new TreeMap<>(without));
    }

    /** Prints them. */
    public static void main(String... ignored) {
        List<String> heads = new ArrayList<>();
        List<LapSolver> solvers = new ArrayList<>();
        CIRCUITS.forEach(c -> solvers.add(LapSolver.on(Documents.circuit(c))));
        CARS.forEach(car -> CIRCUITS.forEach(circuit -> heads.add(car + ", " + circuit)));
        System.out.println("| term, in ms | " + String.join(" | ", heads) + " |");
        System.out.println("|---" + "|---".repeat(heads.size()) + "|");
        StringBuilder laps = new StringBuilder("| lap, in s |");
        for (String name : CARS) {
            Car car = Documents.car(name);
            for (LapSolver solver : solvers) {
                laps.append(String.format(Locale.ROOT, " %.3f |", time(solver, car, Map.of())));
            }
        }
        System.out.println(laps);
        for (Term term : TERMS) {
            StringBuilder row = new StringBuilder("| " + term.name() + " |");
            for (String name : CARS) {
                Car car = Documents.car(name);
                for (LapSolver solver : solvers) {
                    double worth = time(solver, car, term.with()) - time(solver, car, term.without());
                    row.append(String.format(Locale.ROOT, " %+.0f |", 1000 * worth));
                }
            }
            System.out.println(row);
        }
    }

    private static double time(LapSolver solver, Car car, Map<String, Double> settings) {
        Car changed = car;
        for (Map.Entry<String, Double> setting : settings.entrySet()) {
            changed = changed.with(setting.getKey(), setting.getValue());
        }
        return solver.lapTime(Vehicle.of(changed, Conditions.STANDARD));
    }
}
