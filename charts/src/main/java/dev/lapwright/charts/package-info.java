/** Charts of results, saved as SVG and PNG. Nothing is read and nothing is computed that a result does not hold. */
package dev.lapwright.charts;
