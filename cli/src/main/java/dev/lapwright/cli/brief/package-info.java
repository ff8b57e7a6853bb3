/** The command {@code brief}: one page before an event. */
package dev.lapwright.cli.brief;
