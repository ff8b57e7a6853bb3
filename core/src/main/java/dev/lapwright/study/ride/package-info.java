/** A wheel of each axle over a kerb and over a rough surface, and a map of damper rates. */
package dev.lapwright.study.ride;
