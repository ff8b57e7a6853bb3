/** Plans of many laps: cars, circuits and days, each with all, and settings by a design. */
package dev.lapwright.study.plan;
