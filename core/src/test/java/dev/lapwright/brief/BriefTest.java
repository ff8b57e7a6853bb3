package dev.lapwright.brief;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Limit;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.balance.Balance;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.gearing.Gearing;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.robust.DriverWord;
import dev.lapwright.study.sensitivity.Sensitivity;
import dev.lapwright.study.sensitivity.SensitivityResult;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.study.stint.Stint;
import dev.lapwright.study.stint.StintResult;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A brief says what the studies say, and a part that cannot be answered leaves the others alone. */
class BriefTest {
    /** Sums of some hundred times in double precision. */
    private static final double ROUNDING = 1e-9;

    /** Air of the day, degC. */
    private static final double DAY_C = BriefCars.DAY.airTempC();

    private static final BriefResult BRIEF = BriefCars.run(BriefCars.brief());

    private static BriefResult.Priorities sensitivity() {
        return BRIEF.sensitivity().value().orElseThrow();
    }

    private static StintResult stint(Brief brief) {
        return BriefCars.run(brief).stint().value().orElseThrow();
    }

    @Test
    void thePlacesTakeTheWholeLap() {
        double sum = BRIEF.places().stream()
                .mapToDouble(place -> place.drive().time())
                .sum();
        double shares = BRIEF.places().stream()
                .mapToDouble(BriefResult.PlaceShare::share)
                .sum();
        assertThat(sum).isCloseTo(BriefCars.time(BriefCars.CAR), within(ROUNDING));
        assertThat(shares).isCloseTo(1, within(ROUNDING));
    }

    @Test
    void anOvalHasTwoCornersAndTwoStraights() {
        // The start lies within a straight, which therefore comes last.
        assertThat(BRIEF.places().stream().filter(BriefResult.PlaceShare::isCorner))
                .hasSize(2);
        assertThat(BRIEF.places().stream().filter(place -> !place.isCorner())).hasSize(2);
    }

    @Test
    void theLimitsOfThePlacesAreThoseOfTheLap() {
        Map<Limit, Double> sum = new HashMap<>();
        for (BriefResult.PlaceShare place : BRIEF.places()) {
            place.limits().forEach((limit, share) -> sum.merge(limit, share * place.share(), Double::sum));
        }
        Map<Limit, Double> ofLap = BRIEF.lap().limitShares();
        assertThat(sum.keySet()).isEqualTo(ofLap.keySet());
        sum.forEach((limit, share) -> assertThat(share).isCloseTo(ofLap.get(limit), within(ROUNDING)));
    }

    @Test
    void sensitivityIsThatOfTheStudyAskedDirectly() {
        SensitivityResult direct =
                Sensitivity.of(BriefCars.CAR, BriefCars.OVAL, BriefCars.DAY).run();
        assertThat(sensitivity().study().worths()).isEqualTo(direct.worths());
        assertThat(sensitivity().study().interactions()).isEqualTo(direct.interactions());
    }

    @Test
    void everyAdjustmentIsInOneListOfWhatIsWorthChanging() {
        List<SensitivityResult.Worth> all = Stream.of(
                        sensitivity().worthChanging(),
                        sensitivity().notWorthChanging(),
                        sensitivity().leftAlone())
                .flatMap(List::stream)
                .toList();
        assertThat(all)
                .containsExactlyInAnyOrderElementsOf(sensitivity().study().worths());
    }

    /** Less mass is always faster: Newton's second law. */
    @Test
    void massIsLeftAloneWithTheReasonAlthoughLessOfItIsFaster() {
        assertThat(sensitivity().leftAlone().stream()
                        .map(worth -> worth.adjustment().name()))
                .containsExactly("ballast");
        assertThat(sensitivity().reasons().get(0).name()).isEqualTo("ballast");
        assertThat(sensitivity().reasons().get(0).reason()).isNotBlank();
    }

    @Test
    void gearingIsThatOfTheStudyAskedDirectly() {
        GearingResult direct =
                Gearing.of(BriefCars.CAR, BriefCars.OVAL, BriefCars.DAY).run();
        GearingResult gearing = BRIEF.gearing().value().orElseThrow();
        assertThat(gearing.asGiven().choices()).hasSameSizeAs(direct.asGiven().choices());
        for (int i = 0; i < direct.asGiven().choices().size(); i++) {
            assertThat(gearing.asGiven().difference(gearing.asGiven().choices().get(i)))
                    .isEqualTo(direct.asGiven()
                            .difference(direct.asGiven().choices().get(i)));
        }
    }

