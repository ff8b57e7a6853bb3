package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Limit;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A car whose values are known drives a lap, and the fit of another car finds them. */
class FitRecoveryTest {
    private static final Track LONG = FitScene.longCircuit();
    private static final Car CAR = FitScene.car();
    /** The driven car: less grip, more drag, more downforce, more power, more rolling resistance. */
    private static final Map<FitParameter, Double> TRUTH = new EnumMap<>(Map.of(
            FitParameter.GRIP, 0.94,
            FitParameter.DRAG_AREA, 1.05,
            FitParameter.DOWNFORCE_AREA, 2.4,
            FitParameter.POWER, 1.04,
            FitParameter.ROLLING_RESISTANCE, 0.016));

    private static final Lap DRIVEN = LapSolver.lap(trueCar(), LONG, Conditions.STANDARD);

    /** By the quantities themselves: nothing of the fit's own is used. */
    private static Car trueCar() {
        double front = CAR.value(Quantity.LIFT_AREA_FRONT) - 0.075;
        double rear = CAR.value(Quantity.LIFT_AREA_REAR) + 0.7;
        double more = 2.4 - (front + rear);
        double balance = front / (front + rear);
        Map<Quantity, Double> q = new EnumMap<>(Quantity.class);
        for (Quantity friction : List.of(
                Quantity.FRICTION_X_FRONT,
                Quantity.FRICTION_Y_FRONT,
                Quantity.FRICTION_X_REAR,
                Quantity.FRICTION_Y_REAR)) {
            q.put(friction, 0.94 * CAR.value(friction));
        }
        // The wing at 5 degrees, half-way between its settings, adds 0.125 to drag: areas are looked at through
        // ParameterScale.
        q.put(
                Quantity.DRAG_AREA,
                CAR.value(Quantity.DRAG_AREA) + 1.05 - ParameterScale.areas(CAR).drag());
        q.put(Quantity.LIFT_AREA_FRONT, CAR.value(Quantity.LIFT_AREA_FRONT) + more * balance);
        q.put(Quantity.LIFT_AREA_REAR, CAR.value(Quantity.LIFT_AREA_REAR) + more * (1 - balance));
        q.put(Quantity.POWER_SCALE, 1.04);
        q.put(Quantity.ROLLING_RESISTANCE, 0.016);
        return FitScene.car(q);
    }

    private static FitResult fit(DrivenLap... laps) {
        return Fit.of(CAR, LONG, Conditions.STANDARD).laps(List.of(laps)).run();
    }

    /** Where all that is not fitted is known exactly. */
    private static FitResult exactly(DrivenLap... laps) {
        return Fit.of(CAR, LONG, Conditions.STANDARD)
                .laps(List.of(laps))
                .doubting(FitDoubts.none())
                .run();
    }

    private static FitResult three(DrivenLap... laps) {
        return Fit.of(CAR, LONG, Conditions.STANDARD)
                .laps(List.of(laps))
                .fitting(EnumSet.of(FitParameter.GRIP, FitParameter.DRAG_AREA, FitParameter.POWER))
                .run();
    }

    /** Who stops a fit has what it came to so far; the last that is told is what the fit finds. */
    @Test
    void whatEachRoundComesToIsTold() {
        List<Map<FitParameter, Double>> told = new ArrayList<>();
        FitResult found = Fit.of(CAR, LONG, Conditions.STANDARD)
                .laps(List.of(Recorder.at(50).of("told", DRIVEN)))
                .fitting(EnumSet.of(FitParameter.GRIP, FitParameter.POWER))
                .tellingRounds(told::add)
                .run();
        assertThat(told).hasSizeGreaterThan(1);
        for (FitResult.Estimate estimate : found.estimates()) {
            assertThat(told.get(told.size() - 1)).containsEntry(estimate.parameter(), estimate.value());
        }
    }

    private static DrivenLap noisy(String name, long seed) {
        return Recorder.at(20).noisy(0.2, 0, new Random(seed)).of(name, DRIVEN);
    }

