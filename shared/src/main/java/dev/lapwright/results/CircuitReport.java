package dev.lapwright.results;

import dev.lapwright.car.Unit;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.track.DoubtfulPlace;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackLimit;
import dev.lapwright.track.TrackPoint;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Report of a circuit or open run: its length, climb, widths, sectors and corners. */
public final class CircuitReport {
    private static final Table<TrackLimit> LIMITS = Table.<TrackLimit>of("Track limits")
            .value("fromM", TrackLimit::from)
            .value("toM", TrackLimit::to)
            .value("beyondLeftM", limit -> orNull(limit.beyondLeft()))
            .value("beyondRightM", limit -> orNull(limit.beyondRight()));

    /** File of the corners as a table. */
    public static final String CORNERS = "corners.csv";

    private final Track track;
    private final Stations stations;
    private final Extreme narrowest;
    private final Extreme widest;
    private final List<DoubtfulPlace> doubts;

    private CircuitReport(Stations stations) {
        this.stations = stations;
        track = stations.track();
        doubts = DoubtfulPlace.of(stations);
        double[] widths = stations.widthLeft();
        double[] right = stations.widthRight();
        Arrays.setAll(widths, i -> widths[i] + right[i]);
        narrowest = Extreme.least(stations.s(), widths);
        widest = Extreme.greatest(stations.s(), widths);
    }

    /** What is said of a circuit, for people and machines. */
    public static Report of(Stations stations) {
        CircuitReport told = new CircuitReport(stations);
        Report report = new Report();
        told.tell(report);
        told.fields(report);
        List<CornerTable.Row> corners = CornerTable.rows(stations);
        Table<CornerTable.Row> table = CornerTable.table(corners);
        if (corners.isEmpty()) {
            report.line("It has no corners.");
        } else {
            report.rows(table, corners);
        }
        return report.field("corners", table, corners).csv(CORNERS, table, corners);
    }

    private void tell(Report report) {
        report.title(
                        Report.verbatim(track.name()),
                        ", " + (track.isClosed() ? "closed circuit" : "open run") + " of "
                                + Numbers.fixed(track.length(), 0) + " m")
                .item("Altitude", altitude())
                .item(
                        "Width",
                        narrowest.value() == widest.value()
                                ? Numbers.fixed(widest.value(), 1) + " m"
                                : said(narrowest, 1, " m") + " to " + said(widest, 1, " m"));
        if (track.path() == Track.Path.DRIVEN) {
            report.item("Path", "a line that a car drove; the widths are not the road's");
        }
        report.item(
                "Turning",
                Numbers.fixed(degrees(turned(1)), 0) + " deg left, " + Numbers.fixed(degrees(turned(-1)), 0)
                        + " deg right, together " + Numbers.signed(degrees(stations.totalTurning()), 0)
                        + " deg");
        grip(report);
        report.item(
                "Sectors",
                track.sectorEnds().length + ", ending at "
                        + Arrays.stream(track.sectorEnds())
                                .mapToObj(end -> Numbers.fixed(end, 0))
                                .collect(Collectors.joining(", "))
                        + " m");
        if (!track.limits().isEmpty()) {
            report.item("Track limits", limits());
        }
        if (!track.isClosed()) {
            double speed = track.entrySpeed();
            report.item("Start", speed > 0 ? "flying at " + Numbers.kmh(speed) + " km/h" : "standing");
        }
        if (track.usualTransitions() > 0) {
            report.item(
                    "Curvature",
                    "would jump where the document gives no transition: one of "
                            + Numbers.fixed(track.usualTransitions(), 0)
                            + " m is laid there; \"transitionLengthM\" sets their length, 0 lets it jump");
        }
        int jumps = jumps();
        if (jumps > 0) {
            report.item(
                    "Curvature",
                    "jumps at " + jumps + (jumps == 1 ? " joint" : " joints")
                            + ", where no car can follow: entry and exit of such a corner have no length;"
                            + " \"transitionLengthM\": 20 in the document lays transitions over them, if straights can make"
                            + " up for what they shift");
        }
        for (DoubtfulPlace doubt : doubts) {
            report.item(
                    "In doubt",
                    doubt.kind().question() + " "
                            + Report.verbatim(doubt.corner().label()) + ", at " + Numbers.fixed(doubt.s(), 0) + " m");
        }
        report.gap();
    }

