/** The lapwright command: reads the command line, asks the library, prints. No physics lives here. */
package dev.lapwright.cli;
