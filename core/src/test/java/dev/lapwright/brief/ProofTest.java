package dev.lapwright.brief;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What laps prove, beside what the model expected. */
class ProofTest {
    private static final Car CAR = BriefCars.CAR;
    private static final double LESS = BriefCars.time(CAR.with("wing", 0));
    private static final double MORE = BriefCars.time(CAR.with("wing", 8));

    private static final TimingLog WINGS = BriefCars.log(List.of("wing=0", "wing=8", "wing=0"), LESS, MORE, LESS);

    private static BriefResult.Part<Proof> proof(TimingLog log) {
        return proof(log, 0);
    }

    /** @param draws cars drawn to doubt what is expected; 0 for none, which take 35 % of it */
    private static BriefResult.Part<Proof> proof(TimingLog log, int draws) {
        BriefDoubt doubt = new BriefDoubt(
                CAR, BriefCars.OVAL, BriefCars.DAY, draws, List.of(), StudyMemory.NONE, StudyRun.onThreads(2));
        return new LapProof(BriefCars.brief().after(log).choices.logged(), laps(), doubt).proof();
    }

    private static BriefLaps laps() {
        return new BriefLaps(CAR, BriefCars.OVAL, BriefCars.DAY);
    }

    private static Proof there(TimingLog log) {
        return proof(log).value().orElseThrow();
    }

    @Test
    void theWayBackIsNoChangeOfItsOwn() {
        assertThat(there(WINGS).changes()).hasSize(1);
        assertThat(there(WINGS).changes().get(0).before()).isEqualTo("wing=0");
        assertThat(there(WINGS).changes().get(0).after()).isEqualTo("wing=8");
    }

    @Test
    void theModelExpectsTheDifferenceOfTheLapsSoSet() {
        // Double precision.
        assertThat(there(WINGS)
                        .changes()
                        .get(0)
                        .expected()
                        .value()
                        .orElseThrow()
                        .difference())
                .isCloseTo(MORE - LESS, within(1e-9));
    }

    /** The laps were made of the model's own times with a scatter far below their difference. */
    @Test
    void lapsMadeFromTheModelAgreeWithIt() {
        Proof.Change change = there(WINGS).changes().get(0);
        assertThat(Math.abs(LESS - MORE)).isGreaterThan(0.2);
        assertThat(change.agrees()).contains(true);
        // Three runs cannot tell a change of this size from what runs differ by.
        assertThat(change.comparison().orElseThrow().verdict().finding()).isEqualTo(EvidenceResult.Finding.OPEN);
        assertThat(change.difference().orElseThrow().once().holds(MORE - LESS)).isTrue();
    }

    @Test
    void lapsThatGoTheOtherWayDoNotAgree() {
        TimingLog log = BriefCars.log(List.of("wing=0", "wing=8", "wing=0"), MORE, LESS, MORE);
        assertThat(there(log).changes().get(0).agrees()).contains(false);
    }

    @Test
    void whatTheLapsSayIsWhatEvidenceSaysAskedDirectly() {
        EvidenceResult direct = Evidence.DEFAULT
                .between("wing=0", "wing=8")
                .predicting(MORE - LESS)
                .run(WINGS);
        assertThat(there(WINGS).paces()).isEqualTo(direct.paces());
        assertThat(there(WINGS).changes().get(0).difference())
                .contains(direct.comparison().orElseThrow().difference().orElseThrow());
    }

    @Test
    void namesThatDoNotSayWhatWasSetAreComparedButNotExpected() {
        Proof.Change change = there(BriefCars.log(List.of("old", "new"), LESS, MORE))
                .changes()
                .get(0);
        assertThat(change.difference()).isPresent();
        assertThat(change.expected().isThere()).isFalse();
        assertThat(change.expected().problem()).contains("old");
        assertThat(change.expected().remedy()).contains("wing=");
        assertThat(change.agrees()).isEmpty();
    }

    @Test
    void threeSetupsMakeAChangeOfEachTwoThatFollowEachOther() {
        TimingLog log = BriefCars.log(List.of("wing=0", "wing=8", "wing=8,final-drive=5"), LESS, MORE, MORE);
        List<Proof.Change> changes = there(log).changes();
        assertThat(changes).hasSize(2);
        assertThat(changes.get(1).expected().value().orElseThrow().difference())
                .isCloseTo(BriefCars.time(CAR.with("wing", 8).with("final-drive", 5)) - MORE, within(1e-9));
    }

