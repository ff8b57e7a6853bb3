package dev.lapwright.charts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.charts.lap.GgDiagram;
import dev.lapwright.charts.lap.SpeedTrace;
import dev.lapwright.charts.lap.TrackMap;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.imageio.ImageIO;
import org.jfree.chart.JFreeChart;
import org.junit.jupiter.api.Test;

class ChartImageTest {
    private static final Lap LAP = Example.lap();

    private static JFreeChart chart() {
        return SpeedTrace.of(LAP, ChartStyle.STANDARD);
    }

    @Test
    void svgHasTheSizeAskedFor() {
        Drawn drawn = Drawn.of(chart(), new ImageSize(1000, 600));
        assertThat(drawn.root().getTagName()).isEqualTo("svg");
        assertThat(drawn.root().getAttribute("width")).isEqualTo("1000");
        assertThat(drawn.root().getAttribute("height")).isEqualTo("600");
    }

    @Test
    void svgCarriesTheHeadingAsItsTitle() {
        Drawn drawn = Drawn.of(chart(), SpeedTrace.SIZE);
        assertThat(drawn.elements("title").get(0).getTextContent()).isEqualTo("Speed trace: " + Example.CIRCUIT);
    }

    @Test
    void everyTextNamesTheGenericFamilyLast() {
        Drawn drawn = Drawn.of(chart(), SpeedTrace.SIZE);
        assertThat(drawn.elements("text"))
                .isNotEmpty()
                .allSatisfy(text ->
                        assertThat(text.getAttribute("style")).containsPattern("font-family: [^;]*sans-serif;"));
    }

    @Test
    void namedFontFallsBackToTheGenericFamily() {
        ChartStyle style = new ChartStyle(Palette.STANDARD, "No Such Font", 12);
        Drawn drawn = Drawn.of(SpeedTrace.of(LAP, style), SpeedTrace.SIZE);
        assertThat(drawn.elements("text"))
                .allSatisfy(text ->
                        assertThat(text.getAttribute("style")).containsPattern("font-family: [^;]*sans-serif;"));
    }

    /** SVG collapses runs of spaces, so a picture with them would differ from its PNG. */
    @Test
    void noTextReliesOnDoubleSpaces() {
        for (JFreeChart chart :
                List.of(chart(), TrackMap.of(LAP, ChartStyle.STANDARD), GgDiagram.of(LAP, ChartStyle.STANDARD))) {
            assertThat(Drawn.of(chart, SpeedTrace.SIZE).texts()).noneMatch(text -> text.contains("  "));
        }
    }

    @Test
    void svgHoldsNoPictureOfPixels() {
        assertThat(Drawn.of(TrackMap.of(LAP, ChartStyle.STANDARD), TrackMap.SIZE)
                        .elements("image"))
                .isEmpty();
    }

    @Test
    void sameLapGivesTheSameBytes() {
        Lap again = Example.lap();
        for (int i = 0; i < 2; i++) {
            assertThat(ChartImage.svg(SpeedTrace.of(again, ChartStyle.STANDARD), SpeedTrace.SIZE))
                    .isEqualTo(ChartImage.svg(chart(), SpeedTrace.SIZE));
            assertThat(ChartImage.svg(TrackMap.of(again, ChartStyle.STANDARD), TrackMap.SIZE))
                    .isEqualTo(ChartImage.svg(TrackMap.of(LAP, ChartStyle.STANDARD), TrackMap.SIZE));
        }
        assertThat(ChartImage.png(SpeedTrace.of(again, ChartStyle.STANDARD), SpeedTrace.SIZE, 1))
                .isEqualTo(ChartImage.png(chart(), SpeedTrace.SIZE, 1));
    }

    @Test
    void drawingTwiceGivesTheSameBytes() {
        JFreeChart chart = chart();
        byte[] first = ChartImage.svg(chart, SpeedTrace.SIZE);
        ChartImage.png(chart, new ImageSize(700, 500), 1);
        assertThat(ChartImage.svg(chart, SpeedTrace.SIZE)).isEqualTo(first);
    }

