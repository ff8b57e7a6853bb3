package dev.lapwright.track.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleBiFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Positions fused with speed and lateral acceleration, and laps pooled, of a known circuit: two straights of 300 m and two turns of 180°
 * with a radius of 40 m, each with transitions of 50 m, driven at 20 m/s with ten samples a second. Errors of logger and receiver are
 * those of {@code harrowmere-logger.csv} and {@code harrowmere-receiver.gpx}.
 */
class FusedLogTest {
    private static final double RADIUS = 40;
    private static final double TRANSITION = 50;
    private static final double STRAIGHT = 300;
    private static final double ARC = Math.PI * RADIUS - TRANSITION;
    private static final double HALF = STRAIGHT + 2 * TRANSITION + ARC;
    private static final double APEX = STRAIGHT + TRANSITION + ARC / 2;

    private static final double SPEED = 20;
    private static final double STEP = 2;
    /** m/s². */
    private static final double NOISE = 0.4;

    private static final double BIAS = 0.2;
    private static final double SCALE = 0.015;
    private static final Track CIRCUIT = RoadFitTest.circuit(STRAIGHT);

    /** A lap whose acceleration is what a logger makes of the true one. */
    private static List<SurveyPoint> lap(long seed, ToDoubleBiFunction<Double, Random> logger) {
        Stations stations = CIRCUIT.stations(StationSpacing.DEFAULT);
        Random random = new Random(seed);
        int count = (int) (2 * HALF / STEP);
        double kept = Math.exp(-STEP / 100);
        double[] wander = {0.5 * random.nextGaussian(), 0.5 * random.nextGaussian()};
        List<SurveyPoint> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double s = i * 2 * HALF / count;
            Stations.Place place = stations.placeAt(s);
            for (int k = 0; k < 2; k++) {
                wander[k] = kept * wander[k] + 0.5 * Math.sqrt(1 - kept * kept) * random.nextGaussian();
            }
            double a = SPEED * SPEED * CIRCUIT.pointAt(s).curvature();
            points.add(SurveyPoint.plan(
                            place.x() + wander[0] + 0.15 * random.nextGaussian(),
                            place.y() + wander[1] + 0.15 * random.nextGaussian())
                    .moving(new SurveyPoint.Motion(s, SPEED, logger.applyAsDouble(a, random))));
        }
        return points;
    }

    private static double faulty(double a, Random random) {
        return BIAS + (1 + SCALE) * a + NOISE * random.nextGaussian();
    }

    private static ImportedTrack imported(Survey survey) {
        return SurveyImport.of("driven", survey, ImportChoices.circuit());
    }

    private static final Map<Long, ImportedTrack> FUSED = new ConcurrentHashMap<>();
    private static final Map<Long, ImportedTrack> ALONE = new ConcurrentHashMap<>();

    /** Found once for all facts. */
    private static ImportedTrack fused(long seed) {
        return FUSED.computeIfAbsent(seed, one -> imported(Shapes.plan(lap(one, FusedLogTest::faulty))));
    }

    private static ImportedTrack alone(long seed) {
        return ALONE.computeIfAbsent(seed, one -> imported(Shapes.plan(positions(lap(one, FusedLogTest::faulty)))));
    }

    private static List<SurveyPoint> positions(List<SurveyPoint> points) {
        return points.stream().map(p -> p.moving(null)).toList();
    }

    private static double doubt(ImportedTrack found) {
        return Arrays.stream(found.band().deviation()).average().orElseThrow();
    }

    private static double curvatureAt(ImportedTrack found, double share) {
        return found.track().pointAt(share * found.track().length()).curvature();
    }

    /**
     * Tolerances are four standard deviations, told by the law of large numbers: of the mean of so many samples, and of a slope on
     * accelerations of 10 m/s² in half of them. A sixth of the noise is what is allowed for its own estimate.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void findsTheLoggersConstantItsScaleAndItsNoise(long seed) {
        ImportReport.MotionReport told = fused(seed).report().motion();
        int samples = (int) (2 * HALF / STEP);
        double mean = NOISE / Math.sqrt(samples);
        assertThat(told.samples()).isEqualTo(samples);
        assertThat(told.bias()).isCloseTo(BIAS, within(6 * mean));
        assertThat(told.scale()).isCloseTo(SCALE, within(4 * mean / 10 * Math.sqrt(2) + 0.01));
        assertThat(told.accelerationNoise()).isCloseTo(NOISE, within(NOISE / 6));
    }

    /** Accelerations of 0.4 m/s² at 20 m/s tell curvature to 0.001 1/m each, a receiver that wanders by half a metre far less. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void tellsTheCurvatureBetterThanPositionsDo(long seed) {
        ImportedTrack fused = fused(seed);
        assertThat(doubt(fused)).isLessThan(0.6 * doubt(alone(seed)));
        assertThat(curvatureAt(fused, APEX / (2 * HALF))).isCloseTo(1 / RADIUS, within(0.04 / RADIUS));
        assertThat(fused.track().stations(StationSpacing.DEFAULT).corners()).hasSize(2);
    }

    @Test
    void aLoggerThatCountsRightTurnsAsPositiveIsFoundOut() {
        ImportedTrack right = imported(Shapes.plan(lap(1, (a, random) -> -faulty(a, random))));
        assertThat(right.report().warnings()).anyMatch(w -> w.contains("counts a right turn's"));
        assertThat(right.track().points()).isEqualTo(fused(1).track().points());
    }

    @Test
    void accelerationsOfAnotherRoadAreLeftAside() {
        List<SurveyPoint> lap = lap(1, (a, random) -> 5 * random.nextGaussian());
        ImportedTrack found = imported(Shapes.plan(lap));
        assertThat(found.report().motion()).isNull();
        assertThat(found.report().warnings()).anyMatch(w -> w.contains("does not go with the positions"));
        assertThat(found.track().points()).isEqualTo(alone(1).track().points());
    }

    /** Three knocks of 2.5 g; five deviations of a normal error happen once in two million. */
    @Test
    void knocksAreLeftOut() {
        int[] sample = {0};
        List<SurveyPoint> lap = lap(1, (a, random) -> faulty(a, random) + (sample[0]++ % 150 == 100 ? 25 : 0));
        ImportReport.MotionReport told = imported(Shapes.plan(lap)).report().motion();
        assertThat(told.samples() - told.used()).isEqualTo(3);
        assertThat(told.bias()).isCloseTo(BIAS, within(0.15));
    }

    @Test
    void unitsTakenForOthersShowInTheScale() {
        ImportedTrack found = imported(Shapes.plan(lap(1, (a, random) -> faulty(a, random) / 9.80665)));
        assertThat(found.report().motion().scale()).isCloseTo(1.015 / 9.80665 - 1, within(0.02));
        assertThat(found.report().warnings()).anyMatch(w -> w.contains("check the units of speed and acceleration"));
    }

    /** The line driven backwards: its curvature has the other sign, and so has the logger's constant. */
    @Test
    void aReversedLogTurnsItsAccelerationsAbout() {
        ImportedTrack found = SurveyImport.of(
                "driven",
                Shapes.plan(lap(1, FusedLogTest::faulty)),
                ImportChoices.circuit().backwards());
        assertThat(found.report().motion().bias()).isCloseTo(-BIAS, within(0.15));
        assertThat(curvatureAt(found, 1 - APEX / (2 * HALF))).isCloseTo(-1 / RADIUS, within(0.04 / RADIUS));
    }

    /** Independent errors of three laps fall by the root of three: to 0.58; they are drawn, and the road is smoothed less. */
    @Test
    void lapsPooledComeNearerToTheTruth() {
        double alone = 0;
        double pooled = 0;
        for (long seed : new long[] {10, 20}) {
            List<SurveyPoint> first = positions(lap(seed, FusedLogTest::faulty));
            List<List<SurveyPoint>> others = List.of(
                    positions(lap(seed + 1, FusedLogTest::faulty)), positions(lap(seed + 2, FusedLogTest::faulty)));
            ImportedTrack three = imported(new Survey(first, false, false, others));
            assertThat(three.report().laps()).isEqualTo(3);
            assertThat(three.report().pointsUsed()).isEqualTo(3 * first.size());
            assertThat(three.track().stations(StationSpacing.DEFAULT).corners()).hasSize(2);
            alone += squares(imported(Shapes.plan(first)));
            pooled += squares(three);
        }
        assertThat(Math.sqrt(pooled / alone)).isLessThan(0.85);
    }

    /** Mean square of the curvature's error, 1/m². */
    private static double squares(ImportedTrack found) {
        double sum = 0;
        for (int i = 0; i < 400; i++) {
            sum += Math.pow(
                            curvatureAt(found, i / 400.0)
                                    - CIRCUIT.pointAt(i / 400.0 * 2 * HALF).curvature(),
                            2)
                    / 400;
        }
        return sum;
    }

    /** A lap that took a way 40 m beside a straight for 60 m. */
    @Test
    void aLapThatWentAnotherWayIsNotPooled() {
        List<SurveyPoint> first = positions(lap(1, FusedLogTest::faulty));
        List<SurveyPoint> other = new ArrayList<>(positions(lap(2, FusedLogTest::faulty)));
        for (int i = 50; i < 80; i++) {
            SurveyPoint p = other.get(i);
            other.set(i, SurveyPoint.plan(p.x() - 40, p.y() - 40));
        }
        ImportedTrack found = imported(new Survey(first, false, false, List.of(other)));
        assertThat(found.report().laps()).isEqualTo(1);
        assertThat(found.track().points()).isEqualTo(alone(1).track().points());
    }
}
