package dev.lapwright.fit;

import dev.lapwright.aero.Areas;
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
        NONE("nothing", null),
        /** Speed reads one to two percent high or low; distance, of the same wheel, as well. */
        SPEED_SCALE("speed scale, 1 to 2 %", FitResult.Cause.SENSOR),
        /** Speed comes 0.2 s late. */
        SENSOR_LAG("sensor lag, 0.2 s", FitResult.Cause.SENSOR),
        /** One percent of mass. */
        MASS("mass", FitResult.Cause.CAR),
        /** Two points of the downforce's front share. */
        AERO_BALANCE("aero balance", FitResult.Cause.CAR),
        /** Half a point of front weight and 20 mm of height. */
        CENTRE_OF_GRAVITY("centre of gravity", FitResult.Cause.CAR),
        /** A fifth of the load sensitivity, two percent of front over rear friction. */
        TYRES("tyres", FitResult.Cause.CAR),
        /** Two percent of the radius in all corners, and as much again in each. */
        LINE("line, 2 % in all corners and 2 % in each", FitResult.Cause.LINE),
        /** All of these, the scale by one percent drawn, the lag between 0 and 0.2 s. */
        ALL("all at once", null);

        private final String words;
        private final FitResult.Cause cause;

        Fault(String words, FitResult.Cause cause) {
            this.words = words;
            this.cause = cause;
        }

        String words() {
            return words;
        }

        /** Where it lies; null where it lies nowhere or everywhere. */
        FitResult.Cause cause() {
            return cause;
        }
    }

    private static final Track TRACK = FitScene.longCircuit();
    private static final int LAPS = 3;
    /** Noise of the speed: 0.3 m/s that keeps 1/e of itself over 30 m. */
    private static final double NOISE = 0.3;

    private static final double NOISE_LENGTH = 30;

    /** Grip used in a run over another's: 0.15 s of a lap of 100 s are 0.15 % of speed, 0.3 % of grip. */
    private static final double RUN_SCATTER = 0.003;
    /** Grip used from lap to lap. */
    private static final double LAP_SCATTER = 0.002;
    /** Of what a change of setup does over what the document says. */
    private static final double EFFECT_SCATTER = 0.15;

    private static final List<Quantity> STIFFNESS = List.of(Quantity.BAR_FRONT, Quantity.BAR_REAR);

    private final Random random;
    private final Fault fault;
    private final Map<Quantity, Double> changes = new EnumMap<>(Quantity.class);
    private final Map<FitNuisance, Double> truth = new EnumMap<>(FitNuisance.class);
    private final Track driven;
    private double scale = 1;
    private double lag;

    private FaultyDay(Fault fault, long seed) {
        this.fault = fault;
        random = new Random(seed);
        driven = draw();
    }

    /** A day. */
    static FaultyDay of(Fault fault, long seed) {
        return new FaultyDay(fault, seed);
    }

    /** The car as the fit is given it: no fitted parameter is wrong, so that the truth is the car as given. */
    static Car given() {
        return FitScene.car();
    }

    static Track track() {
        return TRACK;
    }

    /** The laps of a day of one run. */
    static List<DrivenLap> laps(Fault fault, long seed) {
        return of(fault, seed).laps();
    }

    /** What is true of a nuisance, in its unit, over what the fit is told; 0 where that is right. */
    double truth(FitNuisance nuisance) {
        return truth.getOrDefault(nuisance, 0.0);
    }

    private boolean has(Fault one) {
        return fault == one || fault == Fault.ALL;
    }

    private double drawn(FitNuisance nuisance, double deviation) {
        double value = deviation * random.nextGaussian();
        truth.put(nuisance, value);
        return value;
    }

    private Track draw() {
        Car car = given();
        if (has(Fault.MASS)) {
            double all = car.value(Quantity.MASS) + car.value(Quantity.FUEL_MASS);
            double more = drawn(FitNuisance.MASS, 1);
            changes.put(Quantity.MASS, car.value(Quantity.MASS) + 0.01 * all * more);
        }
        if (has(Fault.AERO_BALANCE)) {
            double moved = 0.01 * drawn(FitNuisance.AERO_BALANCE, 2) * lift(car);
            changes.put(Quantity.LIFT_AREA_FRONT, car.value(Quantity.LIFT_AREA_FRONT) + moved);
            changes.put(Quantity.LIFT_AREA_REAR, car.value(Quantity.LIFT_AREA_REAR) - moved);
        }
        if (has(Fault.CENTRE_OF_GRAVITY)) {
            changes.put(Quantity.FRONT_WEIGHT, car.value(Quantity.FRONT_WEIGHT) + drawn(FitNuisance.FRONT_WEIGHT, 0.5));
            changes.put(Quantity.CG_HEIGHT, car.value(Quantity.CG_HEIGHT) + 0.001 * drawn(FitNuisance.CG_HEIGHT, 20));
        }
        if (has(Fault.TYRES)) {
            double steeper = 1 + 0.01 * drawn(FitNuisance.LOAD_SENSITIVITY, 20);
            double front = 0.005 * drawn(FitNuisance.GRIP_BALANCE, 2);
            times(steeper, Quantity.SENSITIVITY_X_FRONT, Quantity.SENSITIVITY_Y_FRONT);
            times(steeper, Quantity.SENSITIVITY_X_REAR, Quantity.SENSITIVITY_Y_REAR);
            times(1 + front, Quantity.FRICTION_X_FRONT, Quantity.FRICTION_Y_FRONT);
            times(1 - front, Quantity.FRICTION_X_REAR, Quantity.FRICTION_Y_REAR);
        }
        Track line = has(Fault.LINE) ? otherLine() : TRACK;
        if (fault == Fault.SPEED_SCALE) {
            double percent = 1 + random.nextDouble();
            truth.put(FitNuisance.SPEED_SCALE, random.nextBoolean() ? percent : -percent);
            scale = 1 + 0.01 * truth(FitNuisance.SPEED_SCALE);
        } else if (fault == Fault.SENSOR_LAG) {
            lag = 0.2;
        } else if (fault == Fault.ALL) {
            scale = 1 + 0.01 * random.nextGaussian();
            lag = 0.2 * random.nextDouble();
        }
        return line;
    }

    /** Three laps of the car as given. */
    List<DrivenLap> laps() {
        // Rebuilt with the new standards of its quantities; the adjustments stand where they stood.
        return recorded(LapSolver.lap(FitScene.car(changes), driven, Conditions.STANDARD));
    }

    private List<DrivenLap> recorded(Lap lap) {
        List<DrivenLap> laps = new ArrayList<>();
        for (int k = 0; k < LAPS; k++) {
            laps.add(recorded(lap, k));
        }
        return laps;
    }

    private DrivenLap recorded(Lap lap, int k) {
        return Recorder.at(20)
                .noisy(NOISE, NOISE_LENGTH, random)
                .sensor(scale, lag)
                .distance(scale, 0)
                .of("lap " + (k + 1), lap);
    }

    /**
     * A run with settings of the car, as the fit is told them: what they do differs from the document, and so does the grip that each
     * run and lap uses, whatever else is right.
     */
    DrivenRun run(Map<String, Double> settings) {
        Car told = given();
        for (Map.Entry<String, Double> setting : settings.entrySet()) {
            told = told.with(setting.getKey(), setting.getValue());
        }
        double effect = EFFECT_SCATTER * random.nextGaussian();
        double used = 1 + RUN_SCATTER * random.nextGaussian();
        Areas before = ParameterScale.areas(given());
        Areas after = ParameterScale.areas(told);
        Map<Quantity, Double> own = new EnumMap<>(changes);
        plus(own, Quantity.DRAG_AREA, effect * (after.drag() - before.drag()));
        plus(own, Quantity.LIFT_AREA_FRONT, effect * (after.liftFront() - before.liftFront()));
        plus(own, Quantity.LIFT_AREA_REAR, effect * (after.liftRear() - before.liftRear()));
        List<DrivenLap> laps = new ArrayList<>();
        for (int k = 0; k < LAPS; k++) {
            double grip = used * (1 + LAP_SCATTER * random.nextGaussian());
            Car car = FitScene.car(own).with(Quantity.COMPOUND_GRIP, grip * given().value(Quantity.COMPOUND_GRIP));
            for (Map.Entry<String, Double> setting : settings.entrySet()) {
                car = car.with(setting.getKey(), setting.getValue());
            }
            for (Quantity stiffness : STIFFNESS) {
                double change = told.value(stiffness) - given().value(stiffness);
                car = change == 0 ? car : car.with(stiffness, told.value(stiffness) + effect * change);
            }
            laps.add(recorded(LapSolver.lap(car, driven, Conditions.STANDARD), k));
        }
        return new DrivenRun(told, Conditions.STANDARD, laps);
    }

    private static void plus(Map<Quantity, Double> changes, Quantity quantity, double change) {
        if (change != 0) {
            changes.put(quantity, changes.getOrDefault(quantity, given().value(quantity)) + change);
        }
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
