package dev.lapwright.brief;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.study.compare.Comparison;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationResult;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The suggested setup and the reasons for its changes. */
class SuggestionTest {
    /** Sums and differences of lap times in double precision. */
    private static final double ROUNDING = 1e-9;

    private static final BriefResult BRIEF = BriefCars.run(BriefCars.brief());
    private static final SuggestedSetup SUGGESTED = BRIEF.suggestion().value().orElseThrow();

    private static BriefResult.ChangeEffect undone(int index) {
        return SUGGESTED.changes().get(index).undone().value().orElseThrow();
    }

    private static BriefResult.ChangeEffect alone(int index) {
        return SUGGESTED.changes().get(index).alone().value().orElseThrow();
    }

    @Test
    void whatIsTurnedIsWhatTheSensitivityFindsWorthChanging() {
        assertThat(SUGGESTED.chosen()).isTrue();
        assertThat(SUGGESTED.study().search().axes().stream().map(OptimisationResult.Axis::name))
                .containsExactlyInAnyOrderElementsOf(BRIEF.sensitivity().value().orElseThrow().worthChanging().stream()
                        .map(worth -> worth.adjustment().name())
                        .toList());
    }

    @Test
    void itIsTheSetupWithTheFewestChangesOfTheStudyAskedDirectly() {
        OptimisationResult direct = Optimisation.of(BriefCars.CAR, BriefCars.OVAL, BriefCars.DAY)
                .over(List.of("wing", "final-drive"))
                .run();
        for (int i = 0; i < direct.search().axes().size(); i++) {
            assertThat(SUGGESTED.car().setting(direct.search().axes().get(i).name()))
                    .isEqualTo(direct.nearOptimal().fewest().settings().get(i));
        }
        assertThat(SUGGESTED.effect().difference())
                .isCloseTo(direct.difference(direct.nearOptimal().fewest()), within(ROUNDING));
    }

    @Test
    void theSetupMakesTheSuggestedCarOfTheCarAsItStands() {
        assertThat(BriefCars.time(BriefCars.CAR.with(SUGGESTED.setup()))).isEqualTo(BriefCars.time(SUGGESTED.car()));
    }

    @Test
    void undoingAllChangesGivesTheWholeDifferenceBack() {
        Car car = SUGGESTED.car();
        for (SuggestedSetup.Change change : SUGGESTED.changes()) {
            car = car.with(change.change().adjustment().name(), change.change().from());
        }
        assertThat(BriefCars.time(SUGGESTED.car()) - BriefCars.time(car))
                .isCloseTo(SUGGESTED.effect().difference(), within(ROUNDING));
    }

    /** What one does by itself and what the other adds to it are the whole: a telescoping sum. */
    @Test
    void oneChangeAloneAndTheOtherOnTopOfItAreTheWhole() {
        assertThat(SUGGESTED.changes()).hasSize(2);
        assertThat(alone(0).difference() + undone(1).difference())
                .isCloseTo(SUGGESTED.effect().difference(), within(ROUNDING));
        assertThat(alone(1).difference() + undone(0).difference())
                .isCloseTo(SUGGESTED.effect().difference(), within(ROUNDING));
    }

    /** With two changes, what they do together is what one alone does beyond what it adds to the other. */
    @Test
    void whatTheChangesDoTogetherIsSeenFromEitherSide() {
        assertThat(SUGGESTED.together())
                .isCloseTo(alone(0).difference() - undone(0).difference(), within(ROUNDING));
        assertThat(SUGGESTED.together())
                .isCloseTo(alone(1).difference() - undone(1).difference(), within(ROUNDING));
    }

    @Test
    void theChangeWorthMostComesFirst() {
        assertThat(undone(0).difference()).isLessThanOrEqualTo(undone(1).difference());
    }

    @Test
    void noChangeIsWorthLessThanWhatCounts() {
        // Less would have been put back: the setup with the fewest changes may lose this much against the best.
        assertThat(SUGGESTED.leftToBest()).isBetween(-LapTimeDifference.COUNTS, ROUNDING);
        for (int i = 0; i < SUGGESTED.changes().size(); i++) {
            assertThat(undone(i).difference() + SUGGESTED.leftToBest())
                    .isLessThan(-LapTimeDifference.COUNTS + ROUNDING);
        }
    }

    @Test
    void sectorsPlacesAndCausesEachAddUpToTheDifference() {
        BriefResult.ChangeEffect effect = undone(0);
        assertThat(effect.bySector().stream()
                        .mapToDouble(difference -> difference)
                        .sum())
                .isCloseTo(effect.difference(), within(ROUNDING));
        assertThat(effect.places().stream()
                        .mapToDouble(Comparison.Part::difference)
                        .sum())
                .isCloseTo(effect.difference(), within(ROUNDING));
        assertThat(effect.byCause().values().stream()
                        .mapToDouble(difference -> difference)
                        .sum())
                .isCloseTo(effect.difference(), within(ROUNDING));
        assertThat(effect.inCorners() + effect.onStraights()).isCloseTo(effect.difference(), within(ROUNDING));
    }

    @Test
    void theMainSectorBecomesFasterByMost() {
        List<Double> differences = SUGGESTED.effect().bySector();
        assertThat(differences.get(SUGGESTED.effect().mainSector() - 1))
                .isEqualTo(differences.stream()
                        .mapToDouble(difference -> difference)
                        .min()
                        .orElseThrow());
    }

    @Test
    void whatIsNamedAloneIsTurned() {
        SuggestedSetup named = BriefCars.run(BriefCars.brief().turning(List.of("wing")))
                .suggestion()
                .value()
                .orElseThrow();
        assertThat(named.chosen()).isFalse();
        assertThat(named.changes().stream()
                        .map(change -> change.change().adjustment().name()))
                .containsExactly("wing");
        assertThat(named.car().setting("final-drive")).isEqualTo(BriefCars.CAR.setting("final-drive"));
    }

    /** The suggestion's own suggestion is to leave it: nothing was left that counts. */
    @Test
    void aCarThatStandsAsSuggestedIsLeftAsItStands() {
        BriefResult again = BriefCars.run(
                Brief.of(SUGGESTED.car(), BriefCars.OVAL, BriefCars.DAY).turning(List.of("wing", "final-drive")));
        assertThat(again.suggestion().value().orElseThrow().changes()).isEmpty();
        assertThat(again.tests().isThere()).isFalse();
        assertThat(again.tests().problem()).contains("no change to test");
    }

    /** With this rev limit less wing alone only meets it sooner, and a longer final drive alone only loses force. */
    @Test
    void whatIsFasterOnlyTogetherIsFound() {
        BriefResult brief = BriefCars.run(Brief.of(BriefCars.car(BriefCars.plain(45)), BriefCars.OVAL, BriefCars.DAY));
        assertThat(brief.sensitivity().value().orElseThrow().worthChanging()).isEmpty();
        SuggestedSetup suggested = brief.suggestion().value().orElseThrow();
        assertThat(suggested.changes()).hasSize(2);
        for (SuggestedSetup.Change change : suggested.changes()) {
            assertThat(change.alone().value().orElseThrow().difference()).isPositive();
        }
        assertThat(suggested.effect().difference()).isLessThan(-LapTimeDifference.COUNTS);
        assertThat(brief.tests().value().orElseThrow().runs()).hasSize(1);
    }
}
