package dev.lapwright.cli;

import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.logs.LapLogFile;

/** A log as it was read, and what it shows. */
record EvidenceOutcome(LapLogFile file, EvidenceResult result) {}