    @Test
    void balanceIsThatOfTheStudyAskedDirectly() {
        assertThat(BRIEF.balance().value().orElseThrow().understeer(BalancePhase.MIDDLE))
                .isEqualTo(Balance.of(BRIEF.lap()).run().understeer(BalancePhase.MIDDLE));
    }

    @Test
    void fuelIsThatOfTheStudyAskedDirectly() {
        BriefChoices.Racing racing = BriefChoices.DEFAULT.racing();
        StintResult direct = Stint.of(BriefCars.CAR, BriefCars.OVAL, BriefCars.DAY, racing.length())
                .withConsumption(racing.consumption())
                .onCompounds(List.of(racing.compound()))
                .run();
        assertThat(BRIEF.stint().value().orElseThrow().startFuel()).isEqualTo(direct.startFuel());
    }

    @Test
    void withoutALengthTheRaceTakesTwentyMinutesAndTheLapUnderWay() {
        StintResult.Run run = BRIEF.stint().value().orElseThrow().runs().get(0);
        assertThat(run.time()).isGreaterThanOrEqualTo(20 * 60);
        assertThat(run.timeAfter(run.laps().size() - 1)).isLessThan(20 * 60);
    }

    @Test
    void aRaceCountedInLapsHasThatManyLaps() {
        StintResult stint = stint(BriefCars.brief().withRace(new RaceLength(7, 0, 0, 0, 0)));
        assertThat(stint.runs().get(0).laps()).hasSize(7);
        assertThat(stint.runs().get(0).formationFuel()).isZero();
    }

    @Test
    void aCarWithoutAdjustmentsMissesOnlyWhatNeedsThem() {
        Car bare = BriefCars.plain().car();
        BriefResult brief = BriefCars.run(Brief.of(bare, BriefCars.OVAL, BriefCars.DAY));
        for (BriefResult.Part<?> part : List.of(
                brief.sensitivity(),
                brief.suggestion(),
                brief.wings(),
                brief.tests(),
                brief.debrief().proof())) {
            assertThat(part.isThere()).isFalse();
            assertThat(part.problem()).isNotBlank();
            assertThat(part.remedy()).isNotBlank();
        }
        for (BriefResult.Part<?> part :
                List.of(brief.exchange(), brief.gearing(), brief.balance(), brief.pressures(), brief.stint())) {
            assertThat(part.isThere()).isTrue();
            assertThat(part.problem()).isEmpty();
        }
        assertThat(brief.suggestion().problem()).contains("no adjustment");
    }

    @Test
    void anOpenRunMissesOnlyTheRaceAndTheBalanceOfItsCorners() {
        BriefResult brief = BriefCars.run(Brief.of(BriefCars.CAR, StudyCars.straight(1000), BriefCars.DAY));
        assertThat(brief.stint().problem()).contains("no circuit");
        assertThat(brief.balance().problem()).contains("no corner");
        assertThat(brief.suggestion().isThere()).isTrue();
        assertThat(brief.tests().isThere()).isTrue();
        assertThat(brief.gearing().isThere()).isTrue();
    }

    /** Tyres no warmer than the air, and grip that cannot be a percent more, which drag and fuel are told by. */
    @Test
    void whatTheTyresDoNotTellLeavesTheRestAlone() {
        Car odd = BriefCars.tyresAt(DAY_C).with(Quantity.COMPOUND_GRIP, Quantity.COMPOUND_GRIP.max());
        BriefResult brief =
                BriefCars.run(Brief.of(odd, BriefCars.OVAL, BriefCars.DAY).withDraws(0));
        for (BriefResult.Part<?> part : List.of(brief.pressures(), brief.exchange(), brief.stint())) {
            assertThat(part.isThere()).isFalse();
            assertThat(part.problem()).isNotBlank();
            assertThat(part.remedy()).isNotBlank();
        }
        for (BriefResult.Part<?> part : List.of(
                brief.sensitivity(),
                brief.verdicts(),
                brief.suggestion(),
                brief.plan(),
                brief.wings(),
                brief.gearing(),
                brief.balance())) {
            assertThat(part.isThere()).as(part.problem()).isTrue();
        }
    }

