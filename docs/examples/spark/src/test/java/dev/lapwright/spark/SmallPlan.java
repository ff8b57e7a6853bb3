package dev.lapwright.spark;

import dev.lapwright.documents.Documents;
import dev.lapwright.results.plan.PlanTable;
import dev.lapwright.results.plan.PlannedCases;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.plan.LapPlan;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A plan of some hundred laps, and its table as one machine writes it: a demo, a circuit of its own, some laps that there are not. */
final class SmallPlan {
    static final String PROGRAM = "of the test";

    private final Path file;
    final ShippedPlan shipped;

    SmallPlan(Path folder) throws IOException {
        Path ring = folder.resolve("ring.json");
        Files.copy(Path.of("../ring-50.json"), ring);
        file = folder.resolve("plan.json");
        // So little grip that a car stands on the slope of its own rolling resistance has no lap: a row with its fault.
        Files.writeString(file, """
                {"lapwright": "plan/1", "name": "small", "cars": ["gt-talvex", "touring-merrow"],
                 "circuits": ["harrowmere", "%s"], "design": "sobol", "points": 90,
                 "vary": {"chassis.massKg": "1200:1300:1", "engine.powerScale": "0.01,0.5,1"}}
                """.formatted(ring));
        shipped = ShippedPlan.of(file, PROGRAM);
    }

    /** Its table by one process. */
    String table(Path table) throws IOException {
        LapPlan plan = PlannedCases.plan(Documents.plan(file), name -> name, remark -> {});
        try (PlanTable out = PlanTable.open(plan, table, 0, false, PROGRAM)) {
            plan.drive(0, plan.laps(), StudyRun.onAllCores(), out::write);
        }
        return Files.readString(table);
    }
}
