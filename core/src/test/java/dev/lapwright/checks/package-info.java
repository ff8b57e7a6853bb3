/**
 * Checks of the physics against the outside: published tables, worked examples, standards, closed forms. The numbers stand
 * in {@code src/test/resources/checks}, one file for each kind; each row says what is expected, how near it must come and
 * why, and where the number is from. What was computed is written to {@code target/validation} when the run ends.
 */
package dev.lapwright.checks;
