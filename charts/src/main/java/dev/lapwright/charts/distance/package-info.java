/** Panels over the distance along a road, with corners and sectors named. Not exported. */
package dev.lapwright.charts.distance;
