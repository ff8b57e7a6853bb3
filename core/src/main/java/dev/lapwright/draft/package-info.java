/**
 * A car in ten questions: a whole {@link dev.lapwright.car.Car} drafted from what anybody knows of a car, with a doubt on every number that
 * was guessed. What is guessed is common practice where no source is named. No laps of circuits here, and no text is read.
 */
package dev.lapwright.draft;
