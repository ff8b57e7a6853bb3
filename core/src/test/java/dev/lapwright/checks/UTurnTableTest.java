package dev.lapwright.checks;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;

/** The published times of nine lines through one U-turn, driven as an open run by a point mass with the article's limits. */
class UTurnTableTest {
    private static final double FOOT = 0.3048;
    private static final double MILE_PER_HOUR = 0.44704;
    /** The article reckons with 32 ft/s². */
    private static final double GRAVITY = 32 * FOOT;

    private static final double ARRIVAL = 100 * MILE_PER_HOUR;

    private record Line(double entry, double toApex, double arc) {
        /** Lengths in m of a line of the given radius in ft; see the remarks in the file of checks. */
        static Line ofRadius(double radius) {
            double early = Math.sqrt(200 * (radius - 150));
            double sweep = Math.PI - Math.atan2(early, 200 - radius);
            return new Line((650 - early) * FOOT, radius * sweep * FOOT, Math.PI * radius * FOOT);
        }
    }

    private static Lap drive(double radius) {
        Line line = Line.ofRadius(radius);
        List<Segment> path = List.of(
                Segment.straight(line.entry()).limited(ARRIVAL),
                Segment.arc(line.arc(), radius * FOOT),
                Segment.straight(line.entry()));
        Track track = new SegmentPath(path, false, 1).openTrack("U-turn", ARRIVAL);
        PlainCar car =
                PlainCar.ofMass(1000).friction(GRAVITY / PlainCar.GRAVITY).force(1000 * GRAVITY / 2);
        return Runs.drive(car, track);
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("u-turn.csv")
    void everyNumberOfThePublishedTableIsMet(CheckRow row) {
        double radius = row.number("radius_ft");
        Line line = Line.ofRadius(radius);
        Lap lap = drive(radius);
        double apex = lap.timeAt(line.entry() + line.toApex());
        double end = lap.timeAt(line.entry() + line.arc());
        row.verify(
                switch (row.quantity()) {
                    case "time to apex" -> apex;
                    case "corner after apex" -> end - apex;
                    case "entry and corner" -> end;
                    case "exit speed" -> lap.value(Channel.SPEED, lap.count() - 1) / MILE_PER_HOUR;
                    case "chute" -> lap.time() - end;
                    case "whole segment" -> lap.time();
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    /** What the article is about: the line of the fastest corner is not the line of the fastest segment. */
    @Test
    void theWidestLineLosesTheCornerAndWinsTheSegment() {
        Lap tight = drive(155);
        Lap wide = drive(200);
        Line tightLine = Line.ofRadius(155);
        Line wideLine = Line.ofRadius(200);
        assertThat(tight.timeAt(tightLine.entry() + tightLine.arc()))
                .isLessThan(wide.timeAt(wideLine.entry() + wideLine.arc()));
        assertThat(wide.time()).isLessThan(tight.time());
    }
}