    @Test
    void stylesDoNotDisturbEachOther() {
        byte[] before = ChartImage.svg(chart(), SpeedTrace.SIZE);
        byte[] large = ChartImage.svg(SpeedTrace.of(LAP, ChartStyle.STANDARD.withTextSize(18)), SpeedTrace.SIZE);
        assertThat(large).isNotEqualTo(before);
        assertThat(ChartImage.svg(chart(), SpeedTrace.SIZE)).isEqualTo(before);
    }

    @Test
    void pngHasTheSizeTimesTheScale() throws IOException {
        byte[] png = ChartImage.png(chart(), new ImageSize(800, 500), 2);
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
        assertThat(image.getWidth()).isEqualTo(1600);
        assertThat(image.getHeight()).isEqualTo(1000);
    }

    @Test
    void pngIsPaperWithInkOnIt() throws IOException {
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(ChartImage.png(chart(), SpeedTrace.SIZE, 1)));
        int paper = Palette.STANDARD.background().getRGB();
        int inked = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                inked += image.getRGB(x, y) == paper ? 0 : 1;
            }
        }
        double share = (double) inked / (image.getWidth() * image.getHeight());
        assertThat(image.getRGB(2, 2)).isEqualTo(paper);
        // Shaded corners take most of it; a blank or a black picture would be far outside.
        assertThat(share).isBetween(0.05, 0.6);
    }

    @Test
    void suffixDecidesTheFormat() {
        byte[] svg = ChartImage.forFile("lap.SVG", chart(), SpeedTrace.SIZE, 1);
        byte[] png = ChartImage.forFile("lap.png", chart(), SpeedTrace.SIZE, 1);
        assertThat(new String(svg, StandardCharsets.UTF_8)).startsWith("<svg");
        // First bytes of every PNG: W3C Portable Network Graphics specification, section 5.2.
        assertThat(png).startsWith(0x89, 'P', 'N', 'G', 0x0D, 0x0A, 0x1A, 0x0A);
    }

    @Test
    void otherSuffixIsRefusedNamingTheTwo() {
        assertThatThrownBy(() -> ChartImage.forFile("lap.gif", chart(), SpeedTrace.SIZE, 1))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("lap.gif")
                .hasMessageContaining(".svg or .png");
    }

    @Test
    void scaleThatIsNoNumberIsRefused() {
        for (double scale : new double[] {Double.NaN, Double.POSITIVE_INFINITY, 0, -1, 100}) {
            assertThatThrownBy(() -> ChartImage.png(chart(), SpeedTrace.SIZE, scale))
                    .isInstanceOf(InvalidValueException.class)
                    .hasMessageContaining("picture scale");
        }
    }

    @Test
    void pictureTooLargeForMemoryIsRefused() {
        assertThatThrownBy(() -> ChartImage.png(chart(), new ImageSize(10_000, 10_000), 8))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("pixels");
    }

    @Test
    void pictureTooSmallToReadIsRefused() {
        assertThatThrownBy(() -> new ImageSize(100, 700))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("picture width")
                .hasMessageContaining("600 to 10000");
    }

    /** What JDK 17 throws on a machine without a font file; seen with /usr/share/fonts empty. */
    @Test
    void machineWithoutFontsGetsOneClearLine() {
        RuntimeException root =
                new RuntimeException("Fontconfig head is null, check your fonts or fonts configuration");
        InternalError thrown = new InternalError(new InvocationTargetException(root));
        assertThatThrownBy(() -> ChartImage.drawn(() -> {
                    throw thrown;
                }))
                .isInstanceOf(ChartException.class)
                .hasMessageStartingWith("fonts: ")
                .hasMessageContaining("Fontconfig head is null")
                .hasMessageContaining("fonts-dejavu-core")
                .hasMessageNotContaining("\n");
    }

    /** What JDK 17 throws without the FreeType library, first and at every later try. */
    @Test
    void machineWithoutFreeTypeGetsOneClearLine() {
        for (LinkageError thrown : List.of(
                new UnsatisfiedLinkError("libfreetype.so.6: cannot open shared object file"),
                new NoClassDefFoundError("Could not initialize class sun.font.SunFontManager"))) {
            assertThatThrownBy(() -> ChartImage.drawn(() -> {
                        throw thrown;
                    }))
                    .isInstanceOf(ChartException.class)
                    .hasMessageContaining(thrown.getMessage());
        }
    }
}
