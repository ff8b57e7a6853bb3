package dev.lapwright.fit;

import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;

/**
 * Reading of steering angle and yaw rate of the first run's laps, which the fit of speeds does not use.
 *
 * <p>Yaw rate over speed is the curvature of the way driven, in steady turns. A closed lap turns by the circuit's own sum of angles, which
 * tells the sensor's scale; its zero is what it reads where the circuit is straight. The curvature at the apexes, over the circuit's, so
 * tells the radius driven.
 *
 * <p>The front wheels' angle is L κ + K aᵧ where tyres are linear (Gillespie, Fundamentals of Vehicle Dynamics, chapter 6): a regression over
 * gentle bends finds steering ratio, K and the sensor's zero. Steer beyond that at the limit is the front tyres' further slip less the
 * rear's: more means that the front is nearer its peak, less that the rear is. Its sign is taken as a {@link LimitWord}.
 */
final class SteeringReading {
    /** Of the greatest lateral acceleration: up to there tyres are taken for linear. */
    private static final double GENTLE = 0.5;
    /** Half a stretch about an apex that is read, m. */
    private static final double NEAR = 12;
    /** Below this curvature, 1/m, a circuit is straight. */
    private static final double STRAIGHT = 2e-4;
    /** Use of an axle from which a corner is driven at the limit. */
    private static final double LIMIT = 0.97;

    private static final int LEAST_CORNERS = 4;
    private static final int LEAST_CELLS = 20;
    /** Standard errors from which a sign is told. */
    private static final double SURE = 2;
    /** What the sign is worth as a word, of an axle's grip: ours, less than a driver's 0.03. */
    private static final double ERROR = 0.02;
    /** No yaw sensor tells a radius better, percent: ours. */
    private static final double LEAST_RADIUS_ERROR = 0.5;

    /** A circuit in the shape of an eight turns by nothing, which tells no scale; rad. */
    private static final double LEAST_TURN = 3;

    private static final double MOST_SCALE = 1.5;
    /** Of steering sensor to front wheels. */
    private static final double LEAST_RATIO = 0.5;

    private static final double PERCENT = 100;

    private final RobustFit search;
    private final Lap fitted;
    private final int laps;
    private final double[] trackCurvature;
    private final double[] utilisation;
    private final List<Corner> corners;
    private final int count;
    private final double cell;

    /** @param fitted lap of the first run */
    SteeringReading(RobustFit search, Lap fitted) {
        this.search = search;
        this.fitted = fitted;
        laps = search.model().runs().get(0).laps().size();
        count = search.lap(0).count;
        cell = search.lap(0).trackLength / count;
        corners = fitted.stations().corners();
        trackCurvature = new double[count];
        utilisation = new double[count];
        double[] s = fitted.column(Channel.DISTANCE);
        for (int c = 0; c < count; c++) {
            double place = (c + 0.5) * cell;
            trackCurvature[c] = fitted.track().pointAt(place).curvature();
            int at = SpeedCurve.station(s, place, fitted.track().isClosed());
            utilisation[c] =
                    Math.max(fitted.value(Channel.UTILISATION_FRONT, at), fitted.value(Channel.UTILISATION_REAR, at));
        }
    }

    /**
     * Radius driven over the circuit's at the apexes, percent more.
     *
     * @param percent mean over the corners
     * @param error its standard error
     */
    record Radius(double percent, double error) {}

    /** The radius driven by the laps' yaw rates; empty where they were not logged, or the track is no circuit. */
    Optional<Radius> radius() {
        double[] curvature = drivenCurvature();
        if (curvature.length == 0 || !fitted.track().isClosed()) {
            return Optional.empty();
        }
        List<Double> radii = new ArrayList<>();
        for (Corner corner : corners) {
            double driven = 0;
            double own = 0;
            for (int c : near(corner)) {
                driven += curvature[c];
                own += trackCurvature[c];
            }
            if (driven * own > 0) {
                radii.add(PERCENT * (own / driven - 1));
            }
        }
        if (radii.size() < LEAST_CORNERS) {
            return Optional.empty();
        }
        Mean mean = Mean.of(radii);
        return Optional.of(new Radius(mean.value(), Math.hypot(mean.error(), LEAST_RADIUS_ERROR)));
    }

