/** Engine, gearbox, final drive and differential: drive force over road speed. Knows nothing of tyres' grip. */
package dev.lapwright.powertrain;
