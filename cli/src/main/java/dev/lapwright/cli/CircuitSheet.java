package dev.lapwright.cli;

import dev.lapwright.car.Unit;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A circuit or open run: its length, corners, climb, widths and sectors. */
final class CircuitSheet implements Sheet {
    private final Track track;
    private final Stations stations;

    CircuitSheet(Track track) {
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
        Table table = new Table()
                .words("corner")
                .words("turn")
                .numbers("from", "m")
                .numbers("apex", "m")
                .numbers("to", "m")
                .numbers("radius", "m")
                .numbers("slope", "deg")
                .numbers("bank", "deg");
        for (Corner corner : stations.corners()) {
            double apex = Math.max(0, Math.min(corner.apex(), track.length()));
            double bank = degrees(track.pointAt(apex).bank());
            table.row(
                    corner.label(),
                    corner.left() ? "left" : "right",
                    Numbers.fixed(corner.entry(), 0),
                    Numbers.fixed(corner.apex(), 0),
                    Numbers.fixed(corner.exit(), 0),
                    Numbers.fixed(corner.minimumRadius(), 0),
                    Numbers.signed(degrees(track.pointAt(apex).slope()), 1),
                    // Positive helps the corner, whichever way it turns.
                    Numbers.signed(corner.left() ? bank : -bank, 1));
        }
        table.printTo(console);
    }

    /** Its map as a picture of the kind that the file's name says. */
    byte[] map(String fileName) {
        return CircuitCharts.map(fileName, stations);
    }

    @Override
    public Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("kind", "circuit");
        tree.put("name", track.name());
        tree.put("closed", track.isClosed());
        tree.put("lengthM", track.length());
        tree.put("climbM", stations.climb());
        tree.put("lowestM", Place.least(stations.s(), stations.z()).value());
        tree.put("highestM", Place.greatest(stations.s(), stations.z()).value());
        Place narrowest = Place.least(stations.s(), widths());
        Place widest = Place.greatest(stations.s(), widths());
        tree.put("narrowestM", narrowest.value());
        tree.put("narrowestAtM", narrowest.at());
        tree.put("widestM", widest.value());
        tree.put("widestAtM", widest.at());
        tree.put("sectorEndsM", LapJson.list(track.sectorEnds()));
        List<Object> corners = new ArrayList<>();
        for (Corner corner : stations.corners()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("number", corner.number());
            one.put("name", corner.name());
            one.put("turn", corner.left() ? "left" : "right");
            one.put("entryM", corner.entry());
            one.put("apexM", corner.apex());
            one.put("exitM", corner.exit());
            one.put("minimumRadiusM", corner.minimumRadius());
            corners.add(one);
        }
        tree.put("corners", corners);
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
