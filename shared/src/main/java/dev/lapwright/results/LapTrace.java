package dev.lapwright.results;

import dev.lapwright.car.Unit;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.line.Line;
import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A lap station by station, as a table with the unit in the name of each column. Speeds are in km/h, as the trade reads
 * them.
 */
public final class LapTrace {
    private static final String LIMITED_BY = "limitedBy";
    /** How the units of channels end a column's name. */
    private static final Map<String, String> SUFFIXES =
            Map.of("", "", "m", "M", "s", "S", "m/s", "Kmh", "m/s²", "Mps2", "rpm", "Rpm", "N", "N", "mm", "Mm");

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

    static double kmh(double speed) {
        return Unit.METRE_PER_SECOND.convert(speed, Unit.KILOMETRE_PER_HOUR);
    }

    /** The channel's label in one word with its unit: {@code lateralAccelerationMps2}. */
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

    /**
     * Comma-separated values under one line of names; numbers to nine digits; the last column says what limits the car.
     */
    public static String csv(Lap lap) {
        return csv(lap, columns(lap));
    }

    /** The same of a lap on a line along a road. */
    public static String csv(Lap lap, Line line) {
        return csv(lap, columns(lap, line));
    }

    private static String csv(Lap lap, Map<String, double[]> columns) {
        CsvText csv = new CsvText();
        List<String> header = new ArrayList<>(columns.keySet());
        header.add(LIMITED_BY);
        csv.row(header);
        for (int i = 0; i < lap.count(); i++) {
            List<String> row = new ArrayList<>(header.size());
            for (double[] column : columns.values()) {
                row.add(CsvText.number(column[i]));
            }
            row.add(lap.limit(i).label());
            csv.row(row);
        }
        return csv.text();
    }

    /** JSON with one list for each column; numbers to nine digits, null where there is none. */
    public static String json(Lap lap) {
        return json(lap, columns(lap));
    }

    /** The same of a lap on a line along a road. */
    public static String json(Lap lap, Line line) {
        return json(lap, columns(lap, line));
    }

    private static String json(Lap lap, Map<String, double[]> columns) {
        Map<String, Object> tree = ResultHeader.of(
                "trace/1",
                InputHash.of(lap),
                lap.vehicle().car(),
                lap.track(),
                lap.vehicle().conditions());
        columns.forEach((name, values) -> {
            List<Double> list = new ArrayList<>(values.length);
            for (double value : values) {
                list.add(CsvText.rounded(value));
            }
            tree.put(name, list);
        });
        List<String> limits = new ArrayList<>(lap.count());
        for (int i = 0; i < lap.count(); i++) {
            limits.add(lap.limit(i).label());
        }
        tree.put(LIMITED_BY, limits);
        return JsonLayout.text(tree);
    }
}
