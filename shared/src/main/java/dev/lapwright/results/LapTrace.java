package dev.lapwright.results;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.car.Unit;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.line.Line;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A lap station by station, as a table with the unit in the name of each column. Speeds are in km/h and
 * accelerations in g, as the trade reads them.
 */
public final class LapTrace {
    /** How the units of channels end a column's name. */
    private static final Map<String, String> SUFFIXES =
            Map.of("", "", "m", "M", "s", "S", "m/s", "Kmh", "m/s²", "G", "rpm", "Rpm", "N", "N", "mm", "Mm");

    private static final String ACCELERATION = "m/s²";

    private LapTrace() {}

    /** The columns of numbers, by name: a value for each station of the lap. */
    public static Map<String, double[]> columns(Lap lap) {
        Map<String, double[]> columns = new LinkedHashMap<>();
        for (Channel channel : Channel.values()) {
            double[] values = lap.column(channel);
            if (channel.unit().equals(Unit.METRE_PER_SECOND.symbol())) {
                for (int i = 0; i < values.length; i++) {
                    values[i] = kmh(values[i]);
                }
            } else if (channel.unit().equals(ACCELERATION)) {
                for (int i = 0; i < values.length; i++) {
                    values[i] = g(values[i]);
                }
            }
            columns.put(name(channel), values);
        }
        Stations stations = lap.stations();
        columns.put("curvaturePerM", stations.curvature());
        columns.put("eastM", stations.x());
        columns.put("northM", stations.y());
        columns.put("altitudeM", stations.z());
        return columns;
    }

    /**
     * The columns of a lap on a line along a road: the same, but coordinates in the road's frame, and beside them the
     * distance along the road and the offset from its path.
     */
    public static Map<String, double[]> columns(Lap lap, Line line) {
        Map<String, double[]> columns = columns(lap);
        double[] nodes = line.distances();
        double[] offsets = line.offsets();
        double[] along = new double[nodes.length];
        for (int i = 0; i < nodes.length; i++) {
            along[i] = line.along(nodes[i]);
        }
        double[] s = lap.stations().s();
        double[] road = new double[s.length];
        double[] offset = new double[s.length];
        int k = 0;
        for (int i = 0; i < s.length; i++) {
            while (k + 2 < along.length && along[k + 1] < s[i]) {
                k++;
            }
            double share = Math.max(0, Math.min(1, (s[i] - along[k]) / (along[k + 1] - along[k])));
            road[i] = nodes[k] + share * (nodes[k + 1] - nodes[k]);
            offset[i] = offsets[k] + share * (offsets[k + 1] - offsets[k]);
        }
        // Beside the road itself: a path drawn from the line's curvature alone drifts by some centimetres over a lap.
        Stations laid = line.road().stations(StationSpacing.DEFAULT);
        double[] east = new double[s.length];
        double[] north = new double[s.length];
        for (int i = 0; i < s.length; i++) {
            Stations.Place place = laid.placeAt(Math.min(road[i], line.road().length()));
            east[i] = place.x() - offset[i] * Math.sin(place.heading());
            north[i] = place.y() + offset[i] * Math.cos(place.heading());
        }
        columns.put("eastM", east);
        columns.put("northM", north);
        columns.put("roadDistanceM", road);
        columns.put("offsetM", offset);
        return columns;
    }

    /** A speed (m/s) in km/h, the one unit of reports for speeds. */
    public static double kmh(double speed) {
        return Unit.METRE_PER_SECOND.convert(speed, Unit.KILOMETRE_PER_HOUR);
    }

    /** An acceleration (m/s²) in g, the one unit of reports for the accelerations of a car along and across its path. */
    public static double g(double acceleration) {
        return acceleration / StandardAtmosphere.GRAVITY;
    }

    /** The channel's label in one word with its unit: {@code lateralAccelerationG}. */
    static String name(Channel channel) {
        StringBuilder name = new StringBuilder();
        for (String word : channel.label().split("[ -]")) {
            String first = word.substring(0, 1);
            name.append(name.isEmpty() ? first : first.toUpperCase(Locale.ROOT)).append(word.substring(1));
        }
        String suffix = SUFFIXES.get(channel.unit());
        if (suffix == null) {
            throw new IllegalStateException("no column suffix for the unit " + channel.unit());
        }
        return name.append(suffix).toString();
    }

    /** A row for each station: the columns of numbers, of a lap on a line those too that it has more, and what limits the car. */
    static Table<Integer> table(Lap lap, Optional<Line> line) {
        return Table.of(
                        "Lap station by station",
                        line.map(found -> columns(lap, found)).orElseGet(() -> columns(lap)))
                .value("limitedBy", station -> lap.limit(station).label());
    }

    /** A list for each column, for machines; numbers to nine digits, null where there is none. */
    static Report report(Lap lap, Optional<Line> line) {
        return new Report()
                .fields(ResultHeader.of("trace/2", InputHash.of(lap), lap))
                .columns(table(lap, line), Table.places(lap.count()));
    }
}
