/**
 * Studies: questions that take many laps, a package each. What they share is here: each is a {@link
 * dev.lapwright.study.Study} put together step by step and run under a {@link dev.lapwright.study.StudyRun}. Parallel here,
 * never in the solver.
 */
package dev.lapwright.study;
