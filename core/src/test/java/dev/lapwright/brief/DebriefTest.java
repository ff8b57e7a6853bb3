package dev.lapwright.brief;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Quantity;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fit.DrivenLap;
import dev.lapwright.fit.DrivenRun;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What comes of what was driven: the setup kept, and the car as far as it is known then. */
class DebriefTest {
    private static final Car CAR = BriefCars.CAR;
    private static final Car MORE = CAR.with("wing", 8);

    /** Less wing is the faster here. */
    private static final TimingLog TIMES = BriefCars.log(
            List.of("wing=8", "wing=0", "wing=8"),
            BriefCars.time(MORE),
            BriefCars.time(CAR.with("wing", 0)),
            BriefCars.time(MORE));

    private static Debrief debrief(Optional<TimingLog> times, DrivenRun... runs) {
        BriefLaps laps = new BriefLaps(MORE, BriefCars.OVAL, BriefCars.DAY);
        BriefDoubt none = new BriefDoubt(
                BriefCars.CAR, BriefCars.OVAL, BriefCars.DAY, 0, List.of(), StudyMemory.NONE, StudyRun.onThreads(1));
        return Debrief.of(
                laps,
                BriefCars.OVAL,
                new BriefChoices.Logged(List.of(), times, Evidence.DEFAULT, List.of(runs)),
                none,
                StudyMemory.NONE,
                StudyRun.onThreads(1));
    }

    /** A lap as a logger without noise would hold it. */
    private static DrivenRun run(Car set, Car truth) {
        Lap lap = LapSolver.lap(truth, BriefCars.OVAL, BriefCars.DAY);
        return new DrivenRun(
                set,
                BriefCars.DAY,
                List.of(DrivenLap.of("lap", lap.column(Channel.DISTANCE), lap.column(Channel.SPEED))));
    }

    @Test
    void beforeDrivingItIsTheCarAsItStands() {
        Debrief before = debrief(Optional.empty());
        assertThat(before.car()).isSameAs(before.given());
        assertThat(before.kept()).isEmpty();
        assertThat(before.proof().isThere()).isFalse();
        assertThat(before.fit().isThere()).isFalse();
        assertThat(before.fit().remedy()).isNotBlank();
    }

    @Test
    void theSetupThatIsKeptIsCarriedOn() {
        Debrief after = debrief(Optional.of(TIMES));
        assertThat(after.kept()).containsOnlyKeys("wing").containsEntry("wing", 0.0);
        assertThat(after.car().setting("wing")).isZero();
        assertThat(BriefCars.time(after.car())).isEqualTo(BriefCars.time(CAR.with("wing", 0)));
    }

    @Test
    void namesThatSayNothingLeaveTheCarAsItStoodAndThatIsSaid() {
        double more = BriefCars.time(MORE);
        double less = BriefCars.time(CAR.with("wing", 0));
        Debrief after =
                debrief(Optional.of(BriefCars.log(List.of("old", "new", "old", "new"), more, less, more, less)));
        assertThat(after.proof().value().orElseThrow().kept()).isEqualTo("new");
        assertThat(after.isKeptTold()).isFalse();
        assertThat(after.car()).isSameAs(after.given());
    }

    /** Driven by a car of nine tenths of the power: what is fitted, and how well it is known, goes into the car, set as it is kept. */
    @Test
    void whatIsFittedIsCarriedOnWithItsDoubtOnTheSetupThatIsKept() {
        Car truth = MORE.with(Quantity.POWER_SCALE, 0.9);
        Debrief after = debrief(Optional.of(TIMES), run(MORE, truth));
        assertThat(after.fit().problem()).isEmpty();
        assertThat(after.car().setting("wing")).isZero();
        CarDoubt doubt = after.car().doubt();
        assertThat(doubt.quantities().values())
                .anySatisfy(size -> assertThat(size.source()).isEqualTo(CarDoubt.Source.FITTED));
        double asGiven = BriefCars.time(CAR.with("wing", 0));
        double asItIs = BriefCars.time(truth.with("wing", 0));
        // The wing that was not driven is told by the model: to a tenth of what the fit had to find.
        assertThat(BriefCars.time(after.car())).isCloseTo(asItIs, within(0.1 * (asItIs - asGiven)));
    }

    /** What was set by hand and then fitted is not set back. */
    @Test
    void aQuantityThatWasSetByItsNameHasItsFittedValue() {
        Car set = MORE.with(Quantity.POWER_SCALE, 0.97);
        Car truth = MORE.with(Quantity.POWER_SCALE, 0.9);
        Debrief after = Debrief.of(
                new BriefLaps(set, BriefCars.OVAL, BriefCars.DAY),
                BriefCars.OVAL,
                new BriefChoices.Logged(List.of(), Optional.empty(), Evidence.DEFAULT, List.of(run(set, truth))),
                new BriefDoubt(
                        BriefCars.CAR,
                        BriefCars.OVAL,
                        BriefCars.DAY,
                        0,
                        List.of(),
                        StudyMemory.NONE,
                        StudyRun.onThreads(1)),
                StudyMemory.NONE,
                StudyRun.onThreads(1));
        assertThat(after.fit().problem()).isEmpty();
        // To a tenth of what the fit had to find.
        assertThat(BriefCars.time(after.car()))
                .isCloseTo(BriefCars.time(truth), within(0.1 * (BriefCars.time(truth) - BriefCars.time(set))));
        assertThat(after.car().setting("wing")).isEqualTo(8);
    }

    @Test
    void lapsOfAnotherCircuitLeaveTheCarAsItIsAndSayWhy() {
        Lap lap = LapSolver.lap(MORE, StudyCars.oval(900, 60), BriefCars.DAY);
        DrivenRun foreign = new DrivenRun(
                MORE,
                BriefCars.DAY,
                List.of(DrivenLap.of("lap", lap.column(Channel.DISTANCE), lap.column(Channel.SPEED))));
        Debrief after = debrief(Optional.empty(), foreign);
        assertThat(after.fit().isThere()).isFalse();
        assertThat(after.fit().problem()).isNotBlank();
        assertThat(after.car()).isSameAs(after.given());
    }
}
