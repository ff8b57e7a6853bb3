package dev.lapwright.cli.page;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.report.Table;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PageHtmlTest {
    private static final String EVIL = "<i>&\"'";

    private static String html(Page.Block... blocks) {
        return PageHtml.text(new Page(
                EVIL,
                List.of(new Page.Sheet(
                        "sheet",
                        EVIL,
                        List.of(new Page.Fact(EVIL, EVIL)),
                        List.of(new Page.Band(
                                List.of(Page.Block.paragraph(EVIL)), List.of(Page.Block.cautions(List.of(EVIL))))))),
                List.of(new Page.Section("one", EVIL, EVIL, List.of(blocks))),
                EVIL));
    }

    @Test
    void everyTextIsEscapedAndDrawingsAreNot() {
        Table<String> table = Table.<String>of(EVIL).words("", EVIL, row -> row).text(EVIL, EVIL, row -> row);
        String html = html(
                Page.Block.paragraph(EVIL),
                Page.Block.subheading(EVIL),
                Page.Block.list(List.of(EVIL, EVIL)),
                Page.Block.table(table, List.of(EVIL)),
                Page.Block.missing(EVIL, EVIL),
                Page.Block.terms(List.of(new Page.Fact(EVIL, EVIL))),
                Page.Block.shares(List.of(new Page.Share(EVIL, EVIL, "0%", "50%"))),
                Page.Block.figure(new Page.Figure("<svg><b/></svg>", null, false, EVIL)));
        assertThat(html).doesNotContain("<i>").contains("<svg><b/></svg>");
        // Title, heading of the sheet, two of a fact, a paragraph and a caution; heading, reading and footer;
        // then one, one, two, caption, two of the heading, label and two cells, two, two, two and one.
        assertThat(html.split("&lt;i&gt;&amp;", -1)).hasSizeGreaterThan(24);
    }

    @Test
    void aFigureWithoutANarrowDrawingIsLeftOutOnSmallScreens() {
        assertThat(html(Page.Block.figure(new Page.Figure("<svg></svg>", null, false, "c"))))
                .contains("<figure class=\"wide-only\">")
                .doesNotContain("class=\"narrow\"");
        assertThat(html(Page.Block.figure(new Page.Figure("<svg></svg>", "<svg></svg>", true, "c"))))
                .contains("<figure class=\"both tall\">")
                .contains("class=\"narrow\"");
    }

    @Test
    void aBandWithNothingBesideHasOneColumn() {
        Page.Sheet sheet = new Page.Sheet("a", "t", List.of(), List.of(Page.Band.of(Page.Block.paragraph("p"))));
        String html = PageHtml.text(new Page("t", List.of(sheet), List.of(), "f"));
        assertThat(html).contains("<div class=\"band\">").doesNotContain("band parted");
    }

    @Test
    void blankCellsAndBoxesTakeNoText() {
        Table<String> table = Table.<String>of("t")
                .boxes("done")
                .words("", "what", row -> row)
                .blank("seen", "s");
        assertThat(html(Page.Block.table(table, List.of("one"))))
                .contains("<td class=\"tick\" data-label=\"done\">")
                .contains("<th scope=\"row\">one</th>")
                .contains("<td class=\"write\" data-label=\"seen, s\">");
    }

    @Test
    void manyColumnsOrLongTextsBecomeCardsUnlessTheLesserAreLeftOut() {
        Table<String> six = Table.of("t");
        for (int i = 0; i < 6; i++) {
            six.text("n" + i, "", row -> row);
        }
        assertThat(LaidTable.of(six, List.of()).wide()).isTrue();
        assertThat(LaidTable.of(six.with(Table.Trait.LESSER), List.of()).wide()).isFalse();
        Table<String> words = Table.<String>of("t").words("", "w", row -> row).with(Table.Trait.LONG);
        assertThat(LaidTable.of(words, List.of()).wide()).isTrue();
    }

    /** Least contrast of graphics against what is behind them, WCAG 2.1, 1.4.11; texts are looked at in a browser. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void linesOfDrawingsStandOutInLightAndDark(boolean dark) {
        Map<String, String> colours = colours(dark);
        for (int i = 0; i < 6; i++) {
            assertThat(contrast(colours.get("chart-" + i), colours.get("chart-paper")))
                    .as("chart-%d", i)
                    .isGreaterThanOrEqualTo(3);
            assertThat(contrast(colours.get("chart-label-" + i), colours.get("chart-paper")))
                    .as("chart-label-%d", i)
                    .isGreaterThanOrEqualTo(4.5);
        }
        assertThat(contrast(colours.get("bar"), colours.get("soft"))).isGreaterThanOrEqualTo(3);
    }

    private static Map<String, String> colours(boolean dark) {
        String css = PageHtml.resource("page.css");
        int second = css.indexOf("@media screen and (prefers-color-scheme: dark)");
        String part = dark ? css.substring(second, css.indexOf("*, *::before")) : css.substring(0, second);
        Map<String, String> colours = new HashMap<>();
        Matcher matcher = Pattern.compile("--([a-z0-9-]+): (#[0-9a-f]{6});").matcher(part);
        while (matcher.find()) {
            colours.put(matcher.group(1), matcher.group(2));
        }
        return colours;
    }

    /** WCAG 2.1, definitions of contrast ratio and relative luminance. */
    private static double contrast(String a, String b) {
        double light = Math.max(luminance(a), luminance(b));
        double dark = Math.min(luminance(a), luminance(b));
        return (light + 0.05) / (dark + 0.05);
    }

    private static double luminance(String colour) {
        double sum = 0;
        double[] weights = {0.2126, 0.7152, 0.0722};
        for (int i = 0; i < 3; i++) {
            double c = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
            sum += weights[i] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
        }
        return sum;
    }
}
