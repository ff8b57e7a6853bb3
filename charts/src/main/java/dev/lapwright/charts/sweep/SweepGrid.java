package dev.lapwright.charts.sweep;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * A sweep of one or two axes laid out for drawing: {@code x} is drawn across, {@code families} hold one line each. Values
 * stand in rising order whatever order they were swept in.
 */
final class SweepGrid {
    /** More lines than this cannot be told apart. */
    static final int MOST_FAMILIES = 6;

    private final SweepResult sweep;
    private final AxisText acrossText;
    private final AxisText familyText;
    private final double[] across;
    private final double[] families;
    private final LapFigures[][] figures;

    /** One point: its place among the values across, and its lap. */
    record Entry(double setting, LapFigures figures) {}

    private SweepGrid(SweepResult sweep, SweepAxis across, SweepAxis family) {
        this.sweep = sweep;
        this.acrossText = AxisText.of(sweep, across);
        this.familyText = family == null ? new AxisText("", "") : AxisText.of(sweep, family);
        this.across = across.values();
        Arrays.sort(this.across);
        this.families = family == null ? new double[] {0} : family.values();
        Arrays.sort(this.families);
        figures = new LapFigures[families.length][this.across.length];
        int acrossAt = sweep.axes().indexOf(across);
        for (SweepResult.Point point : sweep.points()) {
            int column = Arrays.binarySearch(this.across, point.settings().get(acrossAt));
            int row = family == null
                    ? 0
                    : Arrays.binarySearch(families, point.settings().get(1 - acrossAt));
            figures[row][column] = point.figures().orElse(null);
        }
    }

    /** Draws across the first axis, unless only the first has few enough values to give each a line of its own. */
    static SweepGrid of(SweepResult sweep) {
        List<SweepAxis> axes = sweep.axes();
        if (axes.isEmpty() || axes.size() > 2) {
            throw new InvalidValueException(
                    "sweep", "a chart cannot show " + axes.size() + " axes", "sweep one or two things for a chart");
        }
        if (sweep.fastest().isEmpty()) {
            String why =
                    sweep.points().isEmpty() ? "" : " (" + sweep.points().get(0).failure() + ")";
            throw new InvalidValueException(
                    "sweep", "no setting gave a lap" + why, "sweep settings with which the car can drive");
        }
        if (axes.size() == 1) {
            return new SweepGrid(sweep, axes.get(0), null);
        }
        boolean swap = axes.get(1).count() > MOST_FAMILIES && axes.get(0).count() <= MOST_FAMILIES;
        return swap ? new SweepGrid(sweep, axes.get(1), axes.get(0)) : new SweepGrid(sweep, axes.get(0), axes.get(1));
    }

    SweepResult sweep() {
        return sweep;
    }

    boolean hasFamilies() {
        return sweep.axes().size() == 2;
    }

    /** Whether every value of the second axis can have its own line. */
    boolean fitsLines() {
        return families.length <= MOST_FAMILIES;
    }

    AxisText acrossText() {
        return acrossText;
    }

    AxisText familyText() {
        return familyText;
    }

    double[] across() {
        return across.clone();
    }

    double[] families() {
        return families.clone();
    }

    /** The lap at a place, or null where there was none. */
    LapFigures at(int family, int column) {
        return figures[family][column];
    }

    /** Points of one line that have a lap. */
    List<Entry> entries(int family) {
        List<Entry> entries = new ArrayList<>();
        for (int i = 0; i < across.length; i++) {
            if (figures[family][i] != null) {
                entries.add(new Entry(across[i], figures[family][i]));
            }
        }
        return entries;
    }

    /** Place of the fastest lap: family and column. */
    int[] fastest() {
        int[] best = null;
        for (int f = 0; f < families.length; f++) {
            for (int i = 0; i < across.length; i++) {
                boolean faster = figures[f][i] != null
                        && (best == null || figures[f][i].lapTime() < figures[best[0]][best[1]].lapTime());
                if (faster) {
                    best = new int[] {f, i};
                }
            }
        }
        return best;
    }

    /** A place in words: "6 deg" with one axis, "rear wing 6 deg, front bar 3 clicks" with two. */
    String words(int[] place) {
        if (!hasFamilies()) {
            return acrossText.value(across[place[1]]);
        }
        return acrossText.named(across[place[1]]) + ", " + familyText.named(families[place[0]]);
    }

    /** What the chart must not keep quiet about: settings without a lap; empty if there are none. */
    String warning() {
        long missing =
                sweep.points().stream().filter(p -> p.figures().isEmpty()).count();
        return missing == 0 ? "" : missing + " of " + sweep.points().size() + " settings give no lap";
    }

    /** Entries of all families by lap time, fastest first. */
    List<Entry> byLapTime() {
        List<Entry> all = new ArrayList<>();
        for (int f = 0; f < families.length; f++) {
            all.addAll(entries(f));
        }
        all.sort(Comparator.comparingDouble(e -> e.figures().lapTime()));
        return all;
    }
}
