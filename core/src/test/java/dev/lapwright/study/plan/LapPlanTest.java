package dev.lapwright.study.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LapPlanTest {
    private static final Car CAR = StudyCars.rearDriven().force(5000).car();
    private static final Track TRACK = StudyCars.circuit();
    private static final SweepAxis MASS = SweepAxis.stepped("chassis.massKg", 900, 1100, 50);
    private static final SweepAxis AIR = new SweepAxis("conditions.airTempC", new double[] {10, 30});

    private static LapPlan.Case on(String name, Car car) {
        return new LapPlan.Case(name, car, TRACK.stations(StationSpacing.DEFAULT), Conditions.STANDARD);
    }

    private static LapPlan plan() {
        return LapPlan.of(PlanDesign.grid(List.of(MASS, AIR)))
                .with(on("light", CAR))
                .with(on("draggy", CAR.with("aero.cdAM2", 1.5)));
    }

    private static List<String> driven(LapPlan plan, long from, long to, StudyRun how) {
        List<String> rows = new ArrayList<>();
        plan.drive(
                from,
                to,
                how,
                lap -> rows.add(lap.number() + " " + lap.driven().name() + " "
                        + List.of(lap.values()[0], lap.values()[1]) + " " + lap.figures() + lap.fault()));
        return rows;
    }

    /** A plan of one case is a sweep: bit for bit the same laps. */
    @Test
    void itsLapsAreThoseOfASweep() {
        SweepResult sweep =
                Sweep.of(CAR, TRACK, Conditions.STANDARD).over(MASS).over(AIR).run();
        List<Double> times = new ArrayList<>();
        plan().drive(
                        0,
                        10,
                        StudyRun.onThreads(2),
                        lap -> times.add(lap.figures().orElseThrow().lapTime()));
        assertThat(times)
                .containsExactlyElementsOf(sweep.points().stream()
                        .map(point -> point.figures().orElseThrow().lapTime())
                        .toList());
    }

    @Test
    void partsDrivenAnywhereMakeTheWhole() {
        LapPlan plan = plan();
        assertThat(plan.laps()).isEqualTo(20);
        List<String> whole = driven(plan, 0, 20, StudyRun.onThreads(1));
        List<String> parts = new ArrayList<>(driven(plan, 13, 20, StudyRun.onThreads(2)));
        parts.addAll(0, driven(plan, 0, 13, StudyRun.onThreads(3)));
        assertThat(parts).containsExactlyElementsOf(whole);
        assertThat(whole).doesNotHaveDuplicates();
    }

    @Test
    void aValueThatACarCannotHaveIsRefusedBeforeTheFirstLap() {
        LapPlan plan = LapPlan.of(PlanDesign.grid(List.of(new SweepAxis("chassis.massKg", new double[] {1000, -1}))));
        assertThatThrownBy(() -> plan.with(on("light", CAR))).hasMessageContaining("chassis.massKg");
    }

    @Test
    void lapsThatAreNotThereAreRefused() {
        LapPlan plan = plan();
        assertThatThrownBy(() -> plan.drive(0, 21, StudyRun.onThreads(1), lap -> {}))
                .hasMessageContaining("no laps of the plan");
    }
}
