package dev.lapwright.study.gearing;

import dev.lapwright.car.Car;
import java.util.Optional;

/**
 * One gearing that was tried.
 *
 * @param axis what was varied
 * @param value its setting, in its unit
 * @param car the car so geared
 * @param lap what the lap makes of its gears; empty where there was no lap
 * @param failure why there was no lap; empty where there was one
 */
public record GearingChoice(String axis, double value, Car car, Optional<GearingLap> lap, String failure) {}
