package dev.lapwright.fit;

import dev.lapwright.track.Corner;
import dev.lapwright.track.Stations;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Times and speeds by corner and straight. Each cell of the grid belongs to one part; where no lap has samples, the fitted car's
 * speed is taken.
 */
final class FitParts {
    /** Slower is not driving, m/s. */
    private static final double SLOWEST = 0.1;

    private final Stations stations;
    private final double[] distance;
    private final double[] logged;
    private final double[] before;
    private final double[] after;
    private final double cell;
    /** m driven for a metre of track. */
    private final double wayDriven;

    /**
     * @param loggedTime of a lap by the clock, s, which the logged times of the parts add up to: a way longer than the track's
     *     takes longer at the same speed
     */
    FitParts(Stations stations, FitResult.Trace trace, double loggedTime) {
        this.stations = stations;
        distance = trace.distance();
        before = trace.before();
        after = trace.after();
        logged = trace.logged();
        for (int c = 0; c < logged.length; c++) {
            logged[c] = Double.isNaN(logged[c]) ? after[c] : logged[c];
        }
        cell = stations.track().length() / distance.length;
        double time = 0;
        for (double speed : logged) {
            time += time(speed);
        }
        wayDriven = loggedTime / time;
    }

    /** In driving order; what spans the start line last. */
    List<FitResult.Part> list() {
        List<List<Integer>> runs = new ArrayList<>();
        List<Optional<Corner>> corners = new ArrayList<>();
        for (int c = 0; c < distance.length; c++) {
            Optional<Corner> corner = cornerAt(distance[c]);
            if (runs.isEmpty() || !corner.equals(corners.get(corners.size() - 1))) {
                runs.add(new ArrayList<>());
                corners.add(corner);
            }
            runs.get(runs.size() - 1).add(c);
        }
        int last = runs.size() - 1;
        boolean closed = stations.track().isClosed();
        if (last > 0 && closed && corners.get(0).equals(corners.get(last))) {
            runs.get(last).addAll(runs.get(0));
            runs.remove(0);
            corners.remove(0);
        }
        List<FitResult.Part> parts = new ArrayList<>();
        for (int k = 0; k < runs.size(); k++) {
            boolean straight = corners.get(k).isEmpty() && corners.size() > 1;
            Optional<Corner> follows = straight && (k > 0 || closed)
                    ? corners.get((k - 1 + corners.size()) % corners.size())
                    : Optional.empty();
            parts.add(part(corners.get(k), follows, runs.get(k)));
        }
        return parts;
    }

    private Optional<Corner> cornerAt(double s) {
        return stations.corners().stream().filter(corner -> holds(corner, s)).findFirst();
    }

    private static boolean holds(Corner corner, double s) {
        return corner.entry() <= corner.exit()
                ? s >= corner.entry() && s <= corner.exit()
                : s >= corner.entry() || s <= corner.exit();
    }

    private FitResult.Part part(Optional<Corner> corner, Optional<Corner> follows, List<Integer> cells) {
        double start = distance[cells.get(0)] - 0.5 * cell;
        double end = distance[cells.get(cells.size() - 1)] + 0.5 * cell;
        return new FitResult.Part(
                corner,
                follows,
                start,
                end,
                passage(logged, cells, wayDriven),
                passage(before, cells, 1),
                passage(after, cells, 1));
    }

    /** Time in a cell, s. */
    private double time(double speed) {
        return cell / Math.max(speed, SLOWEST);
    }

    private FitResult.Passage passage(double[] speed, List<Integer> cells, double way) {
        double time = 0;
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        for (int c : cells) {
            time += way * time(speed[c]);
            least = Math.min(least, speed[c]);
            most = Math.max(most, speed[c]);
        }
        return new FitResult.Passage(
                time, edge(speed, cells.get(0)), least, most, edge(speed, cells.get(cells.size() - 1) + 1));
    }

    /** Speed between a cell and the one before it. */
    private double edge(double[] speed, int c) {
        int n = speed.length;
        boolean closed = stations.track().isClosed();
        int left = c > 0 ? c - 1 : closed ? n - 1 : 0;
        int right = c < n ? c : closed ? 0 : n - 1;
        return 0.5 * (speed[left] + speed[right]);
    }
}