    @Test
    void aLapWithoutNoiseGivesItsOwnCarBack() {
        FitResult result = fit(Recorder.at(50).of("exact", DRIVEN));
        TRUTH.forEach((parameter, truth) -> {
            FitResult.Estimate estimate = result.estimate(parameter);
            // Between samples the log is straight where the car is not; and the search stops within 2e-3 of what is in
            // doubt,
            // up to fifteen times as far along a loose tie, as rolling resistance, drag and grip have here.
            double inDoubt = ParameterScale.of(parameter, CAR).slope(0);
            assertThat(estimate.value()).as(parameter.title()).isCloseTo(truth, within(0.03 * inDoubt));
        });
    }

    @Test
    void theFittedCarDrivesTheLoggedTime() {
        // With doubts the speed's scale is unknown by a share of 0.3 %, and so is the time.
        FitResult result = exactly(noisy("lap", 1));
        // A noise of 0.2 m/s on 2000 samples of some 50 m/s is worth 105 s · 0.2/50/sqrt(2000) = 0.01 s; four times
        // that.
        assertThat(result.after().time()).isCloseTo(DRIVEN.time(), within(0.04));
        assertThat(result.loggedTime()).isCloseTo(DRIVEN.time(), within(0.04));
        assertThat(result.agreement().residuals().rmsAfter())
                .isLessThan(result.agreement().residuals().rmsBefore());
    }

    @Test
    void theFittedCarCarriesTheEstimates() {
        FitResult result = exactly(noisy("lap", 2));
        Car fitted = result.fitted();
        // Sums of the same doubles in another order.
        assertThat(ParameterScale.areas(fitted).drag())
                .isCloseTo(result.estimate(FitParameter.DRAG_AREA).value(), within(1e-12));
        assertThat(ParameterScale.areas(fitted).liftFront()
                        + ParameterScale.areas(fitted).liftRear())
                .isCloseTo(result.estimate(FitParameter.DOWNFORCE_AREA).value(), within(1e-12));
        assertThat(fitted.value(Quantity.POWER_SCALE))
                .isCloseTo(result.estimate(FitParameter.POWER).value(), within(1e-12));
        assertThat(fitted.value(Quantity.FRICTION_Y_FRONT) / CAR.value(Quantity.FRICTION_Y_FRONT))
                .isCloseTo(result.estimate(FitParameter.GRIP).value(), within(1e-12));
    }

    @Test
    void aDistanceOfAnotherScaleAndStartChangesNothingAndIsReported() {
        FitResult plain = three(noisy("plain", 3));
        FitResult other = three(
                Recorder.at(20).noisy(0.2, 0, new Random(3)).distance(0.98, 140).of("wheel set too small", DRIVEN));
        for (FitResult.Estimate estimate : plain.estimates()) {
            // The same search from the same start, but for rounding: within where it stops.
            double slack = 5e-3 * ParameterScale.of(estimate.parameter(), CAR).slope(0);
            assertThat(other.estimate(estimate.parameter()).value()).isCloseTo(estimate.value(), within(slack));
        }
        // Noise of 0.2 m/s with dv/ds of some 0.1 1/s over 1000 cells leaves offsets to 0.1 m, the scale to 0.1 m in 5
        // km; a scale at the end of its tolerance takes the offset half a metre along.
        assertThat(other.laps().get(0).alignment().scale()).isCloseTo(1 / 0.98, within(1e-4));
        assertThat(other.laps().get(0).alignment().offset()).isCloseTo(-140 / 0.98, within(1.0));
        assertThat(other.notes()).anyMatch(note -> note.contains("scaled by 1.02"));
    }

    @Test
    void aLogOfAnotherRateGivesTheSameCar() {
        FitResult slow = three(Recorder.at(10).of("10 a second", DRIVEN));
        FitResult fast = three(Recorder.at(100).of("100 a second", DRIVEN));
        for (FitResult.Estimate estimate : slow.estimates()) {
            // At 10 a second a straight line between samples misses an apex by v'' dt²/8, some 0.02 m/s of 20, a
            // thousandth:
            // a fiftieth of what is in doubt.
            double slack = 0.05 * ParameterScale.of(estimate.parameter(), CAR).slope(0);
            assertThat(fast.estimate(estimate.parameter()).value()).isCloseTo(estimate.value(), within(slack));
        }
    }