    private int jumps() {
        int jumps = 0;
        List<TrackPoint> points = track.points();
        for (int i = 1; i < points.size(); i++) {
            boolean here = points.get(i).s() == points.get(i - 1).s();
            jumps += here && points.get(i).curvature() != points.get(i - 1).curvature() ? 1 : 0;
        }
        return jumps;
    }

    private static String said(Extreme place, int decimals, String unit) {
        return Numbers.fixed(place.value(), decimals) + unit + " at " + Numbers.fixed(place.at(), 0) + " m";
    }

    private String altitude() {
        return Numbers.fixed(lowest(), 0) + " m to " + Numbers.fixed(highest(), 0) + " m, climbs "
                + Numbers.fixed(stations.climb(), 0) + " m in all, slope "
                + slope(Extreme.least(stations.s(), stations.slope()))
                + " to " + slope(Extreme.greatest(stations.s(), stations.slope())) + " deg";
    }

    private double lowest() {
        return Extreme.least(stations.s(), stations.z()).value();
    }

    private double highest() {
        return Extreme.greatest(stations.s(), stations.z()).value();
    }

    private static String slope(Extreme place) {
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
    private void grip(Report report) {
        Extreme least = Extreme.least(stations.s(), stations.grip());
        Extreme most = Extreme.greatest(stations.s(), stations.grip());
        if (least.value() != 1 || most.value() != 1) {
            report.item(
                    "Grip",
                    (least.value() == most.value()
                                    ? Numbers.fixed(least.value(), 2)
                                    : said(least, 2, "") + " to " + said(most, 2, ""))
                            + " of the reference surface's");
        }
    }

    private void fields(Report report) {
        report.field("kind", "circuit")
                .field("name", track.name())
                .field("closed", track.isClosed())
                .field("path", track.path().word())
                .field("lengthM", track.length())
                .field("climbM", stations.climb())
                .field("turningDeg", degrees(stations.totalTurning()))
                .field("turningLeftDeg", degrees(turned(1)))
                .field("turningRightDeg", degrees(turned(-1)))
                .field("lowestM", lowest())
                .field("highestM", highest())
                .field("narrowestM", narrowest.value())
                .field("narrowestAtM", narrowest.at())
                .field("widestM", widest.value())
                .field("widestAtM", widest.at())
                .field("sectorEndsM", InputHash.list(track.sectorEnds()))
                .field("inDoubt", doubts.stream().map(CircuitReport::tree).toList());
        if (!track.limits().isEmpty()) {
            report.field("trackLimits", LIMITS, track.limits());
        }
    }

    /** Where a car may drive beyond the edges, or must stay away from them. */
    private String limits() {
        return track.limits().stream()
                .map(limit -> "from " + Numbers.fixed(limit.from(), 0) + " to " + Numbers.fixed(limit.to(), 0) + " m"
                        + said("left", limit.beyondLeft()) + said("right", limit.beyondRight()))
                .collect(Collectors.joining("; "));
    }

    private static String said(String side, OptionalDouble beyond) {
        return beyond.isEmpty()
                ? ""
                : ", " + side + " " + Numbers.plain(Math.abs(beyond.getAsDouble())) + " m "
                        + (beyond.getAsDouble() < 0 ? "inside" : "beyond");
    }

    private static Double orNull(OptionalDouble value) {
        return value.isPresent() ? (Double) value.getAsDouble() : null;
    }

    private static Map<String, Object> tree(DoubtfulPlace doubt) {
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("question", doubt.kind().question());
        one.put("atM", doubt.s());
        one.put("corner", doubt.corner().label());
        return one;
    }
}
