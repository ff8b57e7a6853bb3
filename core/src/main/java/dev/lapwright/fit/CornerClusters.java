package dev.lapwright.fit;

import dev.lapwright.track.Corner;
import dev.lapwright.track.Stations;
import java.util.List;

/**
 * Clusters of cells by corner: a track divided into stretches of one corner each, from the middle of the straight before it to
 * the middle of that after it. What a driver does in one corner is taken to last until the next and no longer.
 */
final class CornerClusters {
    private CornerClusters() {}

    /** The stretch that each of so many even cells lies in, counted from 0; all 0 where there is no more than one corner. */
    static int[] of(Stations stations, int cells) {
        List<Corner> corners = stations.corners();
        int[] clusters = new int[cells];
        if (corners.size() < 2) {
            return clusters;
        }
        double length = stations.track().length();
        for (int c = 0; c < cells; c++) {
            double place = (c + 0.5) * length / cells;
            double nearest = Double.POSITIVE_INFINITY;
            for (int k = 0; k < corners.size(); k++) {
                double away =
                        away(corners.get(k), place, length, stations.track().isClosed());
                if (away < nearest) {
                    nearest = away;
                    clusters[c] = k;
                }
            }
        }
        return clusters;
    }

    /** Way from a place to a corner, m; 0 within it. */
    private static double away(Corner corner, double place, double length, boolean closed) {
        boolean within = corner.entry() <= corner.exit()
                ? place >= corner.entry() && place <= corner.exit()
                : place >= corner.entry() || place <= corner.exit();
        if (within) {
            return 0;
        }
        double before = Math.abs(corner.entry() - place);
        double behind = Math.abs(place - corner.exit());
        return closed
                ? Math.min(Math.min(before, length - before), Math.min(behind, length - behind))
                : Math.min(before, behind);
    }
}
