package dev.lapwright.cli;

import dev.lapwright.results.Subject;
import dev.lapwright.study.optimise.OptimisationResult;

/**
 * An optimisation and what was asked.
 *
 * @param subject where the user was
 * @param result what was found
 */
record OptimiseOutcome(Subject subject, OptimisationResult result) {}
