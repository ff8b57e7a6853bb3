package dev.lapwright.documents;

import dev.lapwright.car.Unit;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
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
        Map<String, double[]> columns = columns(lap);
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
        Map<String, Object> tree = ResultHeader.of(
                "trace/1",
                InputHash.of(lap),
                lap.vehicle().car(),
                lap.track(),
                lap.vehicle().conditions());
        columns(lap).forEach((name, values) -> {
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
