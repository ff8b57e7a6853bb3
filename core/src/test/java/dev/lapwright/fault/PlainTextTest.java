package dev.lapwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.StringReader;
import java.util.Set;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.xml.sax.InputSource;

/** Held to the character data of the Java platform (Unicode Character Database) and to its reader of XML 1.0. */
class PlainTextTest {
    /**
     * Format characters that may stand: joiners (Unicode Standard 15.0, section 23.2), marks of direction (Unicode Standard
     * Annex 9, table 5), and those that are drawn or build what is drawn: prepended marks (property Prepended_Concatenation_Mark),
     * the Syriac abbreviation mark (section 9.3) and the joints of Egyptian hieroglyphs (section 11.4).
     */
    private static final Pattern MAY_STAND = Pattern.compile("[\\x{200c}\\x{200d}\\x{61c}\\x{200e}\\x{200f}"
            + "\\x{600}-\\x{605}\\x{6dd}\\x{70f}\\x{890}\\x{891}\\x{8e2}\\x{110bd}\\x{110cd}\\x{13430}-\\x{1343f}]");

    private static final Set<Integer> CATEGORIES =
            Set.of((int) Character.CONTROL, (int) Character.SURROGATE, (int) Character.LINE_SEPARATOR, (int)
                    Character.PARAGRAPH_SEPARATOR);

    @Test
    void everyCharacterIsRefusedOrNotByItsPropertiesInUnicode() {
        Pattern refused = Pattern.compile("[" + PlainText.REFUSED + "]");
        for (int c = 0; c <= Character.MAX_CODE_POINT; c++) {
            boolean expected = CATEGORIES.contains(Character.getType(c))
                    || (Character.getType(c) == Character.FORMAT
                            && !MAY_STAND.matcher(Character.toString(c)).matches())
                    || c == 0xfffe
                    || c == 0xffff;
            assertThat(PlainText.isRefused(c)).as("U+%04X", c).isEqualTo(expected);
            assertThat(refused.matcher(Character.toString(c)).matches())
                    .as("pattern, U+%04X", c)
                    .isEqualTo(expected);
        }
    }

    @Test
    void whatIsAcceptedMayStandInXml() throws Exception {
        StringBuilder all = new StringBuilder();
        for (int c = 0; c <= Character.MAX_CODE_POINT; c++) {
            if (!PlainText.isRefused(c) && c != '<' && c != '&' && c != '>') {
                all.appendCodePoint(c);
            }
        }
        String read = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader("<a>" + all + "</a>")))
                .getDocumentElement()
                .getTextContent();
        assertThat(read.equals(all.toString())).isTrue();
    }

    @Test
    void theFirstCharacterRefusedIsNamedWithItsPlace() {
        assertThat(PlainText.problem("Kühle Brise 🌬 от севера")).isEmpty();
        assertThat(PlainText.problem("🌬 a\u202Eb\u0007"))
                .contains("character 4 is U+202E (right-to-left override), which cannot be seen");
        assertThat(PlainText.problem("Anna\uFEFFberg"))
                .contains("character 5 is U+FEFF (zero width no-break space), which cannot be seen");
        assertThat(PlainText.problem("Flag \uDB40\uDC67"))
                .contains("character 6 is U+E0067 (tag latin small letter g), which cannot be seen");
        // A family of three, joined; Persian with a joint that parts letters; Hebrew with a mark before the sign.
        assertThat(
                        PlainText.problem(
                                "\uD83D\uDC68\u200D\uD83D\uDC69\u200D\uD83D\uDC67 \u0645\u06CC\u200C\u0634\u0648\u062F \u05D0\u200F!"))
                .isEmpty();
        assertThat(PlainText.problem("a\ud83c"))
                .contains("character 2 is U+D83C (half a pair of surrogates), which cannot be seen");
    }

    @Test
    void onlyATextOfSeveralLinesMayHaveEndsOfLines() {
        assertThat(PlainText.problem("two\r\n\tlines")).isPresent();
        assertThat(PlainText.problemInLines("two\r\n\tlines")).isEmpty();
        assertThat(PlainText.problemInLines("two\u2028lines")).isPresent();
        assertThat("two\r\n\tlines").matches("[^" + PlainText.REFUSED_IN_LINES + "]*");
    }

    @Test
    void aMarkStandsWhereSomethingCannotBeSeen() {
        assertThat(PlainText.shown("\u001B[31mred\u009B\u2066 \ud800.\uffff 🌬"))
                .isEqualTo("?[31mred?? ?.? 🌬");
    }

    @Test
    void aNameIsOneLineThatCanBeSeen() {
        assertThat(PlainText.checkedName("--name", "Harrow mère")).isEqualTo("Harrow mère");
        assertThatThrownBy(() -> PlainText.checkedName("--name", " \u3000"))
                .hasMessage("--name: it is blank; give it a name in one line");
        assertThatThrownBy(() -> PlainText.checkedName("--name", "\u200D \u200F"))
                .hasMessage("--name: it is blank; give it a name in one line");
        assertThatThrownBy(() -> PlainText.checkedName("--name", "a\u0000"))
                .hasMessage("--name: character 2 is U+0000 (null), which cannot be seen; leave it out");
    }
}
