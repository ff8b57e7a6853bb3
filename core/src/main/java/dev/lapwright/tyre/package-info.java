/**
 * What one tyre can give: peak friction over load, pressure and temperature, and cornering stiffness; the gas in it; what its
 * tread temperatures say. No axles here.
 */
package dev.lapwright.tyre;
