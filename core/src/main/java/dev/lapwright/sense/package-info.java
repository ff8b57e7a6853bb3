/** Oddities of cars, circuits, surveys and logs: what is allowed and yet hardly true. */
package dev.lapwright.sense;
