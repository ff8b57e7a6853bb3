/** Charts of logged laps. */
package dev.lapwright.charts.log;