    @Test
    void onlyACarWithoutALapStopsIt() {
        Car still = PlainCar.ofMass(1000).withoutDrive().car();
        Brief brief = Brief.of(still, StudyCars.straight(1000), BriefCars.DAY);
        assertThatThrownBy(() -> brief.run()).isInstanceOf(NoLapException.class);
    }

    @Test
    void theNumberOfThreadsChangesNothing() {
        BriefResult one = BriefCars.brief().run(StudyRun.onThreads(1));
        assertThat(one.sensitivity().value().orElseThrow().study().worths())
                .isEqualTo(sensitivity().study().worths());
        assertThat(one.suggestion().value().orElseThrow().setup())
                .isEqualTo(BRIEF.suggestion().value().orElseThrow().setup());
        assertThat(one.tests().value().orElseThrow().runs().stream().map(TestPlan.Run::changes))
                .isEqualTo(BRIEF.tests().value().orElseThrow().runs().stream()
                        .map(TestPlan.Run::changes)
                        .toList());
    }

    @Test
    void progressGoesFromNothingToAllAndNeverBack() {
        List<Integer> told = new ArrayList<>();
        BriefCars.brief().run(StudyRun.onAllCores().reporting((done, total) -> {
            assertThat(total).isEqualTo(100);
            told.add(done);
        }));
        assertThat(told).isSorted();
        assertThat(told.get(0)).isZero();
        assertThat(told.get(told.size() - 1)).isEqualTo(100);
    }

    @Test
    void badChoicesAreRefusedAtTheDoor() {
        Brief brief = BriefCars.brief();
        assertThatThrownBy(() -> brief.withScatter(0)).isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> brief.withLaps(3)).isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> brief.turning(List.of("rear-wnig"))).isInstanceOf(InvalidValueException.class);
    }

    @Test
    void theDayIsThatOfTheBrief() {
        Conditions wet = BriefCars.DAY.with("conditions.grip", 0.7);
        BriefResult brief = BriefCars.run(Brief.of(BriefCars.CAR, BriefCars.OVAL, wet));
        assertThat(brief.lap().time()).isGreaterThan(BRIEF.lap().time());
        assertThat(brief.sensitivity().value().orElseThrow().study().baseline().lapTime())
                .isEqualTo(brief.lap().time());
        assertThat(brief.gearing().value().orElseThrow().conditions()).isEqualTo(wet);
    }

    @Test
    void whatTheDriverSaysLeavesCarsThatGoWithIt() {
        double time = BriefCars.time(BriefCars.CAR);
        BriefResult told = BriefCars.run(BriefCars.brief()
                .withDraws(20)
                .hearing(List.of(new DriverWord.OfFigure(DriverWord.Reading.LAP_TIME, "", time, 0.01 * time))));
        Heard heard = told.heard().orElseThrow();
        assertThat(heard.left()).isEqualTo(20);
        assertThat(heard.drawn()).isGreaterThan(20);
        assertThat(heard.before().orElseThrow())
                .isNotEqualTo(told.plan().value().orElseThrow().doubt().orElseThrow());
        assertThat(BRIEF.heard()).isEmpty();
    }

    @Test
    void whatTheDriverSaysOfACornerThatIsNotThereStopsIt() {
        Brief brief =
                BriefCars.brief().hearing(List.of(DriverWord.OfFigure.of(DriverWord.Reading.MINIMUM_SPEED, "T9", 20)));
        assertThatThrownBy(() -> BriefCars.run(brief))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("T9");
    }

    /** A document without an adjustment of the final drive is tried with 12 % more, here beyond what a final drive may be. */
    @Test
    void aGearingThatCannotBeTriedIsMissingAloneAndSaysWhy() {
        Car car = StudyCars.winged(BriefCars.plain(), BriefCars.WING_DRAG, BriefCars.WING_LIFT)
                .with(Quantity.FINAL_DRIVE, 0.95 * Quantity.FINAL_DRIVE.max());
        BriefResult brief =
                BriefCars.run(Brief.of(car, BriefCars.OVAL, BriefCars.DAY).withDraws(0));
        assertThat(brief.gearing().isThere()).isFalse();
        assertThat(brief.gearing().problem()).contains("gearbox.finalDrive").contains("20");
        assertThat(brief.gearing().remedy()).isNotBlank();
        assertThat(brief.wings().isThere()).isTrue();
        assertThat(brief.sensitivity().isThere()).isTrue();
        assertThat(brief.stint().isThere()).isTrue();
    }
}
