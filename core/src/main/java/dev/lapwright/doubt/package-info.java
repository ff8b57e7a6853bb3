/**
 * How well a car and a day are known: the unknowns with their sizes, stated in a document or assumed by their class, cars drawn from them,
 * and the share of each in what follows. No laps here; {@link dev.lapwright.study.robust} drives the drawn cars.
 */
package dev.lapwright.doubt;
