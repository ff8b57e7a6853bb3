package dev.lapwright.cli.document;

import dev.lapwright.car.Unit;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.Lines;
import dev.lapwright.cli.output.TextTable;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.CornerTable;
import dev.lapwright.results.InputHash;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A circuit or open run: its length, corners, climb, widths and sectors. */
public final class CircuitSheet implements Sheet {
    private final Track track;
    private final Stations stations;

    public CircuitSheet(Track track) {
        this.track = track;
        stations = track.stations(StationSpacing.DEFAULT);
    }

    @Override
    public void print(Console console) {
        console.line(console.bold(track.name()) + ", "
                + (track.isClosed() ? "closed circuit" : "open run") + " of " + Numbers.fixed(track.length(), 0)
                + " m");
        Lines.item(console, "Altitude", altitude());
        Place narrowest = Place.least(stations.s(), widths());
        Place widest = Place.greatest(stations.s(), widths());
        Lines.item(
                console,
                "Width",
                narrowest.value() == widest.value()
                        ? Numbers.fixed(widest.value(), 1) + " m"
                        : Numbers.fixed(narrowest.value(), 1) + " m at " + Numbers.fixed(narrowest.at(), 0) + " m to "
                                + Numbers.fixed(widest.value(), 1) + " m at " + Numbers.fixed(widest.at(), 0) + " m");
        if (track.path() == Track.Path.DRIVEN) {
            Lines.item(console, "Path", "a line that a car drove; the widths are not the road's");
        }
        Lines.item(
                console,
                "Turning",
                Numbers.fixed(degrees(turned(1)), 0) + " deg left, " + Numbers.fixed(degrees(turned(-1)), 0)
                        + " deg right, together " + Numbers.signed(degrees(stations.totalTurning()), 0) + " deg");
        grip(console);
        Lines.item(console, "Sectors", sectors());
        if (!track.isClosed()) {
            double speed = track.entrySpeed();
            Lines.item(console, "Start", speed > 0 ? "flying at " + Numbers.kmh(speed) + " km/h" : "standing");
        }
        console.line();
        corners(console);
    }

    private String altitude() {
        Place lowest = Place.least(stations.s(), stations.z());
        Place highest = Place.greatest(stations.s(), stations.z());
        return Numbers.fixed(lowest.value(), 0) + " m to " + Numbers.fixed(highest.value(), 0) + " m, climbs "
                + Numbers.fixed(stations.climb(), 0) + " m in all, slope "
                + slope(Place.least(stations.s(), stations.slope()))
                + " to " + slope(Place.greatest(stations.s(), stations.slope())) + " deg";
    }

    private static String slope(Place place) {
        return Numbers.signed(degrees(place.value()), 1);
    }

    private static double degrees(double radians) {
        return Unit.RADIAN.convert(radians, Unit.DEGREE);
    }

    /** All turning to one side (1 left, -1 right), rad. */
    private double turned(int side) {
        double[] heading = stations.heading();
        double sum = 0;
        for (int i = 0; i + 1 < heading.length; i++) {
            sum += Math.max(0, side * (heading[i + 1] - heading[i]));
        }
        return sum;
    }

    /** Only where it is not that of the reference surface everywhere. */
    private void grip(Console console) {
        Place least = Place.least(stations.s(), stations.grip());
        Place most = Place.greatest(stations.s(), stations.grip());
        if (least.value() != 1 || most.value() != 1) {
            Lines.item(
                    console,
                    "Grip",
                    least.value() == most.value()
                            ? Numbers.fixed(least.value(), 2) + " of the reference surface's"
                            : Numbers.fixed(least.value(), 2) + " at " + Numbers.fixed(least.at(), 0) + " m to "
                                    + Numbers.fixed(most.value(), 2) + " at " + Numbers.fixed(most.at(), 0)
                                    + " m of the reference surface's");
        }
    }

