/** Racing lines along a road: minimum curvature and minimum time. */
package dev.lapwright.line;
