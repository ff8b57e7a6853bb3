/** Plans of many laps as they are written down, and the table that their laps go to. */
package dev.lapwright.results.plan;
