package dev.lapwright.cli.brief;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.cli.Chromium;
import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.report.Numbers;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One page, looked at from many sides: by its text, and in a browser where the machine has one. */
@TestInstance(Lifecycle.PER_CLASS)
@Tag("heavy")
class BriefPageTest {
    private static final Pattern TAG = Pattern.compile("<[^>]*>");

    /** Text of less than 11 px as shown; that too little was looked at is a fault, too. Rounding takes a thousandth. */
    private static final String LETTERS = """
            (() => {
              document.documentElement.style.marginRight = 'BARpx';
              const shown = (e) => e.checkVisibility() && e.getClientRects().length > 0 && !e.closest('.unseen');
              const drawn = [...document.querySelectorAll('svg text')].filter(shown).map((t) => [t.textContent,
                parseFloat(getComputedStyle(t).fontSize) * Math.hypot(t.getScreenCTM().a, t.getScreenCTM().b)]);
              const written = [...document.querySelectorAll('body *')].filter((e) => shown(e) && !e.closest('svg')
                && [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim() !== ''))
                .map((e) => [e.textContent.trim(), parseFloat(getComputedStyle(e).fontSize)]);
              const few = drawn.length < 100 || written.length < 100 ? ['hardly any text: ' + drawn.length] : [];
              return few.concat([...drawn, ...written].filter(([, size]) => size < 10.999)
                .map(([text, size]) => size.toFixed(2) + ' px: ' + text));
            })()""";

    private Path folder;

    private Path file;
    private String page;
    private String text;
    private Map<String, Object> json;
    private String said;
    private Chromium browser;

