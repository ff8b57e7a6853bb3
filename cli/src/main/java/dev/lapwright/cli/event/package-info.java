/** Commands of an event's notebook, and what it says in place of a car and a circuit. */
package dev.lapwright.cli.event;
