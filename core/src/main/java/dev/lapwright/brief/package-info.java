/**
 * All that the studies say of one car at one circuit, asked at once: the brief before an event, and after driving what the
 * laps proved. Asks the studies and computes nothing that they do; the highest package of all.
 */
package dev.lapwright.brief;
