/**
 * The whole car as data: named quantities with units and ranges, the adjustments that move them, setups. Adjustments are
 * data, so that sweeps and everything built on them know none by name.
 */
package dev.lapwright.car;
