package dev.lapwright.study.lines;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.StudyStoppedException;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** Cars on lines of their own: what must hold of any comparison. */
class OwnLinesTest {
    private static final Car WEAK = car(120_000, 1.2);
    private static final Car STRONG = car(200_000, 1.3);

    private static Car car(double power, double friction) {
        return PlainCar.ofMass(1000)
                .power(power, 5, 80)
                .friction(friction)
                .with(Quantity.WIDTH, 1.8)
                .car();
    }

    private static Track road() {
        return new SegmentPath(
                        List.of(
                                Segment.straight(150).wide(5, 5),
                                Segment.arc(50, 40).wide(5, 5),
                                Segment.straight(80).wide(5, 5),
                                Segment.arc(60, -30).wide(5, 5),
                                Segment.straight(200).wide(5, 5)),
                        false,
                        1)
                .openTrack("bends", 25);
    }

    private static OwnLinesResult compare(Car first, Car other, StudyRun how) {
        return OwnLines.of(road(), first, Conditions.STANDARD)
                .against(List.of(other))
                .run(how);
    }

    @Test
    void aCarAgainstItselfIsNoFaster() {
        assertThat(compare(WEAK, WEAK, StudyRun.onThreads(2)).difference(0)).isZero();
    }

    /**
     * Each may use what was found for the other, so it hardly matters who is asked first. Within 5 ms: a rough search leaves what two steps in turn
     * gain less than a millisecond of, one for each car and way.
     */
    @Test
    void theOtherWayRoundTheDifferenceIsTheOpposite() {
        double there = compare(WEAK, STRONG, StudyRun.onThreads(2)).difference(0);
        double back = compare(STRONG, WEAK, StudyRun.onThreads(1)).difference(0);
        assertThat(there).isLessThan(-0.05).isCloseTo(-back, within(0.005));
    }

    @Test
    void anyNumberOfThreadsFindsTheSame() {
        OwnLinesResult one = compare(WEAK, STRONG, StudyRun.onThreads(1));
        OwnLinesResult two = compare(WEAK, STRONG, StudyRun.onThreads(2));
        assertThat(two.first().lapTime()).isEqualTo(one.first().lapTime());
        assertThat(two.difference(0)).isEqualTo(one.difference(0));
    }

    /** Of a wider car the line lies farther inside; what was found for a narrow one would put it over the edge. */
    @Test
    void aWiderCarKeepsItsRoomOnALineOfANarrowOne() {
        Car wide = PlainCar.ofMass(1000)
                .power(120_000, 5, 80)
                .friction(1.2)
                .with(Quantity.WIDTH, 2.4)
                .car();
        OwnLinesResult found = compare(WEAK, wide, StudyRun.onThreads(1));
        double free = 5 - 2.4 / 2 - LineChoices.DEFAULT.marginLeft();
        for (double offset : found.others().get(0).line().offsets()) {
            assertThat(Math.abs(offset)).isLessThanOrEqualTo(free + 1e-9);
        }
        assertThat(found.difference(0)).isPositive();
    }

    @Test
    void noCarIsSlowerThanOnALineThatWasNotItsOwn() {
        OwnLinesResult found = compare(WEAK, STRONG, StudyRun.onThreads(2));
        LineSearch search = LineSearch.of(road(), WEAK, LineChoices.DEFAULT);
        Vehicle strong = Vehicle.of(STRONG, Conditions.STANDARD);
        Vehicle weak = Vehicle.of(WEAK, Conditions.STANDARD);
        assertThat(found.others().get(0).lapTime())
                .isLessThanOrEqualTo(time(found.first().line().driven(), strong))
                .isLessThanOrEqualTo(time(search.fastest(weak).driven(), strong))
                .isLessThan(time(search.smoothest().driven(), strong));
    }

    private static double time(Track line, Vehicle vehicle) {
        return LapSolver.on(line).lapTime(vehicle);
    }

    /** As whoever runs it asks after each step of a search, not only between searches. */
    @Test
    void aSearchIsStoppedInItsMiddle() {
        AtomicInteger asked = new AtomicInteger();
        StudyRun how = StudyRun.onThreads(1).stoppedWhen(() -> asked.incrementAndGet() > 4);
        assertThatThrownBy(() -> compare(WEAK, STRONG, how)).isInstanceOf(StudyStoppedException.class);
        assertThat(asked).hasValue(5);
    }
}
