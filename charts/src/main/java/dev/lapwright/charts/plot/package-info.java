/** Axes, labels, legends and layers that charts of several subjects are made of. Not exported. */
package dev.lapwright.charts.plot;
