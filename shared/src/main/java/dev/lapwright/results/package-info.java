/**
 * Results of laps and studies as tables of comma-separated values and as JSON, the unit in each name, with the hash of what
 * they were computed from. No physics and no charts.
 */
package dev.lapwright.results;
