package dev.lapwright.cli;

import dev.lapwright.study.optimise.OptimisationResult;

/**
 * An optimisation and what was asked.
 *
 * @param choice where the user was
 * @param result what was found
 */
record OptimiseOutcome(Choice choice, OptimisationResult result) {}
