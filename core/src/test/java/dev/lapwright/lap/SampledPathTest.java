package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.PlainCar;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A smooth path given by many points is lapped at few stations. */
class SampledPathTest {
    private static final double LENGTH = 3000;
    /** What the default spacing is good for, s: see docs/performance.md. */
    private static final double PROMISED = 1e-3;

    /** A closed path of bends from 50 m radius on, each opening as a sine does, with straights between: points every two metres. */
    private static Track bends(double step) {
        int cells = (int) Math.round(LENGTH / step);
        List<TrackPoint> points = new ArrayList<>();
        for (int i = 0; i <= cells; i++) {
            double s = LENGTH * i / cells;
            double wave = Math.sin(2 * Math.PI * 3 * s / LENGTH);
            double tight = 0.6 + 0.4 * Math.cos(2 * Math.PI * s / LENGTH);
            points.add(TrackPoint.flat(s, 0.02 * tight * wave * wave * wave));
        }
        return Track.closed("waves", points);
    }

    private static double time(Stations stations) {
        return new LapSolver(stations).lapTime(PlainCar.ofMass(1200).vehicle());
    }

    /** Beside all points and many more between them: the order of the rule holds on the path as it is given. */
    @Test
    void theLapTimeIsThatOfAllPoints() {
        Track path = bends(2);
        Stations few = path.stations(StationSpacing.DEFAULT);
        assertThat(few.count()).isLessThan(path.points().size() * 2 / 3);
        assertThat(time(few)).isCloseTo(time(path.stations(StationSpacing.DEFAULT.scaled(0.1))), within(PROMISED));
    }

    /** Which points are passed over depends on where the path begins; the lap hardly does. */
    @ParameterizedTest
    @ValueSource(doubles = {3, 500, 1777})
    void theLapTimeDoesNotDependOnTheStart(double start) {
        Track path = bends(2);
        double here = time(path.stations(StationSpacing.DEFAULT));
        double elsewhere = time(path.startingAt(start).stations(StationSpacing.DEFAULT));
        assertThat(elsewhere).isCloseTo(here, within(PROMISED));
    }

    /** The finer the spacing the fewer are passed over, and at last none. */
    @Test
    void finerSpacingTakesMorePoints() {
        Track path = bends(0.5);
        double[] scales = {2, 1, 0.5, 0.1};
        int[] counts = Arrays.stream(scales)
                .mapToInt(scale ->
                        path.stations(StationSpacing.DEFAULT.scaled(scale)).count())
                .toArray();
        assertThat(counts).isSorted().doesNotHaveDuplicates();
        assertThat(counts[3]).isGreaterThanOrEqualTo(path.points().size());
    }

    @Test
    void cornersThatAreKnownBeginAndEndAtStations() {
        Track path = bends(2).withCorners(List.of(new Corner(1, "One", 1202, 1300, 1388, true, 50)));
        double[] s = path.stations(StationSpacing.DEFAULT).s();
        for (double end : new double[] {1202, 1388}) {
            assertThat(Arrays.binarySearch(s, end)).isNotNegative();
        }
    }

    /** A limit on two points is not passed over. */
    @Test
    void whatHappensBetweenTwoPointsStays() {
        List<TrackPoint> points = new ArrayList<>();
        for (TrackPoint p : bends(2).points()) {
            double limit = p.s() > 1399 && p.s() < 1404 ? 30 : Double.POSITIVE_INFINITY;
            points.add(new TrackPoint(p.s(), p.curvature(), 0, 0, 0, 1, 5, 5, limit));
        }
        Track limited = Track.closed("limited", points);
        Lap lap = new LapSolver(limited.stations(StationSpacing.DEFAULT))
                .solve(PlainCar.ofMass(1200).vehicle());
        double[] s = lap.column(Channel.DISTANCE);
        double[] v = lap.column(Channel.SPEED);
        for (int i = 0; i < s.length; i++) {
            if (s[i] >= 1400 && s[i] <= 1402) {
                assertThat(v[i]).isLessThanOrEqualTo(30 + 1e-9);
            }
        }
        assertThat(Arrays.stream(s).filter(at -> at >= 1399 && at <= 1403)).isNotEmpty();
    }
}
