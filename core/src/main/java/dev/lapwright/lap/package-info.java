/**
 * The lap: the car as set up in this air ({@code Vehicle}), the forces on four wheels ({@code WheelForces}), and the solver
 * that turns a track into a speed trace ({@code LapSolver} → {@code Lap}). The equations and their numbers are in
 * docs/theory.md.
 */
package dev.lapwright.lap;
