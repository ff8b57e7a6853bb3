/** Charts of a circuit or open run, and of the lines driven on it. */
package dev.lapwright.charts.track;
