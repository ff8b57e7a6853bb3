/**
 * Rows of samples under headings, as surveys and logs of driven laps hold them: which column holds what, in which unit, and
 * where laps begin. Not exported.
 */
package dev.lapwright.samples;
