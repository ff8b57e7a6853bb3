/** What is said of an event: its runs, and what they show of each change. */
package dev.lapwright.results.event;
