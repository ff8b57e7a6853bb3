/** What was found once and may be used again: lines. */
package dev.lapwright.cache;
