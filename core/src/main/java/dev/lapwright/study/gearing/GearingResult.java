package dev.lapwright.study.gearing;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.Check;
import dev.lapwright.lap.Drivetrain;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Corner;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Findings of a study of gearing.
 *
 * @param car as it stood
 * @param track where
 * @param conditions the day
 * @param axes what was varied, each by itself
 * @param gears the gears of the car as it stood
 * @param traction force and resistance of the car as it stood
 * @param scenarios as given first, then the tow and the head wind if they were asked for
 */
public record GearingResult(
        Car car,
        Track track,
        Conditions conditions,
        List<SweepAxis> axes,
        List<Gear> gears,
        Traction traction,
        List<Scenario> scenarios) {
    public GearingResult {
        axes = List.copyOf(axes);
        gears = List.copyOf(gears);
        scenarios = List.copyOf(scenarios);
        Check.positive("scenarios", scenarios.size());
    }

    /** Car and day as given. */
    public Scenario asGiven() {
        return scenarios.get(0);
    }

    /**
     * Gearing that was tried.
     *
     * @param axis what was varied
     * @param value its setting, in its unit
     * @param car the car so geared
     * @param lap what the lap makes of its gears; empty where there was no lap
     * @param failure why there was no lap; empty where there was one
     */
    public record Candidate(String axis, double value, Car car, Optional<GearedLap> lap, String failure) {}

    /**
     * Gear as a line of the saw diagram: engine speed over road speed is a straight line through the origin, used from
     * {@code fromSpeed} to {@code toSpeed}. All gears together draw the saw.
     *
     * @param gear from 1
     * @param ratio of the gear alone
     * @param overallRatio with the final drive
     * @param engineSpeedPerSpeed 1/min per m/s
     * @param fromSpeed road speed at which it is taken, m/s; 0 in first gear
     * @param toSpeed road speed at which it is left for the next, m/s; that at the rev limit in top gear
     * @param limitSpeed road speed at the rev limit, m/s
     */
    public record Gear(
            int gear,
            double ratio,
            double overallRatio,
            double engineSpeedPerSpeed,
            double fromSpeed,
            double toSpeed,
            double limitSpeed) {

        /** The gears of a car, first gear first. */
        static List<Gear> of(Vehicle vehicle) {
            Drivetrain drivetrain = Drivetrain.of(vehicle);
            double[] ratios = vehicle.car().gearRatios();
            double finalDrive = vehicle.car().value("gearbox.finalDrive");
            List<Gear> gears = new ArrayList<>();
            for (int gear = 1; gear <= ratios.length; gear++) {
                double limit = drivetrain.limitSpeed(gear);
                gears.add(new Gear(
                        gear,
                        ratios[gear - 1],
                        ratios[gear - 1] * finalDrive,
                        drivetrain.engineSpeed(gear, 1),
                        gear == 1 ? 0 : drivetrain.shiftSpeed(gear - 1),
                        gear == ratios.length ? limit : drivetrain.shiftSpeed(gear),
                        limit));
            }
            return gears;
        }

        /** Engine speed at a road speed (m/s), 1/min. */
        public double engineSpeed(double speed) {
            return engineSpeedPerSpeed * speed;
        }
    }

    /**
     * Change of gear on a lap.
     *
     * @param from gear, from 1
     * @param to gear: the next above or below
     * @param at distance, m
     * @param time since the start of the lap, s
     * @param speed m/s
     * @param engineSpeedBefore in the gear left, 1/min
     * @param engineSpeedAfter in the gear taken, 1/min
     * @param corner the corner that it falls in, if any
     * @param timeToBraking until the brakes are next applied, s; infinite if they are not applied again
     */
    public record Shift(
            int from,
            int to,
            double at,
            double time,
            double speed,
            double engineSpeedBefore,
            double engineSpeedAfter,
            Optional<Corner> corner,
            double timeToBraking) {

        /** Whether it is to a higher gear. */
        public boolean up() {
            return to > from;
        }

        /** Whether it is an upshift with the brakes due within a time in s: hardly worth making. */
        public boolean brakingWithin(double seconds) {
            return up() && timeToBraking <= seconds;
        }
    }

    /**
     * Use that a lap makes of the gears.
     *
     * @param lapTime s
     * @param top the place of the highest speed
     * @param lowestSpeed lowest speed anywhere, m/s
     * @param gearsUsed those the car is driven in, rising; a gear passed only under braking is not used
     * @param timeInGear s, first gear first; adds up to the lap time
     * @param limiter what the rev limiter does
     * @param shifts in driving order
     */
    public record GearedLap(
            double lapTime,
            TopSpeed top,
            double lowestSpeed,
            List<Integer> gearsUsed,
            double[] timeInGear,
            Limiter limiter,
            List<Shift> shifts) {
        public GearedLap {
            gearsUsed = List.copyOf(gearsUsed);
            timeInGear = timeInGear.clone();
            shifts = List.copyOf(shifts);
        }

        @Override
        public double[] timeInGear() {
            return timeInGear.clone();
        }

        /** Number of gears the car has. */
        public int gears() {
            return timeInGear.length;
        }

        /** Gears the car is never driven in, rising. */
        public List<Integer> gearsUnused() {
            List<Integer> unused = new ArrayList<>();
            for (int gear = 1; gear <= gears(); gear++) {
                if (!gearsUsed.contains(gear)) {
                    unused.add(gear);
                }
            }
            return unused;
        }

        /** Whether the highest gear is never used. */
        public boolean topGearUnused() {
            return !gearsUsed.contains(gears());
        }

        /** How far the engine stays below the rev limit at the highest road speed, 1/min. */
        public double headroom() {
            return limiter.revLimit() - top.engineSpeed();
        }

        /** Upshifts, in driving order. */
        public List<Shift> upshifts() {
            return shifts.stream().filter(Shift::up).toList();
        }

        /** Upshifts that fall in a corner. */
        public List<Shift> upshiftsInCorners() {
            return upshifts().stream()
                    .filter(shift -> shift.corner().isPresent())
                    .toList();
        }
    }

    /**
     * Place of a lap's highest speed.
     *
     * @param speed m/s
     * @param at distance, m, to the nearest station
     * @param nextCorner the corner that comes after that place, if any
     * @param gear from 1
     * @param engineSpeed 1/min
     */
    public record TopSpeed(double speed, double at, Optional<Corner> nextCorner, int gear, double engineSpeed) {}

    /**
     * Time on the rev limiter, and what it does to the lap time.
     *
     * @param revLimit 1/min
     * @param time on the limiter, s
     * @param without difference of the lap with a rev limit that is never held, s, minus where faster, the torque at the limit
     *     held up to the new one: the limiter costs no more than that. Zero where the limiter is not held.
     * @param freeRevLimit that limit, 1/min: the car's own, raised in steps of a tenth of it until it is never held, at most
     *     to twice as much
     */
    public record Limiter(double revLimit, double time, double without, double freeRevLimit) {}

    /**
     * Situation in which all gearings were tried.
     *
     * @param kind which situation
     * @param amount of the tow, as the share of drag it takes away, or of the head wind, m/s; 0 as given
     * @param car before its gearing was changed
     * @param conditions the day
     * @param baseline the lap of that car
     * @param choices axis by axis, values in their order
     */
    public record Scenario(
            Kind kind, double amount, Car car, Conditions conditions, GearedLap baseline, List<Candidate> choices) {
        public Scenario {
            choices = List.copyOf(choices);
        }

        /** Kinds of situation. */
        public enum Kind {
            /** Car and day as given. */
            AS_GIVEN,
            /** In the wake of another car, all the way round. */
            TOW,
            /** With a wind against the car where it is fastest. */
            HEAD_WIND
        }

        /** The gearings of one axis. */
        public List<Candidate> choices(String axis) {
            return choices.stream().filter(choice -> choice.axis().equals(axis)).toList();
        }

        /** Difference to the baseline, s, minus where faster; NaN where there was no lap. */
        public double difference(Candidate choice) {
            return choice.lap().map(lap -> lap.lapTime() - baseline.lapTime()).orElse(Double.NaN);
        }

        /** The fastest gearing of an axis, the first of equals; empty if none has a lap. */
        public Optional<Candidate> fastest(String axis) {
            Candidate best = null;
            for (Candidate choice : choices(axis)) {
                if (choice.lap().isPresent()
                        && (best == null
                                || choice.lap().get().lapTime()
                                        < best.lap().get().lapTime())) {
                    best = choice;
                }
            }
            return Optional.ofNullable(best);
        }
    }

    /**
     * Traction diagram: force at the wheels in each gear, and what stands against it on a level straight without wind, over
     * road speed.
     *
     * @param speeds m/s, rising in even steps
     * @param forces N, one array for each gear, first gear first; NaN above the gear's rev limit
     * @param resistance N
     */
    public record Traction(double[] speeds, List<double[]> forces, double[] resistance) {
        private static final int STEPS = 200;

        public Traction {
            speeds = speeds.clone();
            forces = copies(forces);
            resistance = resistance.clone();
        }

        /** The curves of a car from a crawl to the rev limit in top gear. */
        static Traction of(Vehicle vehicle) {
            Drivetrain drivetrain = Drivetrain.of(vehicle);
            double step = vehicle.geared() / STEPS;
            double[] speeds = new double[STEPS + 1];
            double[] resistance = new double[STEPS + 1];
            for (int i = 0; i <= STEPS; i++) {
                speeds[i] = i == STEPS ? vehicle.geared() : step * i;
                resistance[i] = drivetrain.resistance(speeds[i], 0, 0);
            }
            List<double[]> forces = new ArrayList<>();
            for (int gear = 1; gear <= drivetrain.gears(); gear++) {
                double[] force = new double[STEPS + 1];
                for (int i = 0; i <= STEPS; i++) {
                    boolean beyond = drivetrain.engineSpeed(gear, speeds[i]) > drivetrain.revLimit() * (1 + 1e-9);
                    force[i] = beyond ? Double.NaN : drivetrain.force(gear, speeds[i]);
                }
                forces.add(force);
            }
            return new Traction(speeds, forces, resistance);
        }

        private static List<double[]> copies(List<double[]> arrays) {
            return arrays.stream().map(double[]::clone).toList();
        }

        @Override
        public double[] speeds() {
            return speeds.clone();
        }

        @Override
        public List<double[]> forces() {
            return copies(forces);
        }

        @Override
        public double[] resistance() {
            return resistance.clone();
        }
    }
}
