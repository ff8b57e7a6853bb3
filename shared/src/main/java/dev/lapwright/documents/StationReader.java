package dev.lapwright.documents;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.text.FaultList;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;

/**
 * Reader of the stations of a circuit document into the points of a track. Where a station does not give its vertical curvature
 * it is the change of slope with distance, by central differences weighted for uneven spacing, one-sided at open ends.
 */
final class StationReader {
    private final FaultList faults;
    private final boolean closed;

    private double[] deviation = new double[0];

    private record Station(
            ObjectReader fields, double s, double curvature, double verticalCurvature, RoadSurface surface) {}

    StationReader(FaultList faults, boolean closed) {
        this.faults = faults;
        this.closed = closed;
    }

    /** The points in order, or an empty list after faults, which have been reported. */
    List<TrackPoint> read(List<ObjectReader> list) {
        List<Station> stations = new ArrayList<>();
        double[] deviations = new double[list.size()];
        int known = 0;
        RoadSurface surface = RoadSurface.FIRST;
        for (ObjectReader fields : list) {
            double s = fields.required(RoadFields.DISTANCE);
            double curvature = fields.required(RoadFields.CURVATURE);
            double vertical = fields.optional(RoadFields.VERTICAL_CURVATURE, Double.NaN);
            surface = surface.next(fields);
            deviations[stations.size()] = fields.optional(RoadFields.CURVATURE_DEVIATION, 0);
            known += fields.has(RoadFields.CURVATURE_DEVIATION) ? 1 : 0;
            fields.close();
            Station station = new Station(fields, s, curvature, vertical, surface);
            checkOrder(stations, station);
            stations.add(station);
        }
        if (known > 0 && known < list.size()) {
            list.get(0)
                    .meaning(
                            RoadFields.CURVATURE_DEVIATION.name(),
                            known + " of " + list.size() + " stations have it",
                            "give it to all stations or to none");
        }
        deviation = known > 0 ? deviations : new double[0];
        return faults.isEmpty() ? points(stations) : List.of();
    }

    /** Standard deviation of the curvature at the stations read, 1/m; empty if they say none. */
    double[] deviation() {
        return deviation;
    }

    private void checkOrder(List<Station> before, Station station) {
        String name = RoadFields.DISTANCE.name();
        if (before.isEmpty()) {
            if (station.s != 0 && !Double.isNaN(station.s)) {
                station.fields.meaning(
                        name, "the first station is at " + Check.text(station.s) + " m", "let the stations begin at 0");
            }
            return;
        }
        Station last = before.get(before.size() - 1);
        if (station.s < last.s) {
            station.fields.meaning(
                    name,
                    Check.text(station.s) + " m lies before the station above it, " + Check.text(last.s) + " m",
                    "list the stations in order of distance");
        }
        boolean jump = station.s == last.s;
        if (jump && station.surface.slope() != last.surface.slope() && !Double.isNaN(last.surface.slope())) {
            station.fields.meaning(
                    station.fields.nameGiven(RoadFields.SLOPE),
                    "the slope jumps within no distance at " + Check.text(station.s) + " m",
                    "spread the change over some metres");
        }
        boolean third = before.size() > 1 && before.get(before.size() - 2).s == station.s;
        if (jump && third) {
            station.fields.meaning(
                    name,
                    "three stations stand at " + Check.text(station.s) + " m",
                    "keep two, before and after a jump");
        }
    }

    private List<TrackPoint> points(List<Station> stations) {
        List<TrackPoint> points = new ArrayList<>();
        for (int i = 0; i < stations.size(); i++) {
            Station at = stations.get(i);
            double vertical = Double.isNaN(at.verticalCurvature) ? slopeChange(stations, i) : at.verticalCurvature;
            if (Math.abs(vertical) > RoadFields.MAX_VERTICAL_CURVATURE) {
                at.fields.meaning(
                        RoadFields.DISTANCE.name(),
                        "the slope changes too fast here: a vertical radius of " + Check.text(1 / Math.abs(vertical))
                                + " m",
                        "check slopes and distances; " + Check.text(1 / RoadFields.MAX_VERTICAL_CURVATURE)
                                + " m is the least");
                continue;
            }
            try {
                points.add(new TrackPoint(
                        at.s,
                        at.curvature,
                        at.surface.slope(),
                        at.surface.bank(),
                        vertical,
                        at.surface.grip(),
                        at.surface.widthLeft(),
                        at.surface.widthRight(),
                        at.surface.speedLimit()));
            } catch (InvalidValueException e) {
                faults.meaning(at.fields.place(), at.fields.path(), e);
            }
        }
        return faults.isEmpty() ? points : List.of();
    }

    /** Change of slope with distance at a station, 1/m; exact for a slope quadratic in distance. */
    private double slopeChange(List<Station> stations, int index) {
        double length = stations.get(stations.size() - 1).s;
        Station here = stations.get(index);
        double before = Double.NaN;
        double stepBefore = 0;
        for (int i = index - 1, turns = 0; turns < stations.size(); i--, turns++) {
            if (i < 0 && !closed) {
                break;
            }
            Station other = stations.get(Math.floorMod(i, stations.size()));
            double step = here.s - other.s + (i < 0 ? length : 0);
            if (step > 0) {
                stepBefore = step;
                before = (here.surface.slope() - other.surface.slope()) / step;
                break;
            }
        }
        double after = Double.NaN;
        double stepAfter = 0;
        for (int i = index + 1, turns = 0; turns < stations.size(); i++, turns++) {
            if (i >= stations.size() && !closed) {
                break;
            }
            Station other = stations.get(i % stations.size());
            double step = other.s - here.s + (i >= stations.size() ? length : 0);
            if (step > 0) {
                stepAfter = step;
                after = (other.surface.slope() - here.surface.slope()) / step;
                break;
            }
        }
        if (Double.isNaN(before)) {
            return Double.isNaN(after) ? 0 : after;
        }
        if (Double.isNaN(after)) {
            return before;
        }
        return (stepAfter * before + stepBefore * after) / (stepBefore + stepAfter);
    }
}
