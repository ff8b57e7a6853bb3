package dev.lapwright.study.robust;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.doubt.PlausibleCars;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fit.LimitWord;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.StudyStoppedException;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.study.pressures.Pressures;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import dev.lapwright.tyre.Wheel;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How settings stand on drawn cars, against distributions by hand. */
class RobustnessTest {
    private static final double RADIUS = 50;

    private static Car doubting(Car car, Quantity quantity, double amount, boolean percent) {
        CarDoubt.Size size = new CarDoubt.Size(amount, percent, false, CarDoubt.Source.ESTIMATED);
        return car.doubting(new CarDoubt(Map.of(quantity.path(), size), List.of(), new double[0][]));
    }

    private static Track circle() {
        return new SegmentPath(List.of(Segment.arc(2 * Math.PI * RADIUS, RADIUS)), true, 1).closedTrack("circle", 1e-6);
    }

    /**
     * From rest with an even force t = √(2 m L/F). With 20 % more force each drawn car gains the share 1 − √(1/1.2) of its time, which goes
     * with the root of its mass: the gain's interval is that of a lognormal number.
     */
    @Test
    void theIntervalOfAGainIsThatOfTheUnknownItHangsOn() {
        double force = 4000;
        double length = 400;
        Car car = doubting(StudyCars.with(PlainCar.ofMass(1000).force(force)), Quantity.MASS, 10, true);
        RobustnessResult result = Robustness.of(car, StudyCars.straight(length), Conditions.STANDARD)
                .against(car.with(Quantity.FINAL_DRIVE, 1.2 * StudyCars.RATIO))
                .asStated()
                .withDraws(100)
                .run();
        RobustnessResult.Standing geared = result.standings().get(0);
        double gain = Math.sqrt(2 * 1000 * length / force) * (Math.sqrt(1 / 1.2) - 1);
        double sigma = 0.5 * Math.sqrt(Math.log(1 + 0.1 * 0.1));
        // A slice of 1/100 at the 5 % point of a normal number is 0.1 deviations wide.
        double slice = 0.1 * sigma * -gain;
        assertThat(geared.low()).isEqualTo(gain * Math.exp(1.645 * sigma), within(slice));
        assertThat(geared.high()).isEqualTo(gain * Math.exp(-1.645 * sigma), within(slice));
        // In the middle a slice is 0.025 deviations; the solver starts a little above rest.
        assertThat(geared.middle()).isEqualTo(gain, within(0.05 * sigma * -gain));
        assertThat(geared.gains()).isEqualTo(100);
        assertThat(geared.best()).isEqualTo(100);
        assertThat(result.chanceOfGain(geared)).isEqualTo(1);
        assertThat(geared.cost()).isZero();
        // A lognormal number's mean lies e^(σ²/2) above its median.
        assertThat(result.present().cost()).isEqualTo(-gain * Math.exp(0.5 * sigma * sigma), within(slice));
        assertThat(result.shares()).hasSize(1);
        assertThat(result.shares().get(0).unknown().title()).isEqualTo("mass with driver, without fuel");
    }

    /** As above: of a car of 1.1 times the mass and 1.2 times the force, the force alone gains the root of 1.1 times what it does above. */
    @Test
    void whatAPartDoesIsToldBesideTheSettingWithoutIt() {
        Car car = doubting(StudyCars.with(PlainCar.ofMass(1000).force(4000)), Quantity.MASS, 10, true);
        Car heavy = car.with(Quantity.MASS, 1100);
        RobustnessResult result = Robustness.of(car, StudyCars.straight(400), Conditions.STANDARD)
                .against(heavy.with(Quantity.FINAL_DRIVE, 1.2 * StudyCars.RATIO))
                .without(0, heavy)
                .asStated()
                .withDraws(100)
                .run();
        RobustnessResult.Standing force = result.standings().get(1);
        double gain = Math.sqrt(2 * 1100 * 400 / 4000.0) * (Math.sqrt(1 / 1.2) - 1);
        double sigma = 0.5 * Math.sqrt(Math.log(1 + 0.1 * 0.1));
        // A slice of 1/100 at the 5 % point of a normal number is 0.1 deviations wide, in the middle 0.025; the solver
        // starts a little above rest.
        assertThat(force.low()).isEqualTo(gain * Math.exp(1.645 * sigma), within(0.1 * sigma * -gain));
        assertThat(force.middle()).isEqualTo(gain, within(0.05 * sigma * -gain));
        assertThat(force.gains()).isEqualTo(100);
        // It is no rival: the setting with the force is the fastest of all.
        assertThat(result.standings().get(0).best()).isEqualTo(100);
        assertThat(result.isFirmGain(force)).isTrue();
    }

