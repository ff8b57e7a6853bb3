package dev.lapwright.cli;

import dev.lapwright.car.Unit;
import dev.lapwright.results.Subject;
import dev.lapwright.study.pressures.PressureResult;

/**
 * A study of pressures and what was asked.
 *
 * @param subject the car, set up, and where
 * @param result what was found
 * @param unit to print pressures in
 * @param columns which heading of a log was taken for what; empty without a log
 */
record PressuresOutcome(Subject subject, PressureResult result, Unit unit, String columns) {}
