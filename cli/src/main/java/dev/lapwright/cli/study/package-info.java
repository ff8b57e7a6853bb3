/** The commands that ask a study: one file each, in one form. */
package dev.lapwright.cli.study;
