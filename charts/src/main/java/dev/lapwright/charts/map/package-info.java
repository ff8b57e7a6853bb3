/** A road in plan: its scale, its outline and what is written beside it. Not exported. */
package dev.lapwright.charts.map;
