package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import java.util.Map;

/** Direction in which a fit moves a car: one number u, 0 for the car as given. */
interface Direction {
    /** Which quantities move, and by how much in their units, at u. */
    Map<Quantity, Double> shifts(Car car, double u);

    /** Least u that is searched. */
    double least();

    /** Greatest u that is searched. */
    double most();

    /** u brought within what is searched. */
    default double clamped(double u) {
        return Math.max(least(), Math.min(most(), u));
    }

    /** Step of u in central differences. */
    double step();

    /** How far u may move before sensitivities are made anew. */
    double kept();

    /** Whether it moves the car itself, and not what stands in for the line. */
    boolean isOfTheCar();

    /** Whether it stands in for another line. */
    default boolean isOfTheLine() {
        return false;
    }

    /** Whether it shows in the laps of a run, counted from 0. */
    default boolean shows(int run) {
        return true;
    }

    /** Adds a quantity that moves by a share of its value. */
    static void scaled(Car car, Quantity quantity, double share, Map<Quantity, Double> shifts) {
        shifts.put(quantity, share * car.value(quantity));
    }
}
