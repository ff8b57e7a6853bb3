package dev.lapwright.track.survey;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The places where a line of short, equally long pieces crosses itself. Pieces are looked up by squares, so that it is O(n). */
final class Crossings {
    private Crossings() {}

    private record Square(long column, long row) {}

    /**
     * The pieces at which the line crosses a piece further on, in order.
     *
     * @param x of the ends of the pieces, m; a closed line ends where it starts
     * @param y likewise
     */
    static List<Integer> find(double[] x, double[] y, boolean closed) {
        int pieces = x.length - 1;
        double longest = 0;
        for (int i = 0; i < pieces; i++) {
            longest = Math.max(longest, Math.hypot(x[i + 1] - x[i], y[i + 1] - y[i]));
        }
        // Two pieces that cross have their middles within one length of each other.
        double side = longest * 1.001;
        Map<Square, List<Integer>> squares = new HashMap<>();
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < pieces; i++) {
            long column = (long) Math.floor((x[i] + x[i + 1]) / 2 / side);
            long row = (long) Math.floor((y[i] + y[i + 1]) / 2 / side);
            for (long c = column - 1; c <= column + 1; c++) {
                for (long r = row - 1; r <= row + 1; r++) {
                    for (int j : squares.getOrDefault(new Square(c, r), List.of())) {
                        boolean neighbours = j == i - 1 || (closed && j == 0 && i == pieces - 1);
                        if (!neighbours && cross(x, y, j, i)) {
                            found.add(j);
                        }
                    }
                }
            }
            squares.computeIfAbsent(new Square(column, row), k -> new ArrayList<>())
                    .add(i);
        }
        found.sort(null);
        return found;
    }

    private static boolean cross(double[] x, double[] y, int a, int b) {
        // An end on the other piece counts for the piece that begins there, so that no crossing is counted twice.
        return side(x, y, a, b) >= 0 != side(x, y, a, b + 1) >= 0 && side(x, y, b, a) >= 0 != side(x, y, b, a + 1) >= 0;
    }

    /** On which side of a piece a point lies. */
    private static double side(double[] x, double[] y, int piece, int point) {
        return (x[piece + 1] - x[piece]) * (y[point] - y[piece]) - (y[piece + 1] - y[piece]) * (x[point] - x[piece]);
    }
}
