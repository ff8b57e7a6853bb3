/**
 * Logs as timing, a logger or a gauge writes them: lap times, channels of driven laps, tyre pressures; read into what core
 * works on.
 */
package dev.lapwright.logs;