    @BeforeAll
    void makeIt(@TempDir Path given) throws IOException {
        folder = given;
        Run run = Run.of(
                "brief",
                "gt-talvex",
                "castelvane",
                "-s",
                "rear-wing=0",
                "--after",
                "castelvane-wings.csv",
                "--after",
                "castelvane-laps.csv",
                "--with",
                "rear-wing=6",
                "--vary",
                "dive-planes,ride-height,lock-under-drive",
                "--draws",
                "20",
                "--out",
                folder.toString());
        assertThat(run.code()).as(run.err()).isZero();
        file = folder.resolve("brief-gt-talvex-castelvane.html");
        page = Files.readString(file);
        text = TAG.matcher(page.substring(page.indexOf("<body>")))
                .replaceAll(" ")
                .replaceAll("\\s+", " ")
                // As the template library writes a sign of equality, which a browser reads as one.
                .replace("&#x3D;", "=");
        json = JsonTree.object(Files.readString(folder.resolve("brief-gt-talvex-castelvane.json")));
        said = run.out();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Before you act on it: all cautions",
                "The circuit, and where the time goes",
                "What limits the car where",
                "What is worth changing, and what is not",
                "The fastest setup found beside the current one",
                "Wing, drag and grip",
                "Gearing",
                "Balance by phase of the corner",
                "Tyre pressures to start from",
                "Fuel for the race",
                "After driving: what the laps proved",
                "Words used here"
            })
    void everySectionIsThereAndFolded(String heading) {
        assertThat(page).contains("<summary><h2>" + heading + "</h2></summary>").doesNotContain("<details open");
    }

    @Test
    void everySectionBeginsWithHowToReadIt() {
        assertThat(
                        matches(
                                "<details id=\"([a-z-]+)\">\\s*<summary><h2>[^<]+</h2></summary>\\s*<p class=\"reading\">[^<]{40,}"))
                .hasSize(12);
    }

    @Test
    void theTwoSheetsComeFirst() {
        assertThat(matches("<section class=\"sheet\" id=\"([a-z]+)\">")).containsExactly("answer", "card");
        assertThat(page.indexOf("id=\"card\"")).isLessThan(page.indexOf("<details"));
    }

    /** As they are printed, in hundredths: nobody should find another sum than the one that stands there. */
    @Test
    void theGainsThatArePrintedAddUpToTheWhole() {
        List<Integer> gains = matches("data-label=\"Gain, s\" class=\"number\">\u2212(\\d+\\.\\d\\d)<").stream()
                .map(gain -> (int) Math.rint(100 * Double.parseDouble(gain)))
                .toList();
        assertThat(gains).hasSizeGreaterThan(1);
        int whole = gains.get(gains.size() - 1);
        assertThat(gains.subList(0, gains.size() - 1).stream()
                        .mapToInt(gain -> gain)
                        .sum())
                .isEqualTo(whole);
    }

    @Test
    @SuppressWarnings("unchecked")
    void pageTerminalAndJsonSayTheSameOfThePlan() {
        String reading = (String) JsonTree.object(json, "plan").get("reading");
        assertThat(reading).isNotBlank();
        String words = said.replaceAll("\\s+", " ").replace('\u2212', '-');
        assertThat(words).contains(reading.replace('\u00A0', ' ').replace('\u2212', '-'));
        List<Object> steps = (List<Object>) JsonTree.object(json, "plan").get("steps");
        assertThat(steps).isNotEmpty();
    }

    /** Each step of the plan, and the whole: the page's table, the JSON's numbers and the terminal's sentence are of one gain. */
    @Test
    @SuppressWarnings("unchecked")
    void pageTerminalAndJsonSayTheSameOfEachStep() {
        List<Object> steps = (List<Object>) JsonTree.object(json, "plan").get("steps");
        List<String> rows = matches("<tr[^>]*>(<th scope=\"row\">[^<]*</th><td data-label=\"Now \u2192 set\".*?)</tr>");
        assertThat(rows).hasSize(steps.size() + 1);
        String terminal = said.replaceAll("\\s+", " ");
        for (int i = 0; i < steps.size(); i++) {
            Map<String, Object> step = (Map<String, Object>) steps.get(i);
            String row = rows.get(i);
            assertThat(row)
                    .contains((i + 1) + ". ")
                    .contains(">" + step.get("why").toString() + "<");
            row = row.replace('\u00A0', ' ');
            numbersAre(row, step);
            for (Object one : (List<Object>) step.get("turns")) {
                Map<String, Object> turn = (Map<String, Object>) one;
                String from = Numbers.plain(((Number) turn.get("from")).doubleValue());
                String to = Numbers.plain(((Number) turn.get("to")).doubleValue());
                assertThat(row).contains(from + " \u2192 " + to);
                assertThat(terminal).contains("from " + from + " to " + to);
            }
            assertThat(terminal).contains("(" + cell(row, "Gain, s") + " s)");
        }
        Map<String, Object> whole = JsonTree.object(JsonTree.object(json, "plan"), "whole");
        String all = rows.get(steps.size());
        numbersAre(all, whole);
        assertThat(terminal)
                .contains((steps.size() > 1 ? "together " : "That is ") + cell(all, "Gain, s") + " s a lap, "
                        + cell(all, "Lap then, min:s"))
                .contains(cell(all, "Nine in ten, s") + " s in nine of ten of")
                .contains("faster on " + cell(all, "Gain on, % of cars") + " %");
    }

    /** A row of the page's plan against a step of the JSON, to the digits that are printed. */
    private static void numbersAre(String row, Map<String, Object> step) {
        // Gains are rounded so that their sum is the whole's: up to one unit of the last digit, a hundredth.
        assertThat(printed(cell(row, "Gain, s"))).isCloseTo(JsonTree.number(step, "differenceS"), within(0.0101));
        String[] ends = cell(row, "Nine in ten, s").split(" to ");
        // Half of the last digit, a hundredth.
        assertThat(printed(ends[0])).isCloseTo(JsonTree.number(step, "differenceLowS"), within(0.0051));
        assertThat(printed(ends[1])).isCloseTo(JsonTree.number(step, "differenceHighS"), within(0.0051));
        assertThat(printed(cell(row, "Gain on, % of cars")))
                .isCloseTo(100 * JsonTree.number(step, "chanceOfGain"), within(0.51));
        String time = cell(row, "Lap then, min:s");
        double seconds =
                60 * printed(time.substring(0, time.indexOf(':'))) + printed(time.substring(time.indexOf(':') + 1));
        assertThat(seconds).isCloseTo(JsonTree.number(step, "lapTimeS"), within(0.0101));
    }

    private static double printed(String number) {
        return Double.parseDouble(number.replace('\u2212', '-'));
    }

    private static String cell(String row, String label) {
        Matcher cell = Pattern.compile("data-label=\"" + Pattern.quote(label) + "\"[^>]*>([^<]*)<")
                .matcher(row);
        assertThat(cell.find()).as(label + " in " + row).isTrue();
        return cell.group(1);
    }

    /** Right, no difference, cannot be told and the others: the same adjustments in the same list under the same words. */
    @Test
    @SuppressWarnings("unchecked")
    void pageTerminalAndJsonSayTheSameOfTheLists() {
        Map<String, String> lists = Map.of(
                "gains", "A gain by itself",
                "alreadyRight", "Already right",
                "noDifference", "Makes no difference",
                "cannotBeTold", "Cannot be told",
                "notInThisModel", "Not in this model");
        Map<String, Object> verdicts = JsonTree.object(json, "verdicts");
        Car car = Documents.car("gt-talvex");
        String terminal = said.replaceAll("\\s+", " ");
        int told = ((List<Object>) verdicts.get("inThePlan")).size();
        for (Map.Entry<String, String> list : lists.entrySet()) {
            List<Object> names = (List<Object>) verdicts.get(list.getKey());
            told += names.size();
            List<String> page = matches("<dt>" + list.getValue() + "</dt><dd>([^<]*)</dd>");
            assertThat(page).as(list.getValue()).hasSize(names.isEmpty() ? 0 : 1);
            if (!names.isEmpty()) {
                assertThat(terminal).contains(list.getValue() + ": " + page.get(0));
                String words = page.get(0).toLowerCase(Locale.ROOT);
                for (Object name : names) {
                    String label = car.adjustment(name.toString()).label().toLowerCase(Locale.ROOT);
                    assertThat(words).contains(label.replaceAll(" \\(.*|,.*", ""));
                }
                assertThat(words.split(", | and ")).hasSameSizeAs(names);
            }
        }
        assertThat(told).isEqualTo(car.adjustments().size());
    }

    @Test
    void everyCornerAndEveryAdjustmentIsNamed() {
        LapSolver.lap(Documents.car("gt-talvex"), Documents.circuit("castelvane"), Conditions.STANDARD)
                .corners()
                .forEach(corner -> assertThat(text).contains(corner.corner().label()));
        Documents.car("gt-talvex")
                .adjustments()
                .forEach(adjustment -> assertThat(text).contains(adjustment.label()));
    }

    @Test
    void theTimesOfThePlacesAddUpToTheLap() {
        double sum = matches("<th scope=\"row\">T\\d+[^<]*</th><td data-label=\"Kind\"[^>]*>[^<]*</td>"
                        + "<td data-label=\"Begins at, m\"[^>]*>[^<]*</td><td data-label=\"Time, s\"[^>]*>([0-9.]+)")
                .stream()
                .mapToDouble(Double::parseDouble)
                .sum();
        double lap = JsonTree.number(JsonTree.object(json, "lap"), "lapTimeS");
        // 24 times in hundredths, each rounded by up to half of one.
        assertThat(sum).isCloseTo(lap, within(24 * 0.005));
    }

    @Test
    void cautionsStandBeforeAnyAdvice() {
        assertThat(page.indexOf("class=\"cautions\"")).isPositive().isLessThan(page.indexOf("id=\"setup\""));
        assertThat(text)
                .contains("rules of the event")
                .contains("A tyre run below its least pressure can come apart")
                .contains("A car that runs dry stops where it is")
                .contains("A floor that touches the road");
    }

    @Test
    void whatTheLapsProvedIsToldBesideWhatWasExpected() {
        assertThat(text).contains("rear-wing=7 against rear-wing=2").contains("Not decided: rear-wing=7 looks");
    }

    /** The first sheet, the terminal and the JSON say the same words of what was driven, and of what is known now. */
    @Test
    @SuppressWarnings("unchecked")
    void pageTerminalAndJsonSayTheSameOfWhatWasDriven() {
        List<Object> reading = (List<Object>) JsonTree.object(json, "debrief").get("reading");
        assertThat(reading).hasSize(3);
        String words = said.replaceAll("\\s+", " ").replace('\u2212', '-');
        for (Object sentence : reading) {
            assertThat(words).contains(sentence.toString().replace('\u2212', '-'));
            assertThat(text.replace('\u2212', '-')).contains(sentence.toString().replace('\u2212', '-'));
        }
    }

    /** The car that the rest is about is the one kept: the log's faster wing by more than nine chances in ten. */
    @Test
    void theNextPlanIsForTheCarAsItIsKeptAndFitted() {
        assertThat(JsonTree.object(json, "settings")).containsEntry("rear-wing", 7.0);
        assertThat(JsonTree.object(JsonTree.object(json, "debrief"), "keptSettings"))
                .containsEntry("rear-wing", 7.0);
        assertThat(text).contains("What is known of the car now").contains("told by the laps");
    }

    @Test
    void aTestRunHasABoxToTickAndFieldsToWriteIn() {
        assertThat(page).contains("class=\"tick\"").contains("class=\"write\"");
    }

    /** HTML 4.01, appendix B.7.1, and the attributes that fetch: nothing may lead out of the file. */
    @Test
    void nothingLeadsOutOfTheFile() {
        assertThat(page)
                .doesNotContainPattern("(?i)<(script|link|iframe|img|object|embed|base)\\b")
                .doesNotContainPattern("(?i)\\b(src|srcset|data|action|poster|background)=")
                .doesNotContainPattern("(?i)https?:|//[a-z]|@import|@font-face|url\\((?!#)")
                .doesNotContainPattern("href=\"(?!#)");
    }

    @Test
    void drawingsAreWellFormedAndHaveATitle() throws Exception {
        List<String> drawings = matches("(?s)(<svg .*?</svg>)");
        assertThat(drawings).hasSizeGreaterThan(8);
        for (String drawing : drawings) {
            assertThat(drawing).contains("role=\"img\"").containsPattern("<title id=\"[^\"]+\">[^<]+</title>");
            DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new ByteArrayInputStream(drawing.getBytes(StandardCharsets.UTF_8)));
        }
    }

    @Test
    void noIdentifierStandsTwice() {
        assertThat(matches("\\bid=[\"']([^\"']+)[\"']")).doesNotHaveDuplicates();
    }

    @Test
    void noColourOfADrawingIsFixed() {
        matches("(?s)(<svg .*?</svg>)").forEach(drawing -> assertThat(drawing).doesNotContain("rgb("));
    }

    @Test
    void nothingIsLeftOfTheTemplate() {
        assertThat(text).doesNotContainPattern("\\{\\{|\\bnull\\b|\\bNaN\\b|Infinity|Optional");
    }

    @Test
    void theJsonBesideItSaysTheSame() {
        assertThat(json).containsEntry("lapwright", "brief/2");
        double difference =
                JsonTree.number(JsonTree.object(JsonTree.object(json, "suggestion"), "together"), "differenceS");
        assertThat(text).contains(Numbers.fixed(-difference, 3) + " s faster, of which");
    }

    @Test
    void theTerminalTellsWhatItComesToAndWhereThePageIs() {
        assertThat(said).contains("Change ").contains("Caution:").contains("Wrote " + file);
    }

    @ParameterizedTest
    @CsvSource({"320, false", "360, false", "360, true", "800, false", "1200, false", "1200, true"})
    void inABrowserNothingOverflowsOverlapsOrIsHardToRead(int width, boolean dark)
            throws IOException, InterruptedException {
        browser().medium(dark, false);
        browser().width(width);
        openUnfolded();
        assertThat(browser().faults(Chromium.checks())).isEmpty();
        assertThat(browser().requests()).containsExactly(file.toUri().toString());
    }

    /**
     * Our own rule: 11 px, for text in pictures as they are shown. A scroll bar may take 17 px (that of Windows, from memory) of what
     * the page is laid out in, which a browser without bars is made to do by a margin.
     */
    @ParameterizedTest
    @ValueSource(ints = {0, 17})
    void lettersHaveElevenPixelsAtEveryWidth(int scrollBar) throws IOException, InterruptedException {
        browser().medium(false, false);
        browser().width(360);
        openUnfolded();
        List<Integer> widths =
                new ArrayList<>(List.of(361, 641, 790, 791, 801, 830, 831, 851, 910, 911, 941, 980, 981, 1001));
        for (int width = 360; width <= 1600; width += 80) {
            widths.add(width);
        }
        for (int width : widths) {
            browser().width(width);
            assertThat(browser().faults(LETTERS.replace("BAR", Integer.toString(scrollBar))))
                    .as("%d px wide, scroll bar %d px", width, scrollBar)
                    .isEmpty();
            assertThat(browser().value("document.documentElement.scrollWidth <= innerWidth"))
                    .as("nothing to scroll to sideways at %d px", width)
                    .isEqualTo(true);
        }
    }

    /** Our subject: what a driver carries in a pocket; what is unfolded is printed after them. */
    @Test
    void onPaperItIsLightAndTwoSheetsUnlessMoreIsUnfolded() throws IOException, InterruptedException {
        browser().medium(true, true);
        // The width between the margins of an A4 sheet (ISO 216: 210 mm), 184 mm at 96 px to 25.4 mm.
        browser().width(695);
        browser().open(file);
        assertThat(browser().faults(Chromium.checks())).isEmpty();
        assertThat(browser().faults("[getComputedStyle(document.body).backgroundColor]"))
                .containsExactly("rgb(255, 255, 255)");
        assertThat(sheets()).isEqualTo(2);
        openUnfolded();
        assertThat(browser().faults(Chromium.checks())).isEmpty();
        assertThat(sheets()).isBetween(6, 20);
    }

    private int sheets() throws IOException, InterruptedException {
        return count(new String(browser().paper(), StandardCharsets.ISO_8859_1), "/Type\\s*/Page\\b");
    }

    /** The script must find what is wrong, or finding nothing would prove nothing. */
    @Test
    void theChecksFindWhatIsWrong() throws IOException, InterruptedException {
        Path bad = folder.resolve("bad.html");
        Files.writeString(
                bad,
                "<!DOCTYPE html><meta name='viewport' content='width=device-width'><body style='background:#fff'>"
                        + "<p style='width:700px'>wide</p><p></p><p>{{name}} null</p><p style='color:#999'>pale</p>"
                        + "<p style='margin-top:-36px;height:0'>upon another</p>"
                        + "<svg style='width:200px;height:40px'><title>t</title><text x='5' y='20'>one</text>"
                        + "<text x='9' y='20'>two</text><text x='190' y='20'>outside of it</text></svg>");
        browser().medium(false, false);
        browser().width(360);
        browser().open(bad);
        assertThat(String.join("\n", browser().faults(Chromium.checks())))
                .contains("beyond the screen")
                .contains("empty: p")
                .contains("left over: p")
                .contains("contrast 2.85")
                .contains("lies upon p")
                .contains("\"two\" lies upon \"one\"")
                .contains("outside its drawing");
    }

    /** The page with all that is folded unfolded. */
    private void openUnfolded() throws IOException, InterruptedException {
        browser().open(file);
        browser().faults("(document.querySelectorAll('details').forEach((d) => d.open = true), [])");
    }

    private Chromium browser() throws IOException, InterruptedException {
        if (browser == null) {
            browser = new Chromium();
        }
        return browser;
    }

    @AfterAll
    void closeTheBrowser() throws IOException {
        if (browser != null) {
            browser.close();
        }
    }

    private static int count(String whole, String pattern) {
        return (int) Pattern.compile(pattern).matcher(whole).results().count();
    }

    private List<String> matches(String pattern) {
        Matcher matcher = Pattern.compile(pattern).matcher(page);
        List<String> found = new ArrayList<>();
        while (matcher.find()) {
            found.add(matcher.group(1));
        }
        return found;
    }
}
