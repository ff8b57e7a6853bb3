package dev.lapwright.cli;

import dev.lapwright.results.Subject;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.balance.RemedyResult;
import java.util.Optional;

/**
 * A balance and what was asked.
 *
 * @param subject the car, set up, and where
 * @param balance what was found
 * @param remedies against the driver's complaint, if there was one
 */
record BalanceOutcome(Subject subject, BalanceResult balance, Optional<RemedyResult> remedies) {}
