package dev.lapwright.results;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.lap.Limit;
import dev.lapwright.study.opinion.SecondOpinionResult;
import dev.lapwright.study.robust.RobustnessResult.Standing;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is said of a recommendation that the fuller model was asked about. */
class ModelCheckTest {
    private static ModelCheck check(double fast, double fuller, double doubt) {
        SecondOpinionResult.Place corner = new SecondOpinionResult.Place(
                "T3 Alder", true, 0, Math.copySign(0.1, fuller - fast), Limit.REAR_GRIP, Limit.FRONT_GRIP);
        return new ModelCheck(
                "front-bar 6",
                new SecondOpinionResult.Opinion("front-bar 6", fast, fuller, List.of(corner), Map.of()),
                Optional.empty(),
                drawn(fast, doubt));
    }

    private static Optional<Standing> drawn(double middle, double half) {
        return Double.isNaN(half)
                ? Optional.empty()
                : Optional.of(new Standing(100, middle - half, middle, middle + half, 90, 50, 0));
    }

    @Test
    void aGainThatBothSeeIsSaidToBeThat() {
        assertThat(check(-0.2, -0.1, 0.05).reading("it"))
                .contains(
                        "it is 0.10 s faster: both models call it a gain",
                        "Either model counted alike, it makes -0.24 to -0.06 s");
    }

    @Test
    void whatTheFullerModelDeniesIsNotRecommendedAndWhereTheyPartIsSaid() {
        assertThat(check(-0.2, 0.1, 0.05).reading("it"))
                .contains("it is 0.10 s slower, by the fast one 0.20 s faster", "further apart than what is in doubt")
                .contains("T3 Alder, where the fuller one is limited by front grip and the fast one by rear grip")
                .contains("Not recommended");
        assertThat(check(-0.2, 0.1, Double.NaN).reading("it"))
                .contains("Not recommended")
                .doesNotContain("in doubt")
                .doesNotContain("counted alike");
    }

    @Test
    void withinTheDoubtItStaysOpen() {
        assertThat(check(-0.2, 0.1, 0.4).reading("it"))
                .contains("try both on track")
                .doesNotContain("Not recommended");
    }

    @Test
    void withoutAWordItSaysWhy() {
        ModelCheck none = new ModelCheck(
                "it",
                new SecondOpinionResult.Opinion("it", -0.1, Double.NaN, List.of(), Map.of()),
                Optional.of("tyres.frictionExponent: 3"),
                drawn(-0.1, 0.1));
        assertThat(none.reading("it")).contains("no second opinion", "tyres.frictionExponent");
        assertThat(none.tree()).containsEntry("differenceFullerS", null).containsEntry("verdict", "unknown");
    }
}
