/** What each adjustment of a car is worth at a circuit. */
package dev.lapwright.study.sensitivity;
