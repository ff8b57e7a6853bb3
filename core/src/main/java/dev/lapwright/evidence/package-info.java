/** Statistics on measured laps: what a difference between runs is worth. No lap is simulated here. */
package dev.lapwright.evidence;
