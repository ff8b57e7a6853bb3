/**
 * The road: curvature, slope, bank, grip and width over distance, the stations at which the lap is solved, and corners.
 * Axes after ISO 8855 (x forward, y left, z up): a left turn has positive curvature, positive bank lowers the left side,
 * positive slope climbs, positive vertical curvature is a dip. Nothing here knows a car.
 */
package dev.lapwright.track;
