package dev.lapwright.results;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** What is said of a recommendation that was checked on lines of their own. */
class LineCheckTest {
    private static LineCheck check(double held, double own) {
        return new LineCheck("rear-wing 8 deg", held, 90, 90 + own);
    }

    @Test
    void theSameChoiceIsSaidToBeThat() {
        LineCheck check = check(-0.2, -0.1);
        assertThat(check.isOtherChoice()).isFalse();
        assertThat(check.reading("it")).contains("it is 0.10 s faster", "the same choice");
        assertThat(check.difference()).isCloseTo(-0.1, within(1e-9));
    }

    @Test
    void aChoiceThatTurnsRoundIsPointedOutWithBothFigures() {
        LineCheck check = check(-0.2, 0.1);
        assertThat(check.isOtherChoice()).isTrue();
        assertThat(check.reading("it"))
                .contains("it is 0.10 s slower", "-0.20 s", "The choice differs", "the car as it stands is the better");
    }

    @Test
    void whereNothingIsLeftThatCountsThereIsLittleToChoose() {
        assertThat(check(-0.2, -0.01).isOtherChoice()).isTrue();
        assertThat(check(-0.2, -0.01).reading("it")).contains("little to choose");
        assertThat(check(-0.01, -0.2).reading("it")).contains("it is the better one there");
    }

    @Test
    void whereNeitherCountsThereIsNoChoiceToDiffer() {
        assertThat(check(-0.01, 0.01).isOtherChoice()).isFalse();
        assertThat(check(-0.01, 0.01).reading("it")).doesNotContain("choice");
    }
}
