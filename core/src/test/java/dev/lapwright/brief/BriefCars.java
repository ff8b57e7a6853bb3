package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/** A car whose wing, gearing and mass can be turned, an oval, and logs of laps on it. */
final class BriefCars {
    static final Conditions DAY = Conditions.STANDARD;
    static final Track OVAL = StudyCars.oval(500, 60);

    /** Drag and downforce area of its wing for each degree, m²; the downforce on each axle. */
    static final double WING_DRAG = 0.2;

    static final double WING_LIFT = 0.15;

    /** On the oval neither its wing nor its final drive stands at its best; mass is one that a lap time does not decide. */
    static final Car CAR = car(plain());

    private BriefCars() {}

    /** As a wing adds much drag, and the rev limit comes early, each is the other's business. */
    static PlainCar plain() {
        return plain(55);
    }

    /** The same with another speed at the rev limit, m/s. */
    static PlainCar plain(double topSpeed) {
        return PlainCar.ofMass(1050).force(4000).topSpeed(topSpeed).drag(0.4);
    }

    static Car car(PlainCar plain) {
        return StudyCars.winged(
                plain,
                WING_DRAG,
                WING_LIFT,
                StudyCars.adjustment(
                        "final-drive", 4, 7, 0.25, StudyCars.RATIO, new Effect.Absolute("gearbox.finalDrive", 0, 1)),
                StudyCars.adjustment("ballast", 1000, 1100, 50, 1050, new Effect.Absolute("chassis.massKg", 0, 1)));
    }

    static Brief brief() {
        return Brief.of(CAR, OVAL, DAY);
    }

    static BriefResult run(Brief brief) {
        return brief.run(StudyRun.onThreads(2));
    }

    static double time(Car car) {
        return LapSolver.lap(car, OVAL, DAY).time();
    }

    /** Laps of one setup after the other, each run with an out lap, scattered by a twentieth of a second. */
    static TimingLog log(List<String> setups, double... levels) {
        RandomGenerator random = new Well19937c(7);
        List<TimingLog.Lap> laps = new ArrayList<>();
        for (int run = 0; run < levels.length; run++) {
            laps.add(new TimingLog.Lap(laps.size() + 1, levels[run] + 20, setups.get(run), "", TimingLog.Flag.OUT));
            for (int i = 0; i < 8; i++) {
                double time = levels[run] + 0.05 * random.nextGaussian();
                laps.add(new TimingLog.Lap(laps.size() + 1, time, setups.get(run), "", TimingLog.Flag.NONE));
            }
        }
        return TimingLog.of(laps);
    }

    /** The car with another temperature of its tyres, degC. */
    static Car tyresAt(double temperature) {
        return CAR.with(Quantity.TYRE_TEMPERATURE, temperature);
    }
}
