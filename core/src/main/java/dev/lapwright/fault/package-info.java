/**
 * The family of errors and the checks of arguments. Every error says where, what is wrong and what to do; the command
 * prints that and nothing else. Lowest package of all: everything may import it, it imports nothing of ours.
 */
package dev.lapwright.fault;
