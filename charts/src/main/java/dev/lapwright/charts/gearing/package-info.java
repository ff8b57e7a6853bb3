/** Charts of a gearbox: engine speed and tractive force over road speed. */
package dev.lapwright.charts.gearing;
