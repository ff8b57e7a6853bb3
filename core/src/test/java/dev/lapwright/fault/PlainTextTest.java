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
    /** The explicit formatting of Unicode Standard Annex 9, table 4. */
    private static final Set<Byte> FORMATTING = Set.of(
            Character.DIRECTIONALITY_LEFT_TO_RIGHT_EMBEDDING,
            Character.DIRECTIONALITY_RIGHT_TO_LEFT_EMBEDDING,
            Character.DIRECTIONALITY_LEFT_TO_RIGHT_OVERRIDE,
            Character.DIRECTIONALITY_RIGHT_TO_LEFT_OVERRIDE,
            Character.DIRECTIONALITY_POP_DIRECTIONAL_FORMAT,
            Character.DIRECTIONALITY_LEFT_TO_RIGHT_ISOLATE,
            Character.DIRECTIONALITY_RIGHT_TO_LEFT_ISOLATE,
            Character.DIRECTIONALITY_FIRST_STRONG_ISOLATE,
            Character.DIRECTIONALITY_POP_DIRECTIONAL_ISOLATE);

    private static final Set<Integer> CATEGORIES =
            Set.of((int) Character.CONTROL, (int) Character.SURROGATE, (int) Character.LINE_SEPARATOR, (int)
                    Character.PARAGRAPH_SEPARATOR);

    @Test
    void everyCharacterIsRefusedOrNotByItsPropertiesInUnicode() {
        Pattern refused = Pattern.compile("[" + PlainText.REFUSED + "]");
        for (int c = 0; c <= Character.MAX_CODE_POINT; c++) {
            boolean expected = CATEGORIES.contains(Character.getType(c))
                    || FORMATTING.contains(Character.getDirectionality(c))
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
        assertThatThrownBy(() -> PlainText.checkedName("--name", "a\u0000"))
                .hasMessage("--name: character 2 is U+0000 (null), which cannot be seen; leave it out");
    }
}
