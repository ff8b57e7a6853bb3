/** What is said of a car drafted from ten answers. */
package dev.lapwright.results.car;
