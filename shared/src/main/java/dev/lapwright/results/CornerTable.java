package dev.lapwright.results;

import dev.lapwright.car.Unit;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Table;
import dev.lapwright.track.Corner;
import dev.lapwright.track.Stations;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;

/** Table of the corners of a track, with what the road is like at each apex. */
final class CornerTable {
    /**
     * A corner.
     *
     * @param corner which, and where
     * @param turning change of heading, rad, positive to the left
     * @param slope at the apex, rad, positive uphill
     * @param helpingBank bank at the apex, rad, positive where it helps the corner, whichever way that turns
     * @param grip at the apex, relative to the reference surface
     */
    record Row(Corner corner, double turning, double slope, double helpingBank, double grip) {}

    private CornerTable() {}

    /** A row for each corner in driving order. */
    static List<Row> rows(Stations stations) {
        List<Row> rows = new ArrayList<>();
        for (Corner corner : stations.corners()) {
            double apex = Math.max(0, Math.min(corner.apex(), stations.track().length()));
            TrackPoint road = stations.track().pointAt(apex);
            rows.add(new Row(
                    corner,
                    stations.turning(corner),
                    road.slope(),
                    corner.left() ? road.bank() : -road.bank(),
                    road.grip()));
        }
        return rows;
    }

    /** The columns; people see that of grip only where a corner's is not the reference surface's. */
    static Table<Row> table(List<Row> rows) {
        Table<Row> table = Table.<Row>of("Corners")
                .value("number", row -> row.corner.number())
                .value("name", row -> row.corner.name())
                .names("", "corner", row -> row.corner.label())
                .words("turn", "turn", row -> row.corner.left() ? "left" : "right")
                .number("entryM", "from", "m", Numbers.fixed(0), row -> row.corner.entry())
                .with(Table.Trait.LESSER)
                .number("apexM", "apex", "m", Numbers.fixed(0), row -> row.corner.apex())
                .number("exitM", "to", "m", Numbers.fixed(0), row -> row.corner.exit())
                .with(Table.Trait.LESSER)
                .number("minimumRadiusM", "radius", "m", Numbers.fixed(0), row -> row.corner.minimumRadius())
                .said(
                        "turningDeg",
                        "turning",
                        "deg",
                        row -> degrees(row.turning),
                        row -> Numbers.fixed(Math.abs(degrees(row.turning)), 0))
                .number("slopeDeg", "slope", "deg", Numbers.signed(1), row -> degrees(row.slope))
                .with(Table.Trait.LESSER)
                .number("helpingBankDeg", "bank", "deg", Numbers.signed(1), row -> degrees(row.helpingBank))
                .with(Table.Trait.LESSER);
        return rows.stream().anyMatch(row -> row.grip != 1)
                ? table.number("grip", "grip", "", Numbers.fixed(2), Row::grip).with(Table.Trait.LESSER)
                : table.value("grip", Row::grip);
    }

    private static double degrees(double radians) {
        return Unit.RADIAN.convert(radians, Unit.DEGREE);
    }
}
