/** Laps over a grid of settings. */
package dev.lapwright.study.sweep;