    /** Two in three of the cars, and a median that counts: 0.05 s. */
    @Test
    void aFirmGainIsOneOnTwoInThree() {
        RobustnessResult of = new RobustnessResult(
                60, 60, 1, List.of(), List.of(), standing(-0.2, 0), 0, List.of(), 1, Optional.empty());
        assertThat(of.isFirmGain(standing(-0.06, 40))).isTrue();
        assertThat(of.isFirmGain(standing(-0.06, 39))).isFalse();
        assertThat(of.isFirmGain(standing(-0.04, 60))).isFalse();
        assertThat(of.isFirmGain(standing(Double.NaN, 60))).isFalse();
    }

    private static RobustnessResult.Standing standing(double middle, int gains) {
        return new RobustnessResult.Standing(60, -0.5, middle, 0.5, gains, 0, 0);
    }

    /**
     * On a circle the front axle, off its best pressure, limits the car. 175 kPa is nearer than 165 to a best pressure above 170, which one
     * of mean 172 and deviation 4 (lognormal) has the chance Φ(ln(172/170)/σ) to be.
     */
    @Test
    void theChanceThatASettingIsTheBestIsThatOfTheUnknownItHangsOn() {
        Car plain = PlainCar.ofMass(1000)
                .friction(1.2)
                .with(Quantity.PRESSURE_LOSS, 1e-3)
                .with(Quantity.IDEAL_PRESSURE_FRONT, 172)
                .with(Quantity.HOT_PRESSURE_FRONT, 165)
                .car();
        Car car = doubting(plain, Quantity.IDEAL_PRESSURE_FRONT, 4, false);
        int draws = 200;
        RobustnessResult result = Robustness.of(car, circle(), Conditions.STANDARD)
                .against(car.with(Quantity.HOT_PRESSURE_FRONT, 165), Conditions.STANDARD, 165)
                .against(car.with(Quantity.HOT_PRESSURE_FRONT, 175), Conditions.STANDARD, 175)
                .asStated()
                .withDraws(draws)
                .run();
        double sigma = Math.sqrt(Math.log(1 + Math.pow(4.0 / 172, 2)));
        // Φ(0.5030), from a table of the normal distribution.
        assertThat(Math.log(172.0 / 170) / sigma).isEqualTo(0.5030, within(1e-4));
        double chance = 0.6925;
        // Slices hold one draw each: the count is off by that of the slice in which the two are alike.
        assertThat(result.standings().get(1).best()).isBetween((int) (draws * chance) - 1, (int) (draws * chance) + 2);
        assertThat(result.standings().get(0).best() + result.standings().get(1).best())
                .isEqualTo(draws);
        assertThat(result.mostOftenBest()).contains(1);
        assertThat(result.least()).contains(1);
        // The setting that the car stands at makes no difference to it on any drawn car.
        assertThat(result.standings().get(0).high()).isZero();
        assertThat(result.standings().get(0).low()).isZero();
        assertThat(result.present().cost()).isEqualTo(result.standings().get(0).cost());
        assertThat(result.shares()).hasSize(1);
    }

