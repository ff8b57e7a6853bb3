package dev.lapwright.study.pressures;

/**
 * What hot pressures away from the ideal cost on a lap.
 *
 * @param awayKpa distance from the ideal, kPa
 * @param gripLost share of grip lost at an axle so far away, 0 to 1
 * @param front lap time over that at the ideal, front tyres away, s
 * @param rear the same, rear tyres away, s
 * @param both the same, all tyres away, s
 */
public record PressureCost(double awayKpa, double gripLost, double front, double rear, double both) {}
