package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/**
 * Day on which what a fit is told is wrong in one way or in all: three laps of a car whose mass, balance, tyres, line or sensor are
 * not those of the documents. Faults are drawn by their own standard deviations, written here, not by the fit's doubts.
 */
final class FaultyDay {
    /** What is wrong. */
    enum Fault {
        NONE,
        /** Speed reads one percent high or low; distance, of the same wheel, as well. */
        SPEED_SCALE,
        /** Speed comes 0.2 s late. */
        SENSOR_LAG,
        /** One percent of mass. */
        MASS,
        /** Two points of the downforce's front share. */
        AERO_BALANCE,
        /** Half a point of front weight and 20 mm of height. */
        CENTRE_OF_GRAVITY,
        /** A fifth of the load sensitivity, two percent of front over rear friction. */
        TYRES,
        /** Two percent of the radius in all corners, and as much again in each. */
        LINE,
        /** All of these, the scale by one percent drawn, the lag between 0 and 0.2 s. */
        ALL
    }

    private static final Track TRACK = FitScene.longCircuit();
    private static final int LAPS = 3;
    /** Noise of the speed: 0.3 m/s that keeps 1/e of itself over 30 m. */
    private static final double NOISE = 0.3;

    private static final double NOISE_LENGTH = 30;

    private final Random random;
    private final Fault fault;
    private final Map<Quantity, Double> changes = new EnumMap<>(Quantity.class);

    private FaultyDay(Fault fault, long seed) {
        this.fault = fault;
        random = new Random(seed);
    }

    /** The car as the fit is given it: no fitted parameter is wrong, so that the truth is the car as given. */
    static Car given() {
        return FitScene.car();
    }

    static Track track() {
        return TRACK;
    }

    /** The laps of a day. */
    static List<DrivenLap> laps(Fault fault, long seed) {
        return new FaultyDay(fault, seed).laps();
    }

    private boolean has(Fault one) {
        return fault == one || fault == Fault.ALL;
    }

    private List<DrivenLap> laps() {
        Car car = given();
        if (has(Fault.MASS)) {
            double all = car.value(Quantity.MASS) + car.value(Quantity.FUEL_MASS);
            changes.put(Quantity.MASS, car.value(Quantity.MASS) + 0.01 * all * random.nextGaussian());
        }
        if (has(Fault.AERO_BALANCE)) {
            double moved = 0.02 * random.nextGaussian() * lift(car);
            changes.put(Quantity.LIFT_AREA_FRONT, car.value(Quantity.LIFT_AREA_FRONT) + moved);
            changes.put(Quantity.LIFT_AREA_REAR, car.value(Quantity.LIFT_AREA_REAR) - moved);
        }
        if (has(Fault.CENTRE_OF_GRAVITY)) {
            changes.put(Quantity.FRONT_WEIGHT, car.value(Quantity.FRONT_WEIGHT) + 0.5 * random.nextGaussian());
            changes.put(Quantity.CG_HEIGHT, car.value(Quantity.CG_HEIGHT) + 0.02 * random.nextGaussian());
        }
        if (has(Fault.TYRES)) {
            double steeper = 1 + 0.2 * random.nextGaussian();
            double front = 0.01 * random.nextGaussian();
            times(steeper, Quantity.SENSITIVITY_X_FRONT, Quantity.SENSITIVITY_Y_FRONT);
            times(steeper, Quantity.SENSITIVITY_X_REAR, Quantity.SENSITIVITY_Y_REAR);
            times(1 + front, Quantity.FRICTION_X_FRONT, Quantity.FRICTION_Y_FRONT);
            times(1 - front, Quantity.FRICTION_X_REAR, Quantity.FRICTION_Y_REAR);
        }
        Track driven = has(Fault.LINE) ? otherLine() : TRACK;
        double scale = 1;
        double lag = 0;
        if (fault == Fault.SPEED_SCALE) {
            scale = random.nextBoolean() ? 1.01 : 0.99;
        } else if (fault == Fault.SENSOR_LAG) {
            lag = 0.2;
        } else if (fault == Fault.ALL) {
            scale = 1 + 0.01 * random.nextGaussian();
            lag = 0.2 * random.nextDouble();
        }
        // Rebuilt with the new standards of its quantities; the adjustments stand where they stood.
        Lap lap = LapSolver.lap(FitScene.car(changes), driven, Conditions.STANDARD);
        List<DrivenLap> laps = new ArrayList<>();
        for (int k = 0; k < LAPS; k++) {
            laps.add(Recorder.at(20)
                    .noisy(NOISE, NOISE_LENGTH, random)
                    .sensor(scale, lag)
                    .distance(scale, 0)
                    .of("lap " + (k + 1), lap));
        }
        return laps;
    }

    private static double lift(Car car) {
        return ParameterScale.areas(car).liftFront() + ParameterScale.areas(car).liftRear();
    }

    private void times(double factor, Quantity... quantities) {
        for (Quantity quantity : quantities) {
            changes.put(quantity, factor * given().value(quantity));
        }
    }

    /** The circuit with each corner's curvature by a factor of its own: a way of the same length with other radii. */
    private Track otherLine() {
        double common = 0.02 * random.nextGaussian();
        List<Corner> corners = TRACK.stations(StationSpacing.DEFAULT).corners();
        double[] factor = new double[corners.size()];
        for (int i = 0; i < factor.length; i++) {
            factor[i] = 1 / (1 + common + 0.02 * random.nextGaussian());
        }
        List<TrackPoint> points = new ArrayList<>();
        for (TrackPoint point : TRACK.points()) {
            int nearest = 0;
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < factor.length; i++) {
                double away = Math.abs(point.s() - corners.get(i).apex());
                away = Math.min(away, TRACK.length() - away);
                if (away < least) {
                    least = away;
                    nearest = i;
                }
            }
            points.add(curved(point, factor[nearest]));
        }
        return Track.closed(TRACK.name(), points);
    }

    private static TrackPoint curved(TrackPoint p, double factor) {
        return new TrackPoint(
                p.s(),
                factor * p.curvature(),
                p.slope(),
                p.bank(),
                p.verticalCurvature(),
                p.grip(),
                p.widthLeft(),
                p.widthRight(),
                p.speedLimit());
    }

    static Set<FitParameter> parameters() {
        return EnumSet.allOf(FitParameter.class);
    }
}
