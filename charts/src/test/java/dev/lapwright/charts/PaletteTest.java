package dev.lapwright.charts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.charts.ColourVision.Kind;
import dev.lapwright.fault.InvalidValueException;
import java.awt.Color;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PaletteTest {
    /** A difference of 2.3 is just noticed side by side (common practice, no source); thin lines apart need far more. */
    private static final double FAR_APART = 30;
    /** Seven of a hundred steps between black and white: seen in print between lines that do not touch; our choice. */
    private static final double LIGHTNESS_STEP = 7;
    /** Least contrast of graphics, WCAG 2.1 success criterion 1.4.11. */
    private static final double GRAPHICS_CONTRAST = 3;
    /** Least contrast of text, WCAG 2.1 success criterion 1.4.3. */
    private static final double TEXT_CONTRAST = 4.5;

    private static final Palette PALETTE = Palette.STANDARD;
    private static final List<Palette> ALL = List.of(Palette.STANDARD, Palette.DARK, Palette.PRINT);

    @Test
    void textAboutASeriesCanBeReadInEveryTheme() {
        for (Palette palette : ALL) {
            for (Color series : palette.series()) {
                assertThat(ColourVision.contrast(palette.label(series), palette.background()))
                        .isGreaterThanOrEqualTo(TEXT_CONTRAST);
                assertThat(ColourVision.contrast(palette.label(series), palette.band()))
                        .isGreaterThanOrEqualTo(TEXT_CONTRAST);
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void seriesColoursAreFarApartWithAnyTwoKindsOfCones(Kind kind) {
        List<Color> series = PALETTE.series();
        for (int i = 0; i < series.size(); i++) {
            for (int j = 0; j < i; j++) {
                assertThat(ColourVision.distance(series.get(i), series.get(j), kind))
                        .as("series %d and %d", i, j)
                        .isGreaterThan(FAR_APART);
            }
        }
    }

    @Test
    void noTwoSeriesColoursAreEquallyLightInGrey() {
        double[] lightness = PALETTE.series().stream()
                .mapToDouble(ColourVision::lightness)
                .sorted()
                .toArray();
        for (int i = 1; i < lightness.length; i++) {
            assertThat(lightness[i] - lightness[i - 1]).isGreaterThan(LIGHTNESS_STEP);
        }
    }

    @Test
    void seriesColoursStandOutFromThePaper() {
        for (Palette palette : ALL) {
            for (Color colour : palette.series()) {
                assertThat(ColourVision.contrast(colour, palette.background()))
                        .isGreaterThanOrEqualTo(GRAPHICS_CONTRAST);
            }
        }
    }

    @Test
    void textCanBeReadOnPaperAndOnShadedCorners() {
        for (Palette palette : ALL) {
            for (Color ground : List.of(palette.background(), palette.band())) {
                assertThat(ColourVision.contrast(palette.ink(), ground)).isGreaterThanOrEqualTo(TEXT_CONTRAST);
                assertThat(ColourVision.contrast(palette.muted(), ground)).isGreaterThanOrEqualTo(TEXT_CONTRAST);
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void rampGrowsLighterAllTheWayForEverybody(Kind kind) {
        double before = ColourVision.lab(PALETTE.rampAt(0), kind)[0];
        for (int i = 1; i <= 32; i++) {
            double here = ColourVision.lab(PALETTE.rampAt(i / 32.0), kind)[0];
            assertThat(here).as("step %d", i).isGreaterThan(before);
            before = here;
        }
    }

    @Test
    void rampSpansMostOfTheWayFromBlackToWhite() {
        double low = ColourVision.lightness(PALETTE.rampAt(0));
        double high = ColourVision.lightness(PALETTE.rampAt(1));
        assertThat(high - low).isGreaterThan(60);
    }

    @Test
    void equalStepsOnTheRampLookEqual() {
        int steps = 16;
        double[] distances = new double[steps];
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            distances[i] = ColourVision.distance(
                    PALETTE.rampAt((double) i / steps), PALETTE.rampAt((i + 1.0) / steps), Kind.ALL_CONES);
            sum += distances[i];
        }
        for (double distance : distances) {
            // Within a quarter of the mean: CIE 1976 distance itself is no closer to what people see.
            assertThat(distance).isCloseTo(sum / steps, within(0.25 * sum / steps));
        }
    }

    @Test
    void rampHoldsBeyondItsEnds() {
        assertThat(PALETTE.rampAt(-3)).isEqualTo(PALETTE.ramp().get(0));
        assertThat(PALETTE.rampAt(7))
                .isEqualTo(PALETTE.ramp().get(PALETTE.ramp().size() - 1));
    }

    @Test
    void coloursRepeatAfterTheLast() {
        assertThat(PALETTE.series(PALETTE.series().size())).isEqualTo(PALETTE.series(0));
    }

    @Test
    void paletteWithoutColoursIsRefused() {
        assertThatThrownBy(() -> new Palette(
                        List.of(), PALETTE.ramp(), Color.BLACK, Color.BLACK, Color.BLACK, Color.BLACK, Color.WHITE))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("series");
    }

    /** L*a*b* of the sRGB primaries under D65, as widely tabulated (from memory): red 53.24, 80.09, 67.20. */
    @Test
    void colourSpaceOfThisTestAgreesWithPublishedRed() {
        double[] red = ColourVision.lab(Color.RED, Kind.ALL_CONES);
        // The last digit printed.
        assertThat(red[0]).isCloseTo(53.24, within(0.01));
        assertThat(red[1]).isCloseTo(80.09, within(0.01));
        assertThat(red[2]).isCloseTo(67.20, within(0.01));
    }

    /** Viénot, Brettel and Mollon build their transforms so that white, and with it every grey, is seen as it is. */
    @ParameterizedTest
    @EnumSource(Kind.class)
    void simulationLeavesGreyGrey(Kind kind) {
        for (int level : new int[] {40, 128, 220}) {
            Color grey = new Color(level, level, level);
            double[] seen = ColourVision.lab(grey, kind);
            double[] is = ColourVision.lab(grey, Kind.ALL_CONES);
            for (int i = 0; i < 3; i++) {
                // Six digits in the published matrices leave some hundredths.
                assertThat(seen[i]).isCloseTo(is[i], within(0.1));
            }
        }
    }

    @Test
    void simulationMakesRedAndGreenOfOneLightnessAlike() {
        Color red = new Color(190, 60, 60);
        Color green = new Color(110, 110, 40);
        assertThat(ColourVision.distance(red, green, Kind.DEUTERANOPIA))
                .isLessThan(0.5 * ColourVision.distance(red, green, Kind.ALL_CONES));
    }
}
