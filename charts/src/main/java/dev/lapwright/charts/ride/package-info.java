/** Charts of passes over kerbs. */
package dev.lapwright.charts.ride;
