/** Smooth curves through tabulated values. No physics. */
package dev.lapwright.curve;
