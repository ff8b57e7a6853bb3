package dev.lapwright.fit;

import dev.lapwright.aero.Areas;
import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Nuisance of a car or its line on the scale of its doubt: z is 0 as given and has a normal prior of standard deviation 1.
 *
 * @param nuisance which
 * @param doubt one standard deviation, in the nuisance's unit
 * @param least z that the car's quantities allow
 * @param most z that they allow
 */
record NuisanceScale(FitNuisance nuisance, double doubt, double least, double most) implements DoubtedDirection {
    private static final double PERCENT = 100;
    private static final double MILLIMETRES = 1000;

    private static final List<Quantity> SENSITIVITIES = List.of(
            Quantity.SENSITIVITY_X_FRONT,
            Quantity.SENSITIVITY_Y_FRONT,
            Quantity.SENSITIVITY_X_REAR,
            Quantity.SENSITIVITY_Y_REAR);

    static NuisanceScale of(FitNuisance nuisance, double doubt, Car car) {
        double least = -MOST;
        double most = MOST;
        for (Map.Entry<Quantity, Double> shift :
                new NuisanceScale(nuisance, doubt, least, most).shifts(car, 1).entrySet()) {
            double value = car.value(shift.getKey());
            double up = (shift.getKey().max() - value) / shift.getValue();
            double down = (shift.getKey().min() - value) / shift.getValue();
            if (shift.getValue() != 0) {
                least = Math.max(least, Math.min(up, down));
                most = Math.min(most, Math.max(up, down));
            }
        }
        return new NuisanceScale(nuisance, doubt, Math.min(0, least), Math.max(0, most));
    }

    @Override
    public Map<Quantity, Double> shifts(Car car, double z) {
        Map<Quantity, Double> shifts = new EnumMap<>(Quantity.class);
        double change = doubt * z;
        double share = change / PERCENT;
        switch (nuisance) {
            case MASS -> shifts.put(Quantity.MASS, share * (car.value(Quantity.MASS) + car.value(Quantity.FUEL_MASS)));
            case AERO_BALANCE -> {
                Areas areas = ParameterScale.areas(car);
                double moved = share * (areas.liftFront() + areas.liftRear());
                shifts.put(Quantity.LIFT_AREA_FRONT, moved);
                shifts.put(Quantity.LIFT_AREA_REAR, -moved);
            }
            case FRONT_WEIGHT -> shifts.put(Quantity.FRONT_WEIGHT, change);
            case CG_HEIGHT -> shifts.put(Quantity.CG_HEIGHT, change / MILLIMETRES);
            case LOAD_SENSITIVITY -> SENSITIVITIES.forEach(quantity -> Direction.scaled(car, quantity, share, shifts));
            case GRIP_BALANCE -> {
                Direction.scaled(car, Quantity.FRICTION_X_FRONT, 0.5 * share, shifts);
                Direction.scaled(car, Quantity.FRICTION_Y_FRONT, 0.5 * share, shifts);
                Direction.scaled(car, Quantity.FRICTION_X_REAR, -0.5 * share, shifts);
                Direction.scaled(car, Quantity.FRICTION_Y_REAR, -0.5 * share, shifts);
            }
            case BRAKE_BALANCE -> shifts.put(Quantity.BRAKE_FRONT_SHARE, change);
            case LINE -> {
                Direction.scaled(car, Quantity.FRICTION_Y_FRONT, share, shifts);
                Direction.scaled(car, Quantity.FRICTION_Y_REAR, share, shifts);
            }
            case SPEED_SCALE, SENSOR_LAG, WAY_LENGTH, RUN_GRIP, SETUP_EFFECT -> {
                // They move no car, or not in all runs.
            }
        }
        return shifts;
    }

    /** Whether a doubt of it moves this car at all: a car without downforce has no aero balance. */
    boolean moves(Car car) {
        return shifts(car, 1).values().stream().anyMatch(shift -> shift != 0);
    }

    @Override
    public int run() {
        return -1;
    }

    @Override
    public boolean isOfTheCar() {
        return nuisance.side() == FitNuisance.Side.CAR;
    }

    @Override
    public boolean isOfTheLine() {
        return nuisance.side() == FitNuisance.Side.LINE;
    }
}
