package dev.lapwright.cli;

import dev.lapwright.results.ChosenLine;
import dev.lapwright.results.Subject;
import dev.lapwright.results.Vary;
import dev.lapwright.study.sweep.SweepResult;
import java.util.List;

/**
 * A sweep and what was asked.
 *
 * @param subject the baseline
 * @param line on which line the laps were driven
 * @param varied what was varied, as it was typed
 * @param result what was found
 */
record SweepOutcome(Subject subject, ChosenLine line, List<Vary> varied, SweepResult result) {}
