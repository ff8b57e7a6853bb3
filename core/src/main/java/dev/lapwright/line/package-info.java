/** The line driven round a circuit: the one that bends least and the one that takes least time. */
package dev.lapwright.line;
