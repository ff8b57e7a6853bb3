/** Cold pressures to set from logged pairs, and what pressures away from the ideal cost. */
package dev.lapwright.study.pressures;