    /** Which axle gives up first by the steering angle; empty where it was not logged, or does not tell. */
    Optional<LimitWord> word() {
        double[] angle = mean(lap -> lap.steering().angle());
        if (angle.length == 0) {
            return Optional.empty();
        }
        double[] measured = drivenCurvature();
        double[] curvature = measured.length == 0 ? trackCurvature : measured;
        double[] speed = mean(DrivenLap::speed);
        double[] lateral = new double[count];
        double most = 0;
        for (int c = 0; c < count; c++) {
            double v = speed[c] / search.gain();
            lateral[c] = v * v * curvature[c];
            most = Math.max(most, Math.abs(lateral[c]));
        }
        double[] linear = linear(angle, curvature, lateral, GENTLE * most);
        double wheelbase = search.model().runs().get(0).car().value(Quantity.WHEELBASE);
        // Steered less than its wheels must be, the sensor stands still or its units are others.
        if (linear.length == 0 || Math.abs(linear[1]) < LEAST_RATIO * wheelbase) {
            return Optional.empty();
        }
        List<Double> beyond = new ArrayList<>();
        for (Corner corner : corners) {
            double sum = 0;
            int n = 0;
            for (int c : near(corner)) {
                if (utilisation[c] >= LIMIT) {
                    double expected = linear[0] + linear[1] * curvature[c] + linear[2] * lateral[c];
                    sum += Math.signum(curvature[c] * linear[1]) * (angle[c] - expected);
                    n++;
                }
            }
            if (n > 0) {
                beyond.add(sum / n);
            }
        }
        if (beyond.size() < LEAST_CORNERS) {
            return Optional.empty();
        }
        Mean mean = Mean.of(beyond);
        if (Math.abs(mean.value()) < SURE * mean.error()) {
            return Optional.empty();
        }
        LimitWord.End end = mean.value() > 0 ? LimitWord.End.FRONT : LimitWord.End.REAR;
        return Optional.of(new LimitWord("", end, ERROR));
    }

    /** Zero, change with curvature and change with lateral acceleration of the steering angle in gentle bends; empty if they do not tell. */
    private static double[] linear(double[] angle, double[] curvature, double[] lateral, double gentle) {
        List<Integer> cells = new ArrayList<>();
        for (int c = 0; c < angle.length; c++) {
            if (Math.abs(lateral[c]) < gentle) {
                cells.add(c);
            }
        }
        if (cells.size() < LEAST_CELLS) {
            return new double[0];
        }
        double[] y = new double[cells.size()];
        double[][] x = new double[cells.size()][];
        for (int i = 0; i < y.length; i++) {
            y[i] = angle[cells.get(i)];
            x[i] = new double[] {curvature[cells.get(i)], lateral[cells.get(i)]};
        }
        OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
        regression.newSampleData(y, x);
        try {
            return regression.estimateRegressionParameters();
        } catch (SingularMatrixException e) {
            // All bends alike, or none: ratio and gradient are not told apart.
            return new double[0];
        }
    }

    /** Curvature by yaw rate over speed, its zero and scale put right; empty if it was not logged. */
    private double[] drivenCurvature() {
        double[] yaw = mean(lap -> lap.steering().yawRate());
        if (yaw.length == 0) {
            return yaw;
        }
        double[] speed = mean(DrivenLap::speed);
        double zero = 0;
        int straight = 0;
        for (int c = 0; c < count; c++) {
            if (Math.abs(trackCurvature[c]) < STRAIGHT) {
                zero += yaw[c];
                straight++;
            }
        }
        zero = straight == 0 ? 0 : zero / straight;
        double driven = 0;
        double own = 0;
        double[] curvature = new double[count];
        for (int c = 0; c < count; c++) {
            curvature[c] = (yaw[c] - zero) / Math.max(speed[c], 1);
            driven += curvature[c];
            own += trackCurvature[c];
        }
        if (fitted.track().isClosed()) {
            // A sensor may have the other sign; one that is off by more reads in other units, or nothing.
            double scale = own / driven;
            boolean closes = Math.abs(own) * cell > LEAST_TURN
                    && Math.abs(scale) > 1 / MOST_SCALE
                    && Math.abs(scale) < MOST_SCALE;
            for (int c = 0; c < count; c++) {
                curvature[c] *= scale;
            }
            return closes ? curvature : new double[0];
        }
        return curvature;
    }

    private List<Integer> near(Corner corner) {
        List<Integer> cells = new ArrayList<>();
        double length = cell * count;
        for (int c = 0; c < count; c++) {
            double away = Math.abs((c + 0.5) * cell - corner.apex());
            if (Math.min(away, length - away) < NEAR) {
                cells.add(c);
            }
        }
        return cells;
    }

    /** A channel of a lap. */
    private interface Reader {
        double[] of(DrivenLap lap);
    }

    /** Mean over the laps of a channel by cell of the track, each lap where the fit laid it; empty if one lap has none. */
    private double[] mean(Reader reader) {
        double[] mean = new double[count];
        for (int k = 0; k < laps; k++) {
            LapCells one = search.lap(k);
            double[] channel = reader.of(one.lap);
            if (channel.length == 0) {
                return channel;
            }
            LapCells.LoggedChannel curve = new LapCells.LoggedChannel(one.lap.distance(), channel);
            double half = 0.5 * cell / one.scaleWith(search.stretch(k));
            for (int c = 0; c < count; c++) {
                double at = one.loggedDistance((c + 0.5) * cell, search.offset(k), search.stretch(k));
                mean[c] += curve.mean(at - half, at + half) / laps;
            }
        }
        return mean;
    }

    /** Mean of values and its standard error. */
    private record Mean(double value, double error) {
        static Mean of(List<Double> values) {
            double mean = values.stream().mapToDouble(v -> v).average().orElse(Double.NaN);
            double squares = 0;
            for (double value : values) {
                squares += (value - mean) * (value - mean);
            }
            int n = values.size();
            return new Mean(mean, Math.sqrt(squares / (n - 1) / n));
        }
    }
}
