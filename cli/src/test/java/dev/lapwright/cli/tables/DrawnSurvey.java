package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.survey.LoggedLap;
import dev.lapwright.track.survey.Survey;
import dev.lapwright.track.survey.SurveyPoint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * Survey or log of a known circuit, drawn with the errors of a kind of source.
 *
 * @param source its kind
 * @param places where its points or samples stand on the circuit, m
 * @param points empty for a log without positions
 * @param others points of more laps
 * @param log null where there is none
 */
record DrawnSurvey(
        Source source, double[] places, List<SurveyPoint> points, List<List<SurveyPoint>> others, LoggedLap log) {
    private static final double GRAVITY = 9.80665;
    /** Faults of a logger's lateral acceleration: constant, m/s², and scale. */
    private static final double BIAS = 0.02 * GRAVITY;

    private static final double SCALE = 1.015;
    private static final double SPEED_ERROR = 0.3 / 3.6;
    /** Receivers in loggers tell a position so often, Hz; faster rows repeat it. */
    private static final double POSITIONS_RATE = 10;

    /** What of a log is used. */
    enum Use {
        POINTS,
        LOG,
        BOTH
    }

    /** Kinds of source: how far apart its points stand, and by how much they err. */
    enum Source {
        SURVEY("survey: every 5 m, 0.05 m", Use.POINTS, 5, 0.05, 0, 0, 0, 0, 1),
        MAP("map: every 8 m, 0.3 m, rounded to 0.1 m", Use.POINTS, 8, 0.3, 0, 0.1, 0, 0, 1),
        RECEIVER("receiver: every 4 m, 0.2 m, and 0.5 m in common over 100 m", Use.POINTS, 4, 0.2, 0.5, 0, 0, 0, 1),
        COARSE("coarse: every 20 m, 1 m", Use.POINTS, 20, 1, 0, 0, 0, 0, 1),
        DRAWN("drawn by hand: every 10 m in bends, 40 m on straights, 0.5 m", Use.POINTS, 0, 0.5, 0, 0, 0, 0, 1),
        LOG_10("10 Hz: speed and lateral acceleration", Use.LOG, 0, 0.15, 0.5, 0, 10, 0.04, 1),
        POINTS_10("10 Hz: positions", Use.POINTS, 0, 0.15, 0.5, 0, 10, 0.04, 1),
        BOTH_10("10 Hz: both", Use.BOTH, 0, 0.15, 0.5, 0, 10, 0.04, 1),
        LOG_100("100 Hz: speed and lateral acceleration", Use.LOG, 0, 0.15, 0.5, 0, 100, 0.12, 1),
        POINTS_100("100 Hz: positions", Use.POINTS, 0, 0.15, 0.5, 0, 100, 0.12, 1),
        BOTH_100("100 Hz: both", Use.BOTH, 0, 0.15, 0.5, 0, 100, 0.12, 1),
        LAPS("10 Hz: positions of three laps", Use.POINTS, 0, 0.15, 0.5, 0, 10, 0.04, 3),
        LAPS_BOTH("10 Hz: both, of three laps", Use.BOTH, 0, 0.15, 0.5, 0, 10, 0.04, 3);

        private static final double COMMON_LENGTH = 100;

        private final String words;
        private final Use use;
        private final double step;
        private final double own;
        private final double common;
        private final double rounded;
        private final double rate;
        private final double acceleration;
        private final int laps;

        Source(
                String words,
                Use use,
                double step,
                double own,
                double common,
                double rounded,
                double rate,
                double acceleration,
                int laps) {
            this.words = words;
            this.use = use;
            this.step = step;
            this.own = own;
            this.common = common;
            this.rounded = rounded;
            this.rate = rate;
            this.acceleration = acceleration;
            this.laps = laps;
        }

        Use use() {
            return use;
        }

        String words() {
            return words;
        }

        /** Variance of the points' own errors, m². */
        double ownVariance() {
            return own * own + rounded * rounded / 12;
        }

        /** Covariance of what two points so far apart (m) err by in common, m². */
        double commonCovariance(double apart) {
            return common == 0 ? 0 : common * common * Math.exp(-apart / COMMON_LENGTH);
        }

        boolean hasCommon() {
            return common > 0;
        }

        /** Standard deviation of the lateral acceleration's own errors, m/s². */
        double accelerationError() {
            return acceleration * GRAVITY;
        }
    }

    /** Draws one; kinds that use parts of one log use the same. */
    static DrawnSurvey of(Track truth, Source source, Car car, long seed) {
        Random random = new Random(seed + (source.rate > 0 ? (long) source.rate : source.ordinal()));
        double[] places = source.rate > 0 ? driven(truth, car, source.rate) : spaced(truth, source, random);
        List<List<SurveyPoint>> laps = new ArrayList<>();
        LoggedLap log = null;
        for (int lap = 0; lap < source.laps; lap++) {
            List<SurveyPoint> points = positions(truth, source, places, random);
            LoggedLap here = source.rate > 0 ? log(truth, source, car, places, random) : null;
            laps.add(source.use == Use.BOTH ? moving(points, here) : points);
            log = lap == 0 ? here : log;
        }
        return new DrawnSurvey(
                source,
                places,
                source.use == Use.LOG ? List.of() : laps.get(0),
                laps.subList(1, laps.size()),
                source.use == Use.POINTS ? null : log);
    }

    private static List<SurveyPoint> positions(Track truth, Source source, double[] places, Random random) {
        Stations stations = truth.stations(StationSpacing.DEFAULT);
        double[] x = wander(places, truth.length(), source, random);
        double[] y = wander(places, truth.length(), source, random);
        List<SurveyPoint> points = new ArrayList<>();
        for (int i = 0; i < places.length; i++) {
            boolean held = source.rate > POSITIONS_RATE && i % (int) (source.rate / POSITIONS_RATE) != 0;
            Stations.Place place = stations.placeAt(places[i]);
            points.add(
                    held
                            ? points.get(i - 1)
                            : SurveyPoint.plan(
                                    rounded(place.x() + x[i] + source.own * random.nextGaussian(), source.rounded),
                                    rounded(place.y() + y[i] + source.own * random.nextGaussian(), source.rounded)));
        }
        return points;
    }

    private static List<SurveyPoint> moving(List<SurveyPoint> points, LoggedLap log) {
        List<SurveyPoint> moving = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            moving.add(points.get(i)
                    .moving(new SurveyPoint.Motion(log.distance()[i], log.speed()[i], log.lateralAcceleration()[i])));
        }
        return moving;
    }

    /** Where positions were told, without those that repeat one, m. */
    double[] toldPlaces() {
        int every = every();
        double[] told = new double[points.isEmpty() ? 0 : (places.length + every - 1) / every];
        for (int i = 0; i < told.length; i++) {
            told[i] = places[i * every];
        }
        return told;
    }

    /** Positions there, the mean of all laps, m. */
    SurveyPoint told(int index) {
        int at = index * every();
        double x = points.get(at).x();
        double y = points.get(at).y();
        for (List<SurveyPoint> lap : others) {
            x += lap.get(at).x();
            y += lap.get(at).y();
        }
        int laps = 1 + others.size();
        return SurveyPoint.plan(x / laps, y / laps);
    }

    /** How many positions each of those is the mean of. */
    int laps() {
        return 1 + others.size();
    }

    private int every() {
        return Math.max(1, (int) (source.rate / POSITIONS_RATE));
    }

    Survey survey() {
        return new Survey(points, false, false, others);
    }

    private static double[] spaced(Track truth, Source source, Random random) {
        double length = truth.length();
        double step = source.step == 0 ? 0 : length / Math.floor(length / source.step);
        double[] places = new double[(int) length];
        int count = 0;
        for (double s = 0; s < length - 5; ) {
            places[count++] = s;
            s += step > 0 ? step : (bends(truth, s) ? 10 : 40) * (0.8 + 0.4 * random.nextDouble());
        }
        return Arrays.copyOf(places, count);
    }

    private static boolean bends(Track truth, double s) {
        boolean bends = false;
        for (double ahead = 0; ahead <= 25; ahead += 5) {
            bends |= Math.abs(truth.pointAt((s + ahead) % truth.length()).curvature()) > 1.0 / 300;
        }
        return bends;
    }

    private static double rounded(double value, double to) {
        return to > 0 ? Math.rint(value / to) * to : value;
    }

    /** An Ornstein and Uhlenbeck process, its end brought to its start. */
    private static double[] wander(double[] places, double whole, Source source, Random random) {
        int n = places.length;
        double[] w = new double[n + 1];
        w[0] = source.common * random.nextGaussian();
        for (int i = 1; i <= n; i++) {
            double kept = Math.exp(-((i < n ? places[i] : whole) - places[i - 1]) / Source.COMMON_LENGTH);
            w[i] = kept * w[i - 1] + source.common * Math.sqrt(1 - kept * kept) * random.nextGaussian();
        }
        double gap = w[n] - w[0];
        for (int i = 0; i < n; i++) {
            w[i] -= gap * places[i] / whole;
        }
        return Arrays.copyOf(w, n);
    }

    /** Where a car is at even steps of time. */
    private static double[] driven(Track truth, Car car, double rate) {
        Lap lap = LapSolver.on(truth).solve(Vehicle.of(car, Conditions.STANDARD));
        double[] t = lap.column(Channel.TIME);
        double[] s = lap.column(Channel.DISTANCE);
        int count = (int) Math.ceil(lap.time() * rate - 0.5);
        double[] places = new double[count];
        for (int i = 0; i < count; i++) {
            places[i] = at(t, s, i / rate);
        }
        return places;
    }

    private static LoggedLap log(Track truth, Source source, Car car, double[] places, Random random) {
        Lap lap = LapSolver.on(truth).solve(Vehicle.of(car, Conditions.STANDARD));
        int n = places.length;
        double[] time = new double[n];
        double[] speed = new double[n];
        double[] lateral = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = i / source.rate;
            double v = at(lap.column(Channel.DISTANCE), lap.column(Channel.SPEED), places[i]);
            speed[i] = v + SPEED_ERROR * random.nextGaussian();
            lateral[i] = BIAS
                    + SCALE
                            * v
                            * v
                            * truth.pointAt(Math.min(places[i], truth.length())).curvature()
                    + source.accelerationError() * random.nextGaussian();
        }
        return new LoggedLap(LoggedLap.distances(time, speed), speed, lateral);
    }

    private static double at(double[] rising, double[] values, double wanted) {
        int found = Arrays.binarySearch(rising, wanted);
        int i = Math.max(0, Math.min(rising.length - 2, found >= 0 ? found : -found - 2));
        double share = rising[i + 1] > rising[i] ? (wanted - rising[i]) / (rising[i + 1] - rising[i]) : 0;
        return values[i] + share * (values[i + 1] - values[i]);
    }
}
