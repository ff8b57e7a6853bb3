package dev.lapwright.cli;

import dev.lapwright.study.stint.StintResult;

/**
 * A stint and what was asked.
 *
 * @param choice the car, set up, and where
 * @param result what was found
 * @param density of the fuel, kg/l
 */
record StintOutcome(Choice choice, StintResult result, double density) {
    /** Litres of so many kg. */
    double litres(double kg) {
        return kg / density;
    }
}
