/** Two laps of one track side by side. */
package dev.lapwright.study.compare;
