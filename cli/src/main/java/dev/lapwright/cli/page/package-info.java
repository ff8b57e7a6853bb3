/**
 * A report as one HTML page: what stands on it, as texts ready to print, and how they become HTML. Knows nothing of cars; reads
 * no file but its own template and style sheet.
 */
package dev.lapwright.cli.page;
