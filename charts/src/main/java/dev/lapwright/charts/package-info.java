/**
 * How charts look, and pictures of them as SVG and PNG bytes.
 *
 * <p>Each chart is a class of a package below this one, with a method {@code of} that makes a {@code JFreeChart} and the {@code
 * SIZE} it is designed for; {@link dev.lapwright.charts.ChartStyle} says how it looks and {@link
 * dev.lapwright.charts.ChartImage} makes the picture. Nothing is read, nothing is written to a file, and nothing is computed
 * that a result does not hold. No setting is global.
 */
package dev.lapwright.charts;
