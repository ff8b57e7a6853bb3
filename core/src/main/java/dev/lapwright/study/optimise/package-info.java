/** The best setup on the legal steps of a car's adjustments, within limits. */
package dev.lapwright.study.optimise;
