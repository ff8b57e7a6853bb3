/**
 * JSON and comma-separated values read into values that know their place, faults gathered, words for messages. For cli alone:
 * knows no car, no circuit and no result.
 */
package dev.lapwright.text;
