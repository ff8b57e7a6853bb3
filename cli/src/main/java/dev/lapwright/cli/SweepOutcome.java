package dev.lapwright.cli;

import dev.lapwright.study.sweep.SweepResult;
import java.util.List;

/**
 * A sweep and what was asked.
 *
 * @param choice the baseline
 * @param line on which line the laps were driven
 * @param varied what was varied, as it was typed
 * @param result what was found
 */
record SweepOutcome(Choice choice, ChosenLine line, List<Vary> varied, SweepResult result) {}
