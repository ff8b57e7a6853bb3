package dev.lapwright.track.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;

/** Logs of a car that drives an ellipse of 150 m by 100 m, whose curvature is known in closed form. */
class LoggedLapImportTest {
    private static final double A = 150;
    private static final double B = 100;
    private static final int COUNT = 800;

    private static double pace(double t) {
        return Math.hypot(A * Math.sin(t), B * Math.cos(t));
    }

    /** Speed of a car that slows for the ends of the ellipse, m/s. */
    private static double speed(double t) {
        return 25 - 5 * Math.cos(2 * t);
    }

    /** A log of one round, its lateral acceleration made faulty. */
    private static LoggedLap log(DoubleUnaryOperator fault) {
        return log(COUNT, fault);
    }

    private static LoggedLap log(int samples, DoubleUnaryOperator fault) {
        IterativeLegendreGaussIntegrator integral = new IterativeLegendreGaussIntegrator(5, 1e-12, 1e-12);
        double[] s = new double[samples];
        double[] v = new double[samples];
        double[] a = new double[samples];
        for (int i = 0; i < samples; i++) {
            double t = 2 * Math.PI * i / COUNT;
            s[i] = i == 0
                    ? 0
                    : s[i - 1] + integral.integrate(1000, LoggedLapImportTest::pace, t - 2 * Math.PI / COUNT, t);
            v[i] = speed(t);
            a[i] = fault.applyAsDouble(v[i] * v[i] * A * B / Math.pow(pace(t), 3));
        }
        return new LoggedLap(s, v, a);
    }

    private static ImportedTrack imported(LoggedLap log) {
        return LoggedLapImport.of("log", log, ImportChoices.circuit());
    }

    private static void refuses(LoggedLap log, String problem) {
        assertThatThrownBy(() -> imported(log))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining(problem);
    }

    /**
     * Radii b²/a = 66.667 m and a²/b = 225 m; perimeter 793.272 m (elliptic integral). The last step of the log is not in it
     * and is taken as long as the mean one, here 0.99 m for 0.79 m: so much the length errs, and 3e-4 of it the curvature.
     */
    @Test
    void aLogOfAnEllipseGivesItsPerimeterAndRadii() {
        ImportedTrack found = imported(log(a -> a));
        assertThat(found.track().length()).isCloseTo(793.272, within(0.4));
        assertThat(found.report().shape().smallestRadius()).isCloseTo(66.667, within(1e-3 * 66.667));
        assertThat(1
                        / found.track().points().stream()
                                .mapToDouble(TrackPoint::curvature)
                                .min()
                                .orElseThrow())
                .isCloseTo(225, within(3e-3 * 225));
        assertThat(found.report().warnings()).isEmpty();
    }

    @Test
    void theLoopClosesAndTurnsByOneRound() {
        ImportedTrack found = imported(log(a -> 1.03 * a + 0.1));
        assertThat(found.report().shape().totalTurning()).isCloseTo(2 * Math.PI, within(1e-9));
        assertThat(found.track().requireClosed(0.2)).isSameAs(found.track());
    }

    /** A gain of 5 % turns by 5 % of a round too much: 18°. The steps of 2.5 m leave 1e-4 of a round. */
    @Test
    void theHeadingErrorOfASensorThatReadsTooMuchIsSaid() {
        ImportReport.LogReport report = imported(log(a -> 1.05 * a)).report().log();
        assertThat(Math.toDegrees(report.headingError())).isCloseTo(18, within(0.3));
        assertThat(report.largestCurvatureChange()).isGreaterThan(0);
    }

    /** Spreading the error of the gain evenly leaves an ellipse's two ends alike, so that it closes by symmetry. */
    @Test
    void aSymmetricErrorLeavesNoGap() {
        // The mean last step breaks the symmetry by 0.2 m.
        assertThat(imported(log(a -> 1.05 * a)).report().log().positionGap()).isLessThan(0.5);
    }

