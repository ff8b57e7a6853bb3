/** Charts of lap times over what was swept, and of setups against each other. */
package dev.lapwright.charts.sweep;
