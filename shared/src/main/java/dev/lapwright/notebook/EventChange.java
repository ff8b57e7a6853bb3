package dev.lapwright.notebook;

import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.TimingLog;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Change of setup in an event: what was expected of it, and what all laps so far show, by {@link Evidence}.
 *
 * @param run number of the run that was first driven with it
 * @param before setup of the run before, in a line
 * @param after setup of the run, in a line
 * @param expected of it before it was driven
 * @param seen what the laps show; empty where one of the setups has none yet
 */
public record EventChange(
        int run, String before, String after, EventRun.Expected expected, Optional<EvidenceResult> seen) {
    /** The changes of an event in their order, each pair of setups once: going back is no new change but more of the same. */
    public static List<EventChange> of(Event event) {
        Optional<TimingLog> log = event.log();
        List<EventChange> changes = new ArrayList<>();
        String before = event.label(EventRun.of(event.base().settings()));
        for (Event.Numbered numbered : event.runs()) {
            String after = event.label(numbered.run());
            if (!after.equals(before) && isNew(changes, before, after)) {
                EventRun.Expected expected = numbered.run().expected();
                changes.add(new EventChange(
                        numbered.number(), before, after, expected, evidence(log, before, after, expected)));
            }
            before = after;
        }
        return changes;
    }

    private static boolean isNew(List<EventChange> changes, String before, String after) {
        return changes.stream()
                .noneMatch(known -> (known.before.equals(before) && known.after.equals(after))
                        || (known.before.equals(after) && known.after.equals(before)));
    }

    private static Optional<EvidenceResult> evidence(
            Optional<TimingLog> log, String before, String after, EventRun.Expected expected) {
        if (log.isEmpty() || !log.get().setups().containsAll(List.of(before, after))) {
            return Optional.empty();
        }
        return Optional.of(Evidence.DEFAULT
                .between(before, after)
                .predicted(expected.difference(), expected.deviation())
                .run(log.get()));
    }
}
