/** Questions that take many laps: sweeps and what is made of them. Parallel here, never in the solver. */
package dev.lapwright.study;
