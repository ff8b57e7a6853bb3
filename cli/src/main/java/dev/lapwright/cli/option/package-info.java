/** Groups of options that several commands share. */
package dev.lapwright.cli.option;
