/** What one tyre can give: peak friction over load, pressure and temperature, and cornering stiffness. No axles here. */
package dev.lapwright.tyre;
