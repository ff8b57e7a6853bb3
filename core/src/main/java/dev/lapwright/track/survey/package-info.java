/**
 * From surveyed points to a track: checks, smoothing splines whose strength comes from the data's own noise, and a report of
 * what was done. Knows no files and no coordinates but metres on a plane.
 */
package dev.lapwright.track.survey;