    /**
     * On a circle the speed goes with the root of friction, which falls by k (p − p*)². A car whose front limits, logged 20 kPa above a best
     * pressure that is lognormal: 180 kPa, deviation 4 kPa. The higher the true best is, the less the pressures logged cost beside the stated one.
     */
    @Test
    void whatLoggedPressuresCostIsInDoubtAsTheBestPressureIs() {
        double k = 1e-4;
        Car plain = PlainCar.ofMass(1000)
                .friction(1.2)
                .with(Quantity.FRICTION_Y_REAR, 1.6)
                .with(Quantity.PRESSURE_LOSS, k)
                .with(Quantity.IDEAL_PRESSURE_FRONT, 180)
                .with(Quantity.IDEAL_PRESSURE_REAR, 180)
                .car();
        Car car = doubting(plain, Quantity.IDEAL_PRESSURE_FRONT, 4, false);
        PressureDay day = new PressureDay(20, 20, 1013);
        PressureResult pressures = Pressures.of(
                        car,
                        circle(),
                        Conditions.STANDARD,
                        List.of(
                                new PressurePair(Wheel.FRONT_LEFT, 150, 200, 20, day),
                                new PressurePair(Wheel.FRONT_RIGHT, 150, 200, 20, day)))
                .run();
        RobustnessResult result =
                Robustness.of(pressures).asStated().withDraws(100).run();
        double sigma = Math.sqrt(Math.log(1 + Math.pow(4.0 / 180, 2)));
        double atBest = pressures.lap().time();
        double[] ends = new double[2];
        for (int i = 0; i < 2; i++) {
            double best = 180 * Math.exp((i == 0 ? 1.645 : -1.645) * sigma);
            ends[i] = atBest
                    * (1 / Math.sqrt(1 - k * Math.pow(200 - best, 2)) - 1 / Math.sqrt(1 - k * Math.pow(180 - best, 2)));
        }
        RobustnessResult.Standing logged = result.standings().get(0);
        // A slice of 1/100 at the 5 % point is 0.1 deviations wide, of the 3.3 between the ends; no drive force limits
        // the
        // circle but what rolls and slides.
        double slice = 0.1 / 3.29 * (ends[1] - ends[0]);
        assertThat(logged.low()).isEqualTo(ends[0], within(2 * slice));
        assertThat(logged.high()).isEqualTo(ends[1], within(2 * slice));
        assertThat(logged.low()).isLessThan(pressures.measuredCost());
        assertThat(logged.high()).isGreaterThan(pressures.measuredCost());
        // All tyres 20 kPa too high at the front alone counts: the same.
        assertThat(result.standings().get(4).low()).isEqualTo(logged.low(), within(slice));
    }

    @Test
    void whatIsFoundIsTheSameOnAnyNumberOfThreads() {
        Car car = StudyCars.winged(PlainCar.ofMass(1000).friction(1.5), 0.02, 0.05);
        Robustness study = Robustness.of(car, StudyCars.oval(300, 60), Conditions.STANDARD)
                .against(car.with("wing", 2))
                .withDraws(20);
        RobustnessResult one = study.run(StudyRun.onThreads(1));
        assertThat(study.run(StudyRun.onThreads(3))).isEqualTo(one);
        assertThat(study.withSeed(2).run(StudyRun.onThreads(1)).standings()).isNotEqualTo(one.standings());
        assertThat(one.assumed()).isEqualTo(one.unknowns().size());
    }

    private static TrackPoint climbing(double s) {
        return new TrackPoint(s, 0, 0.1, 0, 0, 1, 5, 5, Double.POSITIVE_INFINITY);
    }