    private double[] widths() {
        double[] widths = stations.widthLeft();
        double[] right = stations.widthRight();
        for (int i = 0; i < widths.length; i++) {
            widths[i] += right[i];
        }
        return widths;
    }

    private String sectors() {
        List<String> ends = new ArrayList<>();
        for (double end : track.sectorEnds()) {
            ends.add(Numbers.fixed(end, 0));
        }
        return ends.size() + ", ending at " + String.join(", ", ends) + " m";
    }

    private void corners(Console console) {
        if (stations.corners().isEmpty()) {
            console.line("It has no corners.");
            return;
        }
        List<CornerTable.Row> rows = CornerTable.rows(stations);
        boolean grip = rows.stream().anyMatch(row -> row.grip() != 1);
        TextTable table = new TextTable()
                .words("corner")
                .words("turn")
                .numbers("from", "m")
                .numbers("apex", "m")
                .numbers("to", "m")
                .numbers("radius", "m")
                .numbers("turning", "deg")
                .numbers("slope", "deg")
                .numbers("bank", "deg");
        if (grip) {
            table.numbers("grip", "");
        }
        for (CornerTable.Row row : rows) {
            Corner corner = row.corner();
            List<String> cells = new ArrayList<>(List.of(
                    corner.label(),
                    corner.left() ? "left" : "right",
                    Numbers.fixed(corner.entry(), 0),
                    Numbers.fixed(corner.apex(), 0),
                    Numbers.fixed(corner.exit(), 0),
                    Numbers.fixed(corner.minimumRadius(), 0),
                    Numbers.fixed(Math.abs(degrees(row.turning())), 0),
                    Numbers.signed(degrees(row.slope()), 1),
                    Numbers.signed(degrees(row.helpingBank()), 1)));
            if (grip) {
                cells.add(Numbers.fixed(row.grip(), 2));
            }
            table.row(cells, false);
        }
        table.printTo(console);
    }

    /** Its map as a picture of the kind that the file's name says. */
    public byte[] map(String fileName) {
        return CircuitCharts.map(fileName, stations);
    }

    /** Its profile over distance as a picture of the kind that the file's name says. */
    public byte[] profile(String fileName) {
        return CircuitCharts.profile(fileName, stations);
    }

    /** Its corners as comma-separated values. */
    public String cornersCsv() {
        return CornerTable.csv(stations);
    }

    @Override
    public Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("kind", "circuit");
        tree.put("name", track.name());
        tree.put("closed", track.isClosed());
        tree.put("path", track.path().word());
        tree.put("lengthM", track.length());
        tree.put("climbM", stations.climb());
        tree.put("turningDeg", degrees(stations.totalTurning()));
        tree.put("turningLeftDeg", degrees(turned(1)));
        tree.put("turningRightDeg", degrees(turned(-1)));
        tree.put("lowestM", Place.least(stations.s(), stations.z()).value());
        tree.put("highestM", Place.greatest(stations.s(), stations.z()).value());
        Place narrowest = Place.least(stations.s(), widths());
        Place widest = Place.greatest(stations.s(), widths());
        tree.put("narrowestM", narrowest.value());
        tree.put("narrowestAtM", narrowest.at());
        tree.put("widestM", widest.value());
        tree.put("widestAtM", widest.at());
        tree.put("sectorEndsM", InputHash.list(track.sectorEnds()));
        tree.put("corners", CornerTable.tree(stations));
        return tree;
    }

    /** A value along the track and the distance (m) where it is first met. */
    private record Place(double value, double at) {
        static Place least(double[] s, double[] values) {
            int best = 0;
            for (int i = 1; i < values.length; i++) {
                best = values[i] < values[best] ? i : best;
            }
            return new Place(values[best], s[best]);
        }

        static Place greatest(double[] s, double[] values) {
            int best = 0;
            for (int i = 1; i < values.length; i++) {
                best = values[i] > values[best] ? i : best;
            }
            return new Place(values[best], s[best]);
        }
    }
}
