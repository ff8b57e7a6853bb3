package dev.lapwright.cli;

import dev.lapwright.documents.LapLogFile;
import dev.lapwright.evidence.EvidenceResult;

/** A log as it was read, and what it shows. */
record EvidenceOutcome(LapLogFile file, EvidenceResult result) {}
