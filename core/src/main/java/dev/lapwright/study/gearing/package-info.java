/** Final drives and ratios, and what the lap makes of them. */
package dev.lapwright.study.gearing;