    @Test
    void aLogOfOneSetupShowsItsPaceAndNoChange() {
        Proof proof = there(BriefCars.log(List.of("wing=5"), BriefCars.time(CAR)));
        assertThat(proof.changes()).isEmpty();
        assertThat(proof.paces()).hasSize(1);
        // The fastest of seven clean laps that scatter by 0.05 s: within four of that.
        assertThat(proof.ratio()).isCloseTo(1, within(0.2 / BriefCars.time(CAR)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.7, 1.4})
    void aLogOfAnotherCircuitIsRefusedWithBothTimes(double factor) {
        BriefResult.Part<Proof> proof = proof(BriefCars.log(List.of("a", "b"), factor * LESS, factor * MORE));
        assertThat(proof.isThere()).isFalse();
        assertThat(proof.problem()).contains("cannot be a log of this car at oval");
        assertThat(proof.remedy()).contains("give a log of this circuit");
    }

    @Test
    void aLogOfAnotherCircuitLeavesTheRestOfTheBrief() {
        TimingLog foreign = BriefCars.log(List.of("a", "b"), 3 * LESS, 3 * MORE);
        BriefResult brief = BriefCars.run(BriefCars.brief().after(foreign));
        assertThat(brief.debrief().proof().isThere()).isFalse();
        assertThat(brief.suggestion().isThere()).isTrue();
        assertThat(brief.tests().isThere()).isTrue();
    }

    /** Nothing could be carried on from a setup that the car cannot be in. */
    @ParameterizedTest
    @CsvSource({"wing=50, 50", "wnig=5, perhaps"})
    void whatTheCarCannotBeSetToIsRefusedByName(String name, String told) {
        BriefResult.Part<Proof> proof = proof(BriefCars.log(List.of("wing=5", name), LESS, MORE));
        assertThat(proof.isThere()).isFalse();
        assertThat(proof.problem() + proof.remedy())
                .contains("'" + name + "' of the log")
                .contains(told);
    }

    /** As on a run card: the old setup back, then both changes at once. The second is held against the first, not against the old one. */
    @Test
    void aSetupIsHeldAgainstTheOneFromWhichItTakesTheFewestTurns() {
        List<String> setups = List.of("base", "wing=8", "base", "wing=8,final-drive=5");
        List<Proof.Change> changes =
                there(BriefCars.log(setups, LESS, MORE, LESS, MORE)).changes();
        assertThat(changes.stream().map(Proof.Change::before)).containsExactly("base", "wing=8");
        assertThat(changes.stream().map(Proof.Change::after)).containsExactly("wing=8", "wing=8,final-drive=5");
    }

    /** The setups of {@link #WINGS}: less is faster by some tenths, of which three runs make nothing certain, but the model does. */
    @Test
    void togetherIsBetweenWhatWasExpectedAndWhatWasSeenAndKnownBetterThanEither() {
        Proof.Change change = proof(WINGS, 40).value().orElseThrow().changes().get(0);
        double expected = change.expected().value().orElseThrow().difference();
        double seen = change.difference().orElseThrow().mean();
        double deviation = change.doubt().orElseThrow().deviation();
        assertThat(deviation).isPositive();
        assertThat(change.together().orElseThrow().mean())
                .isBetween(Math.min(expected, seen), Math.max(expected, seen));
        assertThat(change.together().orElseThrow().deviation()).isLessThan(deviation);
    }

    @Test
    void whatIsFasterByNineChancesInTenIsKeptAndTheOppositePutBack() {
        // Away from less wing, which the model and the laps find faster, and towards it.
        Proof away = there(WINGS);
        Proof towards = there(BriefCars.log(List.of("wing=8", "wing=0", "wing=8"), MORE, LESS, MORE));
        assertThat(Math.signum(MORE - LESS)).isEqualTo(1);
        assertThat(away.changes().get(0).fate()).isEqualTo(Proof.Fate.PUT_BACK);
        assertThat(away.kept()).isEqualTo("wing=0");
        assertThat(towards.changes().get(0).fate()).isEqualTo(Proof.Fate.KEEP);
        assertThat(towards.kept()).isEqualTo("wing=0");
    }

    @Test
    void tooFewLapsLeaveItOpenAndTheOldSetupKept() {
        TimingLog log = TimingLog.of(List.of(
                new TimingLog.Lap(1, MORE, "wing=8", "", TimingLog.Flag.NONE),
                new TimingLog.Lap(2, MORE, "wing=8", "", TimingLog.Flag.NONE),
                new TimingLog.Lap(3, LESS, "wing=0", "", TimingLog.Flag.NONE),
                new TimingLog.Lap(4, LESS, "wing=0", "", TimingLog.Flag.NONE)));
        assertThat(there(log).changes().get(0).fate()).isEqualTo(Proof.Fate.OPEN);
        assertThat(there(log).kept()).isEqualTo("wing=8");
    }

    /** 21 laps in three runs of {@link BriefCars#log}, drawn with 0.05 s: within a half of it, as its own error is a sixth. */
    @Test
    void theScatterIsThatOfTheLaps() {
        assertThat(there(WINGS).scatter().orElseThrow()).isCloseTo(0.05, within(0.025));
    }

    @Test
    void withoutALogTheNextStepIsNamed() {
        BriefResult.Part<Proof> proof = new LapProof(
                        BriefChoices.Logged.NOTHING,
                        laps(),
                        new BriefDoubt(
                                CAR,
                                BriefCars.OVAL,
                                BriefCars.DAY,
                                0,
                                List.of(),
                                StudyMemory.NONE,
                                StudyRun.onThreads(1)))
                .proof();
        assertThat(proof.isThere()).isFalse();
        assertThat(proof.remedy()).contains("log");
    }
}
