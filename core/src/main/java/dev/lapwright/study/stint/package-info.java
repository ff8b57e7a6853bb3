/** Fuel for a race, and its laps one by one as fuel burns and tyres wear. */
package dev.lapwright.study.stint;
