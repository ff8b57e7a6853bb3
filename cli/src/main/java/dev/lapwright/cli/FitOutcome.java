package dev.lapwright.cli;

import dev.lapwright.fit.FitResult;
import dev.lapwright.logs.DrivenLapSelection;
import dev.lapwright.logs.DrivenLog;
import dev.lapwright.results.ChosenLine;
import dev.lapwright.results.Subject;
import java.util.List;

/**
 * A fit and what was asked.
 *
 * @param subject the car, set up, and where
 * @param line that the model drove
 * @param logs as they were read
 * @param pick the laps taken from them
 * @param result what was found
 * @param name of the fitted car in its document
 */
record FitOutcome(
        Subject subject,
        ChosenLine line,
        List<DrivenLog> logs,
        DrivenLapSelection pick,
        FitResult result,
        String name) {}