    @Test
    void carsThatCannotLapAreCountedAndLeftOut() {
        Car climber = doubting(StudyCars.with(PlainCar.ofMass(1000).force(1000)), Quantity.MASS, 10, true);
        // 1000 N carry 1000 kg up a slope of 0.102; on one of 0.1 only those lighter than 1020 kg arrive.
        Track hill = Track.open("hill", 5, List.of(climbing(0), climbing(2000)));
        RobustnessResult result = Robustness.of(climber, hill, Conditions.STANDARD)
                .against(climber.with(Quantity.FINAL_DRIVE, 2 * StudyCars.RATIO))
                .asStated()
                .withDraws(50)
                .run();
        assertThat(result.lapped()).isBetween(20, 40);
        assertThat(result.draws()).isEqualTo(50);
        assertThat(result.standings().get(0).laps()).isEqualTo(result.lapped());
    }

    @Test
    void aStudyCanBeStopped() {
        Car car = PlainCar.ofMass(1000).friction(1.2).car();
        Robustness study = Robustness.of(car, circle(), Conditions.STANDARD).against(car.with(Quantity.MASS, 990));
        StudyRun stopped = StudyRun.onThreads(1).stoppedWhen(() -> true);
        assertThatThrownBy(() -> study.run(stopped)).isInstanceOf(StudyStoppedException.class);
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 0, 1, 19, 100_001})
    void aNumberOfDrawsThatTellsNothingIsRefused(int draws) {
        Robustness study = Robustness.of(PlainCar.ofMass(1000).car(), circle(), Conditions.STANDARD);
        assertThatThrownBy(() -> study.withDraws(draws))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining(String.valueOf(draws))
                .hasMessageContaining("20 to 100000");
    }

    @Test
    void nothingToHoldAgainstIsRefused() {
        assertThatThrownBy(() -> Robustness.of(PlainCar.ofMass(1000).car(), circle(), Conditions.STANDARD)
                        .run())
                .isInstanceOf(InvalidValueException.class);
    }

    private static double inside(int draws, int truths) {
        Car car = StudyCars.winged(PlainCar.ofMass(1000).friction(1.5).drag(0.6).force(6000), 0.02, 0.05);
        Track oval = StudyCars.oval(300, 60);
        Car winged = car.with("wing", 9);
        RobustnessResult.Standing told = Robustness.of(car, oval, Conditions.STANDARD)
                .against(winged)
                .withDraws(draws)
                .run()
                .standings()
                .get(0);
        assertThat(told.low()).isLessThan(told.high());
        PlausibleCars cars = PlausibleCars.of(car, Conditions.STANDARD);
        LapSolver solver = LapSolver.on(oval);
        Random random = new Random(11);
        int inside = 0;
        for (int i = 0; i < truths; i++) {
            double[] errors = random.doubles(cars.unknowns().size())
                    .map(any -> random.nextGaussian())
                    .toArray();
            Conditions day = cars.day(Conditions.STANDARD, errors);
            double gain = solver.lapTime(Vehicle.of(cars.car(winged, errors), day))
                    - solver.lapTime(Vehicle.of(cars.car(car, errors), day));
            inside += gain >= told.low() && gain <= told.high() ? 1 : 0;
        }
        return 100.0 * inside / truths;
    }

    /** Cars off as far as is assumed, drawn plainly by another generator, lie in the interval nine times of ten. */
    @Test
    void nineOfTenTrueCarsLieInTheInterval() {
        // A share of 0.9 in 150 has deviation 2.4, ends known from 150 draws as much again; four of both.
        assertThat(inside(150, 150)).isBetween(77.0, 99.9);
    }

    @Test
    @Tag("long")
    void nineOfTenOfManyTrueCarsLieInTheInterval() {
        // Deviation 0.55 in 3000, and at most as much again from the ends; two of both: the band that is promised.
        assertThat(inside(3000, 3000)).isBetween(88.0, 92.0);
    }

    /**
     * A car alike front and rear but for its front tyres' friction, whose value is that of the rear tyres give or take 5 %: by a word of hardly
     * any error those cars are kept whose friction is less, half of all.
     */
    @Test
    void onlyCarsThatGoWithTheDriversWordCount() {
        Car car = doubting(StudyCars.with(PlainCar.ofMass(1000).friction(1.2)), Quantity.FRICTION_Y_FRONT, 5, true);
        Robustness study = Robustness.of(car, StudyCars.oval(200, 60), Conditions.STANDARD)
                .against(car.with(Quantity.MASS, 990))
                .asStated()
                .withDraws(100);
        RobustnessResult front = study.hearing(
                        List.of(new DriverWord.OfLimit(new LimitWord("", LimitWord.End.FRONT, 1e-3))))
                .run();
        RobustnessResult rear = study.hearing(
                        List.of(new DriverWord.OfLimit(new LimitWord("", LimitWord.End.REAR, 1e-3))))
                .run();
        // Slices hold one draw each; a word's error of 0.001 beside 0.05 leaves two or so to chance.
        assertThat(front.lapped()).isBetween(45, 55);
        assertThat(rear.lapped()).isBetween(45, 55);
        assertThat(front.before().orElseThrow()).isEqualTo(study.run());
        assertThat(front.before().orElseThrow().lapped()).isEqualTo(100);
        // Where the front limits, its friction sets the pace; where the rear does it matters little: other cars, other
        // gains.
        assertThat(front.standings()).isNotEqualTo(rear.standings());
    }

    /**
     * From rest with an even force t = √(2 m L/F), and the speed at the end is √(2 F L/m): of a mass known to 5 %, a lap time read to 1 %
     * (2 % of mass) leaves 1/√(1/5² + 1/2²) = 1.86 %, and so does a top speed read to 1 %.
     */
    @ParameterizedTest
    @EnumSource(
            value = DriverWord.Reading.class,
            names = {"LAP_TIME", "TOP_SPEED"})
    void aFigureThatTheDriverReadsNarrowsWhatItHangsOn(DriverWord.Reading reading) {
        double force = 4000;
        double length = 400;
        Car car = doubting(StudyCars.with(PlainCar.ofMass(1000).force(force)), Quantity.MASS, 5, true);
        double value = reading == DriverWord.Reading.LAP_TIME
                ? Math.sqrt(2 * 1000 * length / force)
                : Math.sqrt(2 * force * length / 1000);
        Robustness study = Robustness.of(car, StudyCars.straight(length), Conditions.STANDARD)
                .against(car.with(Quantity.FINAL_DRIVE, 1.2 * StudyCars.RATIO))
                .asStated()
                .withDraws(400);
        RobustnessResult all = study.run();
        RobustnessResult heard = study.hearing(List.of(new DriverWord.OfFigure(reading, "", value, 0.01 * value)))
                .run();
        double narrower =
                heard.standings().get(0).halfWidth() / all.standings().get(0).halfWidth();
        // Ends of some 150 draws are known to a tenth.
        assertThat(narrower).isEqualTo(1.857 / 5, within(0.1 * 1.857 / 5 + 0.02));
        // The share kept is that of the narrower distribution's height: 1.857/5.
        assertThat(heard.lapped()).isBetween(118, 179);
    }

    @Test
    void aSlowestSpeedTellsTheGripOfItsCorner() {
        // On a circle v² = μ g R: of a friction known to 5 %, a speed read to 1 % (2 % of friction) leaves 1.86 %.
        Car car = doubting(StudyCars.with(PlainCar.ofMass(1000).friction(1.2)), Quantity.FRICTION_Y_FRONT, 5, true);
        double speed = 0.99
                * LapSolver.on(circle())
                        .figures(Vehicle.of(car, Conditions.STANDARD))
                        .topSpeed();
        Robustness study = Robustness.of(car, circle(), Conditions.STANDARD)
                .against(car.with(Quantity.MASS, 900))
                .asStated()
                .withDraws(200);
        RobustnessResult heard = study.hearing(
                        List.of(new DriverWord.OfFigure(DriverWord.Reading.MINIMUM_SPEED, "T1", speed, 0.003 * speed)))
                .run();
        assertThat(heard.lapped()).isLessThan(heard.before().orElseThrow().lapped() / 2);
        Robustness nowhere =
                study.hearing(List.of(DriverWord.OfFigure.of(DriverWord.Reading.MINIMUM_SPEED, "T7", speed)));
        assertThatThrownBy(nowhere::run)
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("T7");
    }

    @Test
    void aWordThatHardlyAnyCarGoesWithIsRefused() {
        Car car = doubting(
                StudyCars.with(PlainCar.ofMass(1000).friction(1.2).with(Quantity.FRICTION_Y_FRONT, 1.4)),
                Quantity.MASS,
                1,
                true);
        Robustness study = Robustness.of(car, StudyCars.oval(200, 60), Conditions.STANDARD)
                .against(car.with(Quantity.MASS, 990))
                .asStated()
                .withDraws(20)
                .hearing(List.of(new DriverWord.OfLimit(new LimitWord("", LimitWord.End.FRONT, 1e-2))));
        assertThatThrownBy(study::run)
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("of 20 cars drawn go with it");
    }

    @Test
    void aWordOnACornerThatIsNotThereIsRefused() {
        Car car = PlainCar.ofMass(1000).friction(1.2).car();
        Robustness study = Robustness.of(car, StudyCars.oval(200, 60), Conditions.STANDARD)
                .against(car.with(Quantity.MASS, 990))
                .hearing(List.of(new DriverWord.OfLimit(LimitWord.of("T9", LimitWord.End.FRONT))));
        assertThatThrownBy(study::run).isInstanceOf(InvalidValueException.class).hasMessageContaining("T9");
    }

    /**
     * A lap time read with an error as great as the doubt halves what it is off by and the variance (normal prior and likelihood, conjugate):
     * a lap read one deviation slow moves the median gain half a deviation.
     */
    @Test
    void carsThatGoWithTheDriversWordAreThoseOfBayesRule() {
        double force = 4000;
        double length = 400;
        double sigma = 0.5 * Math.sqrt(Math.log(1 + 0.1 * 0.1));
        Car car = StudyCars.with(PlainCar.ofMass(1000).force(force));
        double time = LapSolver.lap(car, StudyCars.straight(length), Conditions.STANDARD)
                .time();
        DrawnCars plain = new DrawnCars(
                new DrawnCars.Spread(
                        doubting(car, Quantity.MASS, 10, true),
                        StudyCars.straight(length),
                        StationSpacing.DEFAULT,
                        Conditions.STANDARD,
                        200,
                        1,
                        false),
                true);
        DrawnCars heard = plain.heard(
                List.of(new DriverWord.OfFigure(DriverWord.Reading.LAP_TIME, "", time * Math.exp(sigma), sigma * time)),
                StudyRun.onThreads(2));
        Car known = plain.spread().reference();
        RobustnessResult.Standing geared = Robustness.of(known, heard)
                .against(known.with(Quantity.FINAL_DRIVE, 1.2 * StudyCars.RATIO))
                .run()
                .standings()
                .get(0);
        double gain = Math.sqrt(2 * 1000 * length / force) * (Math.sqrt(1 / 1.2) - 1);
        assertThat(heard.count()).isEqualTo(200);
        assertThat(heard.looked()).isGreaterThan(200);
        // The median of 200 draws of deviation 0.7 σ is known to 0.06 σ; three of those.
        assertThat(geared.middle()).isEqualTo(gain * Math.exp(0.5 * sigma), within(0.19 * sigma * -gain));
    }

    @Test
    void aWordThatNoDrawnCarGoesWithIsRefused() {
        Car car = StudyCars.with(PlainCar.ofMass(1000).force(4000));
        DrawnCars cars = DrawnCars.about(car, StudyCars.straight(400), StationSpacing.DEFAULT, Conditions.STANDARD, 20);
        DriverWord impossible = new DriverWord.OfFigure(DriverWord.Reading.LAP_TIME, "", 1, 1e-3);
        assertThatThrownBy(() -> cars.heard(List.of(impossible), StudyRun.onThreads(2)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("what the driver says");
    }
}
