/** The commands that look at documents, import circuits and copy demos. */
package dev.lapwright.cli.document;
