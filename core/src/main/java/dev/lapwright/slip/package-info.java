/**
 * A fuller model beside that of {@link dev.lapwright.lap}: the equilibrium of four slipping wheels at each place, with steer, sideslip and yaw
 * moment, and laps solved by it.
 */
package dev.lapwright.slip;
