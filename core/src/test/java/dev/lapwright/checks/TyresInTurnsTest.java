package dev.lapwright.checks;

import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;

/** What a tyre can still give along the car while it turns, and what turning and toe cost. */
class TyresInTurnsTest {
    private static final double RADIUS = 50;
    private static final double LENGTH = 60;

    @ParameterizedTest(name = "{0}")
    @CheckFile("tyres-in-turns.csv")
    void gripIsSharedBetweenTurningAndTheRest(CheckRow row) {
        double speed = row.number("speed_mps");
        PlainCar car = PlainCar.ofMass(1000)
                .friction(row.number("friction"))
                .stiffness(row.number("stiffness_per_rad"))
                .with(Quantity.FRICTION_EXPONENT, row.number("exponent"));
        row.verify(
                switch (row.quantity()) {
                    case "acceleration in a turn" ->
                        Runs.drive(car, turn(speed, speed)).value(Channel.ACCELERATION, 0);
                    case "braking in a turn" -> {
                        // Ends at the speed that is looked at, from a higher one.
                        Lap lap = Runs.drive(car, turn(speed + 1, speed));
                        yield lap.value(Channel.ACCELERATION, Runs.stationAt(lap, LENGTH));
                    }
                    case "cornering drag" ->
                        Runs.drive(car, Roads.circle(RADIUS, 0, speed)).value(Channel.CORNERING_DRAG, 5);
                    case "toe drag" ->
                        Runs.drive(
                                        car.with(Quantity.TOE_FRONT, row.number("toe_deg"))
                                                .with(Quantity.TOE_REAR, row.number("toe_deg")),
                                        Roads.straightAt(speed, 100))
                                .value(Channel.DRIVE_FORCE, 2);
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    /** An arc to the left at whose end a speed is ordered. */
    private static Track turn(double entrySpeed, double endSpeed) {
        return new SegmentPath(
                        List.of(
                                Segment.arc(LENGTH, RADIUS),
                                Segment.arc(10, RADIUS).limited(endSpeed)),
                        false,
                        1)
                .openTrack("turn", entrySpeed);
    }
}
