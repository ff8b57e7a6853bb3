/** Charts of what adjustments, balance and tyre pressures are worth. */
package dev.lapwright.charts.setup;