    @Test
    void theOrderOfLapsDoesNotMatter() {
        DrivenLap first = noisy("first", 4);
        DrivenLap second = noisy("second", 5);
        FitResult one = three(first, second);
        FitResult other = three(second, first);
        for (FitResult.Estimate estimate : one.estimates()) {
            // Sums in another order are rounded otherwise, and a search rests within some hundredths of a standard
            // error.
            double slack = 0.05 * estimate.standardError();
            assertThat(other.estimate(estimate.parameter()).value()).isCloseTo(estimate.value(), within(slack));
            assertThat(other.estimate(estimate.parameter()).standardError())
                    .isCloseTo(estimate.standardError(), within(slack));
        }
    }

    @Test
    void noiseThatHangsTogetherWidensTheIntervals() {
        FitResult white = three(Recorder.at(20).noisy(0.3, 0, new Random(6)).of("white", DRIVEN));
        FitResult red = three(Recorder.at(20).noisy(0.3, 40, new Random(6)).of("red", DRIVEN));
        for (FitResult.Estimate estimate : white.estimates()) {
            // What hangs together tells less; how much less depends on how long each parameter's sensitivity lasts.
            assertThat(red.estimate(estimate.parameter()).standardError()).isGreaterThan(estimate.standardError());
        }
    }

    /** Drives the stretch from a place for a way, m, in traffic: so much slower, m/s. */
    private static DrivenLap inTraffic(DrivenLap lap, double from, double way, double slower) {
        double[] distance = lap.distance();
        double[] speed = lap.speed();
        for (int i = 0; i < speed.length; i++) {
            if (distance[i] > from && distance[i] < from + way) {
                speed[i] -= slower;
            }
        }
        return DrivenLap.of("in traffic", distance, speed);
    }

    @Test
    void aStretchInTrafficIsLeftOut() {
        DrivenLap clear = noisy("clear", 7);
        FitResult result = three(inTraffic(clear, 600, 300, 8));
        FitResult without = three(DrivenLap.of("clear", clear.distance(), clear.speed()));
        for (FitResult.Estimate estimate : result.estimates()) {
            // What is lost is six parts in a hundred of the data: well within the interval.
            FitResult.Estimate before = without.estimate(estimate.parameter());
            assertThat(estimate.value()).isCloseTo(before.value(), within(before.upper() - before.lower()));
        }
        // 300 m of 5185 m, less a cell at each end.
        assertThat(result.laps().get(0).dropped()).isCloseTo(300 / LONG.length(), within(0.01));
        double[] weight = result.agreement().trace().weight();
        assertThat(weight[(int) (750 / result.agreement().residuals().cell())]).isZero();
    }

    @Test
    void aLiftOnTheStraightIsFoundByTheThrottleAndLeftOutToTheBrakes() {
        DrivenLap lap = noisy("lap", 8);
        double[] distance = lap.distance();
        double[] throttle = lap.throttle();
        double[] speed = lap.speed();
        for (int i = 0; i < speed.length; i++) {
            if (distance[i] > 300 && distance[i] < 380) {
                throttle[i] = 0;
                speed[i] -= 0.5 * (distance[i] - 300) / 80;
            } else if (distance[i] >= 380 && distance[i] < 700) {
                speed[i] -= 0.5;
            }
        }
        double[] none = {};
        DrivenLap lifted = new DrivenLap("lifted", distance, speed, none, throttle, none, none, none, none);
        FitResult result = three(lifted);
        double[] weight = result.agreement().trace().weight();
        assertThat(weight[(int) (290 / result.agreement().residuals().cell())]).isPositive();
        for (double place : new double[] {310, 500, 700}) {
            assertThat(weight[(int) (place / result.agreement().residuals().cell())])
                    .as("at " + place)
                    .isZero();
        }
        assertThat(result.laps().get(0).lifted()).isGreaterThan(0.05);
        assertThat(result.notes()).anyMatch(note -> note.contains("had lifted"));
    }

    @Test
    void gearsThatAreNotTheCarsAreReported() {
        DrivenLap lap = noisy("lap", 9);
        double[] gear = lap.gear();
        for (int i = 0; i < gear.length; i++) {
            gear[i]++;
        }
        double[] none = {};
        DrivenLap wrong = new DrivenLap("wrong", lap.distance(), lap.speed(), none, none, none, gear, none, none);
        FitResult result = three(lap, wrong);
        // Cells at the shifts apart, which lie a sample early or late.
        assertThat(result.laps().get(0).gearAgreement()).isGreaterThan(0.95);
        assertThat(result.laps().get(1).gearAgreement()).isLessThan(0.05);
        assertThat(result.notes()).anyMatch(note -> note.startsWith("wrong: its gear"));
    }

