/** What is said of documents: cars, their quantities, setups and days, and a car drafted from ten answers. */
package dev.lapwright.results.car;
