/** What to turn against what a driver says: one change, what it costs, and what common practice would do. */
package dev.lapwright.study.advice;
