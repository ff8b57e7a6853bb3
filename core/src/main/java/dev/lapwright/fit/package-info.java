/**
 * Parameter estimation from logged laps: which grip, drag, downforce, power and rolling resistance make the lap model drive them.
 */
package dev.lapwright.fit;