    @Test
    void cornersAndStraightsAddUpToTheLap() {
        FitResult result = fit(noisy("lap", 10));
        double logged = 0;
        double fitted = 0;
        double way = 0;
        for (FitResult.Part part : result.agreement().parts()) {
            logged += part.logged().time();
            fitted += part.fitted().time();
            way += part.end() > part.start() ? part.end() - part.start() : part.end() + LONG.length() - part.start();
        }
        assertThat(way).isCloseTo(LONG.length(), within(1e-6));
        // Time by mean speeds of 5 m cells: short by the variance of speed within a cell, 1e-4 in the brakes.
        assertThat(fitted).isCloseTo(result.after().time(), within(1e-4 * fitted));
        // The noise of the mean besides: see theFittedCarDrivesTheLoggedTime.
        assertThat(logged).isCloseTo(result.loggedTime(), within(0.05));
        assertThat(result.agreement().parts().stream().filter(FitResult.Part::isCorner))
                .hasSize(result.after().stations().corners().size());
    }

    @Test
    void aSlowerCornerShowsAsTimeLostThere() {
        DrivenLap lap = noisy("lap", 11);
        FitResult before = three(lap);
        FitResult.Part corner = before.agreement().parts().stream()
                .filter(part -> part.isCorner() && part.start() > 2000)
                .findFirst()
                .orElseThrow();
        double way = corner.end() - corner.start();
        FitResult result = three(inTraffic(lap, corner.start(), way, 3));
        FitResult.Part slow = result.agreement().parts().stream()
                .filter(part -> part.corner().equals(corner.corner()))
                .findFirst()
                .orElseThrow();
        double expected =
                way / (corner.logged().time() > 0 ? way / corner.logged().time() - 3 : 1)
                        - corner.logged().time();
        // Speed varies in the corner, so the mean of 1/v is not 1 over the mean: a tenth of the loss.
        assertThat(slow.difference() - corner.difference()).isCloseTo(expected, within(0.15 * expected));
    }

    @Test
    void theTraceHoldsTheModelsMeanSpeedsAndTheLogs() {
        FitResult result = fit(Recorder.at(50).of("exact", DRIVEN));
        FitResult.Trace trace = result.agreement().trace();
        double[] logged = trace.logged();
        double[] distance = trace.distance();
        for (int c = 0; c < trace.count(); c += 37) {
            double s = distance[c];
            // Mean over 5 m against the middle: at a kink of 2 · 15 m/s² over 20 m/s, 1.5 (m/s)/m, a quarter of 2.5 m
            // of it; and
            // half a decimetre of offset.
            assertThat(logged[c]).as("at %s m", s).isCloseTo(DRIVEN.speedAt(s), within(1.0));
        }
    }

    @Test
    void accelerationIsComparedWithTheFittedCars() {
        FitResult result = three(noisy("lap", 12));
        double[] brakes = DRIVEN.column(Channel.BRAKE_FORCE);
        assertThat(brakes).isNotEmpty();
        // Cells at the changes from drive to brakes hold some of both: 12 corners of 20 m/s² over one cell in a
        // thousand.
        assertThat(result.laps().get(0).accelerationRms()).isBetween(0.0, 20 * Math.sqrt(12 / 1000.0));
        assertThat(DRIVEN.limitShares()).containsKey(Limit.BRAKES);
    }

    @Test
    void estimatesStandInTheOrderOfTheParametersWithTheirCorrelation() {
        FitResult result = three(noisy("lap", 13));
        assertThat(result.estimates().stream().map(FitResult.Estimate::parameter))
                .containsExactly(FitParameter.GRIP, FitParameter.DRAG_AREA, FitParameter.POWER);
        double[][] correlation = result.doubts().correlation();
        for (int i = 0; i < 3; i++) {
            assertThat(correlation[i][i]).isEqualTo(1);
            for (int j = 0; j < i; j++) {
                assertThat(correlation[i][j])
                        .isEqualTo(correlation[j][i], within(1e-9))
                        .isBetween(-1.0, 1.0);
            }
        }
        // More power and more drag leave the top speed: they rise together.
        assertThat(correlation[1][2]).isPositive();
    }
}