    @Test
    void aOneSidedErrorLeavesAGapThatIsSaidAndClosed() {
        LoggedLap log = log(a -> a);
        double[] a = log.lateralAcceleration();
        for (int i = 0; i < COUNT / 2; i++) {
            a[i] *= 1.06;
        }
        ImportedTrack found = imported(new LoggedLap(log.distance(), log.speed(), a));
        // Half a round, 400 m long and 300 m across, turned by 3 % of it: of the order of 0.03 π · 300 m = 28 m, halved
        // again by the spreading.
        assertThat(found.report().log().positionGap()).isBetween(3.0, 28.0);
        assertThat(found.track().requireClosed(0.2)).isSameAs(found.track());
    }

    @Test
    void timesServeInsteadOfDistances() {
        LoggedLap log = log(a -> a);
        double[] time = new double[COUNT];
        double[] s = log.distance();
        double[] v = log.speed();
        for (int i = 1; i < COUNT; i++) {
            // The time of a step whose speed changes evenly with time.
            time[i] = time[i - 1] + 2 * (s[i] - s[i - 1]) / (v[i - 1] + v[i]);
        }
        double[] again = LoggedLap.distances(time, v);
        // The trapezoidal rule undoes the same rule; rounding is left.
        assertThat(again[COUNT - 1]).isCloseTo(s[COUNT - 1], within(1e-9));
    }

    /**
     * Errors of 0.5 m/s² every metre. The uncertainty is known from 10 logs, each with about 793 m / (wave/2) independent
     * values of the order of 20: 200 in all, to 1/sqrt(400) = 5 %; four times that, and as much because closing the loop takes
     * three of the numbers of each log away.
     */
    @Test
    void curvatureIsAsUncertainAsTheReportSays() {
        Track truth = imported(log(a -> a)).track();
        double squares = 0;
        double predicted = 0;
        int count = 0;
        for (int seed = 0; seed < 10; seed++) {
            Random random = new Random(seed);
            ImportedTrack found = LoggedLapImport.of(
                    "log",
                    log(a -> a + 0.5 * random.nextGaussian()),
                    ImportChoices.circuit().withSmoothing(60));
            assertThat(found.report().log().accelerationNoise()).isCloseTo(0.5, within(0.06));
            predicted += Math.pow(found.report().smoothing().curvatureUncertainty(), 2);
            for (int i = 0; i < 300; i++) {
                double s = i * truth.length() / 300;
                double scale = found.track().length() / truth.length();
                squares += Math.pow(
                        found.track().pointAt(s * scale).curvature()
                                - truth.pointAt(s).curvature(),
                        2);
                count++;
            }
        }
        double deviation = Math.sqrt(squares / count);
        double said = Math.sqrt(predicted / 10);
        assertThat(deviation).isCloseTo(said, within(0.4 * said));
    }

    @Test
    void standingSamplesAreLeftOutAndCounted() {
        LoggedLap log = log(a -> a);
        int standing = 50;
        double[] s = new double[COUNT + standing];
        double[] v = new double[COUNT + standing];
        double[] a = new double[COUNT + standing];
        System.arraycopy(log.distance(), 0, s, standing, COUNT);
        System.arraycopy(log.speed(), 0, v, standing, COUNT);
        System.arraycopy(log.lateralAcceleration(), 0, a, standing, COUNT);
        ImportedTrack found = imported(new LoggedLap(s, v, a));
        assertThat(found.report().log().slow()).isEqualTo(standing);
        assertThat(found.report().shape().smallestRadius()).isCloseTo(66.667, within(1e-3 * 66.667));
    }

    /**
     * The ellipse turns one way, so its closing tells b and g together and the priors share it out: 0.2 m/s² turns a lap by b ∫ds/v² = 0.2 · 1.3, 2 %
     * by 0.02 · 2π. Of what a scale of 2 % turns too far, 0.126 rad, the scale takes 0.126²/(0.126² + 0.26²) = 0.19, and told to a third.
     */
    @Test
    void whatTheLoggerAddsAndItsScaleAreSharedOutByWhatLoggersUsuallyHave() {
        ImportReport.MotionReport told = imported(log(a -> 1.02 * a)).report().motion();
        assertThat(told.scale()).isCloseTo(0.19 * 0.02, within(0.33 * 0.19 * 0.02));
        assertThat(told.bias()).isGreaterThan(0);
    }

