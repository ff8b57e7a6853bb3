/**
 * The air a car drives in: standard atmosphere, density of moist air, wind, and what the air does to engine power.
 * Aerodynamic forces are not here but in {@code aero}.
 */
package dev.lapwright.air;
