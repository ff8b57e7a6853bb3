/** Charts of laps: speed, laps compared, what limits the car, laps of a stint. */
package dev.lapwright.charts.lap;
