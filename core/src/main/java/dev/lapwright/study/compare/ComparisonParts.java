package dev.lapwright.study.compare;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import dev.lapwright.study.CornerPlaces;
import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Cuts two laps into corners and straights. Each cell between two stations belongs to one part. */
final class ComparisonParts {
    private final Lap first;
    private final Lap second;
    private final CornerPlaces places;
    private final double[] s;
    private final double[][] time;
    private final double[][] speed;

    ComparisonParts(Lap first, Lap second) {
        this.first = first;
        this.second = second;
        places = new CornerPlaces(first.stations().corners(), first.track());
        s = first.column(Channel.DISTANCE);
        time = new double[][] {first.column(Channel.TIME), second.column(Channel.TIME)};
        speed = new double[][] {first.column(Channel.SPEED), second.column(Channel.SPEED)};
    }

    /** In driving order; what spans the start line last. */
    List<ComparisonPart> list() {
        List<List<Integer>> runs = new ArrayList<>();
        List<Optional<Corner>> corners = new ArrayList<>();
        for (int i = 0; i + 1 < s.length; i++) {
            Optional<Corner> corner = places.at(0.5 * (s[i] + s[i + 1]));
            if (runs.isEmpty() || !corner.equals(corners.get(corners.size() - 1))) {
                runs.add(new ArrayList<>());
                corners.add(corner);
            }
            runs.get(runs.size() - 1).add(i);
        }
        int last = runs.size() - 1;
        if (last > 0 && first.track().isClosed() && corners.get(0).equals(corners.get(last))) {
            runs.get(last).addAll(runs.get(0));
            runs.remove(0);
            corners.remove(0);
        }
        List<ComparisonPart> parts = new ArrayList<>();
        for (int k = 0; k < runs.size(); k++) {
            parts.add(part(runs.get(k), corners, k));
        }
        return parts;
    }

    private ComparisonPart part(List<Integer> cells, List<Optional<Corner>> corners, int k) {
        boolean closed = first.track().isClosed();
        int count = corners.size();
        boolean straight = corners.get(k).isEmpty() && count > 1;
        Optional<Corner> after =
                straight && (k > 0 || closed) ? corners.get((k - 1 + count) % count) : Optional.empty();
        Optional<Corner> before =
                straight && (k + 1 < count || closed) ? corners.get((k + 1) % count) : Optional.empty();
        return new ComparisonPart(
                corners.get(k),
                after,
                before,
                s[cells.get(0)],
                s[cells.get(cells.size() - 1) + 1],
                drive(0, cells),
                drive(1, cells),
                causes(cells));
    }

    private ComparisonPart.Drive drive(int lap, List<Integer> cells) {
        double spent = 0;
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        double[] v = speed[lap];
        for (int i : cells) {
            spent += time[lap][i + 1] - time[lap][i];
            least = Math.min(least, Math.min(v[i], v[i + 1]));
            most = Math.max(most, Math.max(v[i], v[i + 1]));
        }
        return new ComparisonPart.Drive(spent, v[cells.get(0)], least, most, v[cells.get(cells.size() - 1) + 1]);
    }

    /** Each end of a cell, in each lap, answers for a quarter of the cell's difference. */
    private Map<Limit, Double> causes(List<Integer> cells) {
        Map<Limit, Double> causes = new EnumMap<>(Limit.class);
        for (int i : cells) {
            double lost = time[1][i + 1] - time[1][i] - (time[0][i + 1] - time[0][i]);
            for (Lap lap : List.of(first, second)) {
                causes.merge(lap.limit(i), 0.25 * lost, Double::sum);
                causes.merge(lap.limit(i + 1), 0.25 * lost, Double::sum);
            }
        }
        return causes;
    }
}
