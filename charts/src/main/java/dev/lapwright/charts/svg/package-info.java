/** SVG text from drawing calls. Not exported. */
package dev.lapwright.charts.svg;
