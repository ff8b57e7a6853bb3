package dev.lapwright.study.stint;

/**
 * A lap of a stint.
 *
 * @param number from 1
 * @param time s
 * @param fuelAtStart kg on board as it begins
 * @param fuelUsed kg
 * @param grip of the compound on this lap, relative to the car's tyre data
 */
public record StintLap(int number, double time, double fuelAtStart, double fuelUsed, double grip) {}
