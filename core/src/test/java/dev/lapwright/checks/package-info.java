/**
 * Checks of the physics against the outside: published tables, worked examples, standards, closed forms. The numbers stand
 * in {@code src/test/resources/checks}, one file for each kind; each row says what is expected, how near it must come and
 * why, and where the number is from. {@code docs/validation.md} is made of what was computed for them.
 */
package dev.lapwright.checks;
