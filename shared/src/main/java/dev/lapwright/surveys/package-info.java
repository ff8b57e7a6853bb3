/**
 * Surveys of a centre line, points or logged laps, read onto a plane in metres.
 */
package dev.lapwright.surveys;
