package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import java.util.Map;

/** Direction in which a fit moves a car: one number u, 0 for the car as given. */
interface Direction {
    /** Which quantities move, and by how much in their units, at u. */
    Map<Quantity, Double> shifts(Car car, double u);

    /** u brought within what is searched. */
    double clamped(double u);

    /** Step of u in central differences. */
    double step();

    /** How far u may move before sensitivities are made anew. */
    double kept();

    /** Whether it moves the car itself, and not what stands in for the line. */
    boolean isOfTheCar();
}
