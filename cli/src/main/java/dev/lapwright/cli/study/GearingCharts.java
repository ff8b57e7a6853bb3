package dev.lapwright.cli.study;

import dev.lapwright.car.Unit;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.gearing.GearCurves;
import dev.lapwright.charts.gearing.GearSawtooth;
import dev.lapwright.charts.gearing.Traction;
import dev.lapwright.lap.CarFigures;
import dev.lapwright.lap.Drivetrain;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.GearingReport;
import dev.lapwright.study.gearing.GearingResult;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Charts of gears: engine speed over road speed, and the force of each gear against the resistance. */
public final class GearingCharts {
    private static final int STEPS = 200;

    private GearingCharts() {}

    public static Drawing sawtooth(GearingReport found) {
        return new Drawing(
                GearSawtooth.of(found.subject().title(), curves(found.result()), ChartStyle.STANDARD),
                GearSawtooth.SIZE);
    }

    public static GearCurves curves(GearingResult result) {
        GearingResult.GearedLap lap = result.asGiven().baseline();
        List<GearingResult.Gear> gears = result.gears();
        double[] shifts = new double[gears.size() - 1];
        Arrays.fill(shifts, Double.NaN);
        for (GearingResult.Shift shift : lap.upshifts()) {
            shifts[shift.from() - 1] = gears.get(shift.from() - 1).toSpeed();
        }
        CarFigures figures = CarFigures.of(Vehicle.of(result.car(), result.conditions()), 0);
        return new GearCurves(
                gears.stream()
                        .mapToDouble(GearingResult.Gear::engineSpeedPerSpeed)
                        .toArray(),
                shifts,
                lap.limiter().revLimit(),
                figures.engine().peakPowerRpm(),
                lap.lowestSpeed(),
                lap.top().speed(),
                lap.top().gear());
    }

    public static Drawing traction(GearingReport found) {
        GearingResult result = found.result();
        return new Drawing(
                Traction.of(result.car().name(), forces(result), resistances(result), ChartStyle.STANDARD),
                Traction.SIZE);
    }

    /** Each gear from the lowest engine speed that its torque is known at, the first from standstill, to the rev limit. */
    private static List<Traction.ForceCurve> forces(GearingResult result) {
        Drivetrain drivetrain = Drivetrain.of(Vehicle.of(result.car(), result.conditions()));
        double lowest = result.car().torqueCurve().rpm()[0];
        List<Traction.ForceCurve> curves = new ArrayList<>();
        for (int gear = 1; gear <= drivetrain.gears(); gear++) {
            int number = gear;
            double limit = drivetrain.limitSpeed(gear);
            double from = gear == 1 ? 0 : Math.min(lowest / drivetrain.engineSpeed(gear, 1), limit / 2);
            curves.add(curve(Integer.toString(gear), from, limit, speed -> drivetrain.force(number, speed)));
        }
        return curves;
    }

    private static List<Traction.ForceCurve> resistances(GearingResult result) {
        double fastest = result.gears().get(result.gears().size() - 1).limitSpeed();
        List<Traction.ForceCurve> curves = new ArrayList<>();
        for (GearingResult.Scenario scenario : result.scenarios()) {
            Drivetrain drivetrain = Drivetrain.of(Vehicle.of(scenario.car(), scenario.conditions()));
            double wind = scenario.kind() == GearingResult.Scenario.Kind.HEAD_WIND ? scenario.amount() : 0;
            curves.add(curve(name(scenario), 0, fastest, speed -> drivetrain.resistance(speed, wind, 0)));
        }
        return curves;
    }

    private static String name(GearingResult.Scenario scenario) {
        double kmh = Unit.METRE_PER_SECOND.convert(scenario.amount(), Unit.KILOMETRE_PER_HOUR);
        return switch (scenario.kind()) {
            case AS_GIVEN -> "resistance in still air";
            case TOW -> "in a tow of " + Numbers.fixed(100 * scenario.amount(), 0) + " %";
            case HEAD_WIND ->
                kmh < 0
                        ? "with " + Numbers.fixed(-kmh, 0) + " km/h from behind"
                        : "against " + Numbers.fixed(kmh, 0) + " km/h";
        };
    }

    private static Traction.ForceCurve curve(String name, double from, double to, DoubleUnaryOperator force) {
        double[] speeds = new double[STEPS + 1];
        double[] forces = new double[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            speeds[i] = i == STEPS ? to : from + (to - from) * i / STEPS;
            forces[i] = force.applyAsDouble(speeds[i]);
        }
        return new Traction.ForceCurve(name, speeds, forces);
    }
}
