package dev.lapwright.study.gearing;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.Check;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Track;
import java.util.List;

/**
 * What a study of gearing found.
 *
 * @param car as it stood
 * @param track where
 * @param conditions the day
 * @param axes what was varied, each by itself
 * @param gears the gears of the car as it stood
 * @param traction force and resistance of the car as it stood
 * @param scenarios as given first, then the tow and the head wind if they were asked for
 */
public record GearingResult(
        Car car,
        Track track,
        Conditions conditions,
        List<SweepAxis> axes,
        List<GearingGear> gears,
        GearingTraction traction,
        List<GearingScenario> scenarios) {
    public GearingResult {
        axes = List.copyOf(axes);
        gears = List.copyOf(gears);
        scenarios = List.copyOf(scenarios);
        Check.positive("scenarios", scenarios.size());
    }

    /** Car and day as given. */
    public GearingScenario asGiven() {
        return scenarios.get(0);
    }
}