    /** Two samples in 800 on which the car hit a kerb, 25 m/s² off. */
    @Test
    void knocksAreLeftOutOfALog() {
        int[] sample = {0};
        Random random = new Random(4);
        ImportReport.MotionReport told = imported(
                        log(a -> a + 0.3 * random.nextGaussian() + (sample[0]++ % 400 == 200 ? 25 : 0)))
                .report()
                .motion();
        assertThat(told.samples() - told.used()).isBetween(2, 4);
        assertThat(told.accelerationNoise()).isCloseTo(0.3, within(0.05));
    }

    /** The truth lies within three of the deviations that the import tells, at all but a few of 100 places; they are far below 1/66 m. */
    @Test
    void aLogHasABandOfCurvature() {
        Random random = new Random(5);
        ImportedTrack found = imported(log(a -> a + 0.4 * random.nextGaussian()));
        Track truth = imported(log(a -> a)).track();
        int beyond = 0;
        for (int i = 0; i < 100; i++) {
            double s = i * found.track().length() / 100;
            double known = found.track().curvatureDeviationAt(s);
            double miss = found.track().pointAt(s).curvature()
                    - truth.pointAt(i * truth.length() / 100).curvature();
            beyond += Math.abs(miss) > 3 * known ? 1 : 0;
            assertThat(known).isLessThan(0.1 / 66);
        }
        assertThat(beyond).isLessThan(5);
        assertThat(found.band().draws()).isPositive();
        assertThat(found.band().drawn(0).stations(StationSpacing.DEFAULT).planeGap())
                .isLessThan(3);
    }

    @Test
    void mirroredTheLapTurnsRight() {
        ImportedTrack found = imported(log(a -> a).mirrored());
        assertThat(found.report().shape().totalTurning()).isCloseTo(-2 * Math.PI, within(1e-9));
    }

    @Test
    void halfALapIsRefused() {
        // Half an ellipse ends 300 m from its start, but it turns by 180° first.
        refuses(log(COUNT / 2, a -> a), "the lap turns by 180° in all, where one round turns by 360°");
    }

    @Test
    void twoLapsAreRefused() {
        refuses(log(2 * COUNT, a -> a), "the lap turns by 720° in all");
    }

    @Test
    void accelerationInGIsRefusedWithTheReason() {
        refuses(log(a -> a / 9.80665), "look like g; put the unit in the heading");
    }

    @Test
    void speedsInKilometresPerHourAreRefusedWithTheReason() {
        LoggedLap log = log(a -> a);
        double[] v = log.speed();
        for (int i = 0; i < v.length; i++) {
            v[i] *= 3.6 * 1.5;
        }
        refuses(new LoggedLap(log.distance(), v, log.lateralAcceleration()), "look like km/h or mph");
    }

    @Test
    void slowSpeedsInKilometresPerHourBetrayThemselvesByTheTurning() {
        LoggedLap log = log(a -> a);
        double[] v = log.speed();
        for (int i = 0; i < v.length; i++) {
            v[i] *= 3.6;
        }
        // Curvature is a/v², so that a round turns by 360°/3.6² = 28°.
        refuses(
                new LoggedLap(log.distance(), v, log.lateralAcceleration()),
                "turns by 28° in all, where one round turns by 360°; speeds look like km/h");
    }

    @Test
    void aLogOfACarThatStandsIsRefused() {
        refuses(new LoggedLap(new double[100], new double[100], new double[100]), "0 samples faster than 5 m/s");
    }

    @Test
    void anUnlikeEndIsSaid() {
        LoggedLap log = log(a -> a);
        double[] v = log.speed();
        double[] a = log.lateralAcceleration();
        for (int i = 0; i < 40; i++) {
            double slower = 0.5 + 0.5 * i / 40;
            v[i] *= slower;
            a[i] *= slower * slower;
        }
        assertThat(imported(new LoggedLap(log.distance(), v, a)).report().warnings())
                .anyMatch(w -> w.contains("not one flying lap"));
    }

    @Test
    void whatIsNoNumberIsRefusedWithItsSample() {
        assertThatThrownBy(() -> new LoggedLap(new double[] {0, Double.NaN}, new double[2], new double[2]))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("sample 2: distance (m)");
        assertThatThrownBy(() -> LoggedLap.distances(new double[] {0, 1, 0.5}, new double[3]))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("sample 3: time (s)");
    }
}
