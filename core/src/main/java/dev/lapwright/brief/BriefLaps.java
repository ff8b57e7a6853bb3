package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.compare.Comparison;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.function.Supplier;

/** Laps of a brief, all on one solver and so on one thread. */
final class BriefLaps {
    private final LapSolver solver;
    private final Conditions conditions;
    private final Lap asItStands;

    /** @throws NoLapException if the car has no lap */
    BriefLaps(Car car, Track track, Conditions conditions) {
        this.conditions = conditions;
        solver = LapSolver.on(track);
        asItStands = lap(car);
    }

    private BriefLaps(LapSolver solver, Conditions conditions, Lap asItStands) {
        this.solver = solver;
        this.conditions = conditions;
        this.asItStands = asItStands;
    }

    /** The same for another thread. */
    BriefLaps apart() {
        return new BriefLaps(new LapSolver(asItStands.stations()), conditions, asItStands);
    }

    /** The lap of the car as it stands. */
    Lap asItStands() {
        return asItStands;
    }

    /** The car as it stands. */
    Car car() {
        return asItStands.vehicle().car();
    }

    Lap lap(Car car) {
        return solver.solve(Vehicle.of(car, conditions));
    }

    /** The car as it stands with these changes, in their order. */
    Car changed(List<BriefResult.SettingChange> changes) {
        Car changed = car();
        for (BriefResult.SettingChange change : changes) {
            changed = changed.with(change.adjustment().name(), change.to());
        }
        return changed;
    }

    /** What another car does against the lap of the car as it stands; missing where there is no such car, or no lap. */
    BriefResult.Part<BriefResult.ChangeEffect> effect(Supplier<Car> other) {
        return BriefResult.Part.ask(() -> effect(asItStands, lap(other.get())));
    }

    static BriefResult.ChangeEffect effect(Lap without, Lap with) {
        return new BriefResult.ChangeEffect(Comparison.of(without, with));
    }
}
