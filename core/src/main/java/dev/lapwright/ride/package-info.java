/**
 * One wheel on a road that is not flat: spring, four-way damper and tyre as a quarter car, driven over kerbs and rough
 * surfaces. Not here: pitch and roll, bump stops, and what a kerb does to the car's path.
 */
package dev.lapwright.ride;
