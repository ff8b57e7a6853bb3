/** Lap time over the whole range of everything that can be turned, about a car as it stands. */
package dev.lapwright.study.landscape;
