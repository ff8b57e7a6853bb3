package dev.lapwright.fit;

import dev.lapwright.aero.Areas;
import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Nuisance of one further run: how much more grip was used in it than in the first, or how far what was changed on the car does not
 * do what its document says.
 *
 * @param nuisance which of the two
 * @param doubt one standard deviation, percent
 * @param run which, counted from 0
 * @param perDoubt change of quantities for z = 1
 */
record RunScale(FitNuisance nuisance, double doubt, int run, Map<Quantity, Double> perDoubt)
        implements DoubtedDirection {
    private static final double PERCENT = 100;
    /** What of a change of setup has an effect that a document knows roughly: roll stiffness, beside the wings' areas. */
    private static final List<Quantity> ROUGH =
            List.of(Quantity.BAR_FRONT, Quantity.BAR_REAR, Quantity.SPRING_FRONT, Quantity.SPRING_REAR);

    /** Grip used in a run over that of the first. */
    static RunScale grip(double doubt, int run, Car first) {
        Map<Quantity, Double> moves = new EnumMap<>(Quantity.class);
        for (Quantity friction : List.of(
                Quantity.FRICTION_X_FRONT,
                Quantity.FRICTION_Y_FRONT,
                Quantity.FRICTION_X_REAR,
                Quantity.FRICTION_Y_REAR)) {
            Direction.scaled(first, friction, doubt / PERCENT, moves);
        }
        return new RunScale(FitNuisance.RUN_GRIP, doubt, run, moves);
    }

    /** What wings, bars and springs change from the first run to another. */
    static RunScale effect(double doubt, int run, Car first, Car other) {
        Map<Quantity, Double> moves = new EnumMap<>(Quantity.class);
        Areas before = ParameterScale.areas(first);
        Areas after = ParameterScale.areas(other);
        double share = doubt / PERCENT;
        put(moves, Quantity.DRAG_AREA, share * (after.drag() - before.drag()));
        put(moves, Quantity.LIFT_AREA_FRONT, share * (after.liftFront() - before.liftFront()));
        put(moves, Quantity.LIFT_AREA_REAR, share * (after.liftRear() - before.liftRear()));
        for (Quantity quantity : ROUGH) {
            put(moves, quantity, share * (other.value(quantity) - first.value(quantity)));
        }
        return new RunScale(FitNuisance.SETUP_EFFECT, doubt, run, moves);
    }

    private static void put(Map<Quantity, Double> moves, Quantity quantity, double change) {
        if (change != 0) {
            moves.put(quantity, change);
        }
    }

    /** Whether a doubt of it moves anything. */
    boolean moves() {
        return doubt > 0 && !perDoubt.isEmpty();
    }

    @Override
    public Map<Quantity, Double> shifts(Car car, double z) {
        Map<Quantity, Double> shifts = new EnumMap<>(Quantity.class);
        perDoubt.forEach((quantity, change) -> shifts.put(quantity, z * change));
        return shifts;
    }

    @Override
    public double least() {
        return -MOST;
    }

    @Override
    public double most() {
        return MOST;
    }

    @Override
    public boolean isOfTheCar() {
        return false;
    }

    @Override
    public boolean shows(int other) {
        return other == run;
    }
}
