package dev.lapwright.study.sweep;

import dev.lapwright.lap.LapFigures;
import java.util.AbstractList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.RandomAccess;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;

/** Points of a sweep as bare numbers, 48 bytes each: millions of them must not fill the memory. A point is made when it is asked for. */
final class SweepPoints extends AbstractList<SweepResult.Point> implements RandomAccess {
    private static final int FIGURES = 6;

    private final List<SweepAxis> axes;
    private final int size;
    private final double[][] figures;
    private final BitSet known = new BitSet();
    private final Map<Integer, String> failures = new ConcurrentHashMap<>();

    SweepPoints(List<SweepAxis> axes, int size) {
        this.axes = axes;
        this.size = size;
        figures = new double[FIGURES][size];
    }

    /** Puts a lap at its place; other places may be written at the same time. */
    void put(int index, double[] lap, String failure) {
        if (lap.length == 0) {
            failures.put(index, failure);
        }
        for (int k = 0; k < lap.length; k++) {
            figures[k][index] = lap[k];
        }
    }

    /** The figures of a lap as they stand here; none without a lap. */
    static double[] figures(LapFigures lap) {
        return lap == null
                ? new double[0]
                : new double[] {
                    lap.lapTime(),
                    lap.topSpeed(),
                    lap.minimumSpeed(),
                    lap.minimumCornerSpeed(),
                    lap.meanCornerSpeed(),
                    lap.meanSpeed()
                };
    }

    /** Marks a place as known before the sweep begins; what is none of this sweep is as if it were not there. */
    void recall(int index, double[] lap, String failure) {
        if (lap.length == FIGURES || (lap.length == 0 && !failure.isEmpty())) {
            put(index, lap, failure);
            known.set(index);
        }
    }

    /** Places that are not known yet, in order. */
    int[] missing() {
        return IntStream.range(0, size).filter(i -> !known.get(i)).toArray();
    }

    /** Values on the axes at a place. */
    List<Double> settings(int index) {
        Double[] values = new Double[axes.size()];
        int rest = index;
        for (int k = values.length - 1; k >= 0; k--) {
            int count = axes.get(k).count();
            values[k] = axes.get(k).value(rest % count);
            rest /= count;
        }
        return List.of(values);
    }

    @Override
    public SweepResult.Point get(int index) {
        if (index < 0 || index >= size) {
            throw new IndexOutOfBoundsException(index);
        }
        String failure = failures.get(index);
        Optional<LapFigures> lap = failure != null
                ? Optional.empty()
                : Optional.of(new LapFigures(
                        figures[0][index],
                        figures[1][index],
                        figures[2][index],
                        figures[3][index],
                        figures[4][index],
                        figures[5][index]));
        return new SweepResult.Point(settings(index), lap, failure == null ? "" : failure);
    }

    @Override
    public int size() {
        return size;
    }
}
