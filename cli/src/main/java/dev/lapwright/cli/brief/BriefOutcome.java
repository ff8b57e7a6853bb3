package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.logs.LapLogFile;
import dev.lapwright.results.Subject;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Result of a brief with what it was asked about.
 *
 * @param subject the car, set up, and where
 * @param log the laps driven; empty before driving
 * @param result what was found
 */
public record BriefOutcome(Subject subject, Optional<LapLogFile> log, BriefResult result) {
    /** The parts that could not be found, by what they are about; a log that was not given is not missed. */
    public Map<String, BriefResult.Part<?>> missing() {
        Map<String, BriefResult.Part<?>> parts = new LinkedHashMap<>();
        parts.put("what is worth changing", result.sensitivity());
        parts.put("the suggested setup", result.suggestion());
        parts.put("wings and drag", result.wings());
        parts.put("drag, downforce and grip", result.exchange());
        parts.put("gearing", result.gearing());
        parts.put("balance", result.balance());
        parts.put("tyre pressures", result.pressures());
        parts.put("fuel", result.stint());
        parts.put("test runs", result.tests());
        parts.put("the laps driven", result.proof());
        parts.values().removeIf(BriefResult.Part::isThere);
        if (log.isEmpty()) {
            parts.remove("the laps driven");
        }
        return parts;
    }

    /**
     * Whether what was given cannot be used: a log that does not fit, or a car with nothing to change. Other parts may be missing
     * for good reasons, as fuel for a race on an open run.
     */
    public boolean isUnusable() {
        return (log.isPresent() && !result.proof().isThere())
                || !result.sensitivity().isThere();
    }
}
