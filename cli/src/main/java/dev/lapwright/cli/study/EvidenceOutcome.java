package dev.lapwright.cli.study;

import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.logs.LapLogFile;

/** A log as it was read, and what it shows. */
public record EvidenceOutcome(LapLogFile file, EvidenceResult result) {}
