/**
 * The documents of car, setup, circuit and conditions: found, read, checked and written; laps and sweeps as tables and
 * JSON; files written whole or not at all. No physics and no charts.
 */
package dev.lapwright.documents;
