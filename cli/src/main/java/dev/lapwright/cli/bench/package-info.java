/**
 * Command {@code bench}: a page in the browser on which knobs are turned, and the small server behind it, which reads a state, asks
 * studies and tells their reports. The page itself lies among the resources.
 */
package dev.lapwright.cli.bench;
