package dev.lapwright.fit;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Wing;
import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import java.util.EnumMap;
import java.util.Map;

/**
 * Scaled parameter of the search: a number u that is 0 for the car as given and 1 for a change of the size that is
 * usually in doubt (ours: a tenth of grip and power, a fifth of drag and downforce, 0.005 of rolling resistance). What
 * cannot be negative runs on a logarithmic scale.
 *
 * @param parameter which
 * @param before value of the car as given
 * @param unit change of the value, or of its logarithm, for u = 1
 * @param logarithmic whether value = before · exp(unit · u), instead of before + unit · u
 * @param least u of the search
 * @param most u of the search
 */
record ParameterScale(
        FitParameter parameter, double before, double unit, boolean logarithmic, double least, double most)
        implements Direction {
    /**
     * Step of u in differences. Speeds near a braking point have kinks in u, which the mean over a cell rounds off;
     * solver noise is some 1e-9 m/s. A fiftieth of what is in doubt (0.2 % of grip) is far above the one and far below
     * the curvature.
     */
    private static final double STEP = 0.02;
    /**
     * Sensitivities are kept while no u has moved by more than this since: half a percent of grip changes them by about
     * as much, which moves the best fit by as little of its standard error.
     */
    private static final double KEPT = 0.05;

    private static final double FACTOR_IN_DOUBT = 0.1;
    private static final double AREA_IN_DOUBT = 0.2;
    private static final double ROLLING_IN_DOUBT = 0.005;
    /**
     * A wing car's drag is some tenths of a square metre at least; keeps the scale of a car without drag above zero.
     */
    private static final double LEAST_AREA = 0.1;
    /** Factors searched: half to double. */
    private static final double MOST_FACTOR = 2;
    /** Ours: a tenth of the load is soft ground, no road. */
    private static final double MOST_ROLLING = 0.1;

    /** The areas of the car as it stands, at the reference ride heights. */
    static Areas areas(Car car) {
        Areas areas = new Areas(
                car.value(Quantity.DRAG_AREA), car.value(Quantity.LIFT_AREA_FRONT), car.value(Quantity.LIFT_AREA_REAR));
        for (Wing wing : car.wings()) {
            areas = areas.plus(wing.at(car.value("aero.wings." + wing.name() + ".angleDeg")));
        }
        return areas;
    }

    static ParameterScale of(FitParameter parameter, Car car) {
        Areas areas = areas(car);
        double lift = areas.liftFront() + areas.liftRear();
        double size = Math.max(Math.max(Math.abs(lift), areas.drag()), LEAST_AREA);
        double factor = Math.log(MOST_FACTOR) / FACTOR_IN_DOUBT;
        return switch (parameter) {
            case GRIP, POWER -> new ParameterScale(parameter, 1, FACTOR_IN_DOUBT, true, -factor, factor);
            case DRAG_AREA -> {
                // Base drag may not fall below zero, whatever the wings add.
                double unit = AREA_IN_DOUBT * Math.max(areas.drag(), LEAST_AREA);
                double room = Math.min(0.75 * areas.drag(), car.value(Quantity.DRAG_AREA));
                yield new ParameterScale(parameter, areas.drag(), unit, false, -room / unit, 2 * size / unit);
            }
            case DOWNFORCE_AREA ->
                new ParameterScale(
                        parameter, lift, AREA_IN_DOUBT * size, false, -1 / AREA_IN_DOUBT, 1.5 / AREA_IN_DOUBT);
            case ROLLING_RESISTANCE -> {
                double before = car.value(Quantity.ROLLING_RESISTANCE);
                yield new ParameterScale(
                        parameter,
                        before,
                        ROLLING_IN_DOUBT,
                        false,
                        -before / ROLLING_IN_DOUBT,
                        Math.max(MOST_ROLLING - before, ROLLING_IN_DOUBT) / ROLLING_IN_DOUBT);
            }
        };
    }

    /** Value in the parameter's unit. */
    double value(double u) {
        return logarithmic ? before * Math.exp(unit * u) : before + unit * u;
    }

    /** Change of the value with u. */
    double slope(double u) {
        return logarithmic ? unit * value(u) : unit;
    }

    @Override
    public double step() {
        return STEP;
    }

    @Override
    public double kept() {
        return KEPT;
    }

    @Override
    public boolean isOfTheCar() {
        return true;
    }

    /** Which quantities of the car move, and by how much, as the value moves from {@code before}. */
    @Override
    public Map<Quantity, Double> shifts(Car car, double u) {
        Map<Quantity, Double> shifts = new EnumMap<>(Quantity.class);
        double change = value(u) - before;
        switch (parameter) {
            case GRIP -> {
                Direction.scaled(car, Quantity.FRICTION_X_FRONT, change, shifts);
                Direction.scaled(car, Quantity.FRICTION_Y_FRONT, change, shifts);
                Direction.scaled(car, Quantity.FRICTION_X_REAR, change, shifts);
                Direction.scaled(car, Quantity.FRICTION_Y_REAR, change, shifts);
            }
            case POWER -> Direction.scaled(car, Quantity.POWER_SCALE, change, shifts);
            case DRAG_AREA -> shifts.put(Quantity.DRAG_AREA, change);
            case DOWNFORCE_AREA -> {
                double share = frontShare(car);
                shifts.put(Quantity.LIFT_AREA_FRONT, change * share);
                shifts.put(Quantity.LIFT_AREA_REAR, change * (1 - share));
            }
            case ROLLING_RESISTANCE -> shifts.put(Quantity.ROLLING_RESISTANCE, change);
        }
        return shifts;
    }

    /**
     * The aero balance, so that it is kept; of a car with next to no downforce, or with lift at one end, the weight's.
     */
    private static double frontShare(Car car) {
        Areas areas = areas(car);
        double sum = areas.liftFront() + areas.liftRear();
        boolean clear = areas.liftFront() >= 0 && areas.liftRear() >= 0 && sum > 0.01;
        return clear ? areas.liftFront() / sum : car.value(Quantity.FRONT_WEIGHT) / 100;
    }
}
