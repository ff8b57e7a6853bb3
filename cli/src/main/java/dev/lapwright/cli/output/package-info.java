/** What commands write: to the terminal, as reports, progress and tables, and to files. */
package dev.lapwright.cli.output;
