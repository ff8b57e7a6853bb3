package dev.lapwright.results.circuit;

import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.track.Corner;
import dev.lapwright.track.RoadEdit;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.List;

/**
 * Report of a circuit corrected by hand: what became of its length and its corners.
 *
 * @param before the circuit as it was
 * @param edited the circuit corrected, and how far the rest of it moved
 */
public record RoadEditReport(Track before, RoadEdit.Result edited) {
    /** All that is to be said, for people. */
    public Report report() {
        Track after = edited.track();
        Report told = new Report();
        told.title(
                Report.verbatim(after.name()),
                ", " + Numbers.fixed(after.length(), 1) + " m, was " + Numbers.fixed(before.length(), 1) + " m");
        told.item(
                "Refitted",
                !after.isClosed()
                        ? "nothing: an open run need not close, and what lies behind moves along"
                        : "the rest moved by up to " + Numbers.fixed(edited.farthestMove(), 1)
                                + " m; its lengths changed by " + percent(edited.leastStretch()) + " to "
                                + percent(edited.mostStretch()) + " %");
        List<Corner> were = before.stations(StationSpacing.DEFAULT).corners();
        List<Corner> are = after.stations(StationSpacing.DEFAULT).corners();
        if (were.size() != are.size()) {
            told.item("Look at", were.size() + " corners became " + are.size());
        } else {
            for (int i = 0; i < are.size(); i++) {
                double change = are.get(i).minimumRadius() - were.get(i).minimumRadius();
                if (Math.abs(change) >= 0.1) {
                    told.item(
                            are.get(i).label(),
                            "radius " + Numbers.fixed(are.get(i).minimumRadius(), 1) + " m, was "
                                    + Numbers.fixed(were.get(i).minimumRadius(), 1) + " m");
                }
            }
        }
        return told;
    }

    private static String percent(double factor) {
        return Numbers.signed(100 * (factor - 1), 1);
    }
}
