/** Ride over kerbs: the quarter car and what it does to the tyre's grip on the road. Lap time is not found here. */
package dev.lapwright.ride;
