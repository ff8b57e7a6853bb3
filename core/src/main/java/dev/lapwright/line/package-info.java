/** The racing line across the width of the circuit. The lap driven on it is found in the package lap. */
package dev.lapwright.line;
