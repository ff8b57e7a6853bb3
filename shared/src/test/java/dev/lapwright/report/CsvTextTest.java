package dev.lapwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class CsvTextTest {
    /** The beginnings that OWASP lists under "CSV Injection", and its remedy of an apostrophe. */
    @Test
    void aTextThatASpreadsheetWouldRunIsHeldByAnApostrophe() {
        CsvText csv = new CsvText();
        csv.row(List.of("=1+1", "+cmd|'/c calc'!A0", "-2+3", "@SUM(A1)", "\t=1", "\r=1", "\uFF1D1"));
        assertThat(csv.text()).isEqualTo("'=1+1,'+cmd|'/c calc'!A0,'-2+3,'@SUM(A1),'\t=1,\"'\r=1\",'\uFF1D1\n");
    }

    @Test
    void numbersAndOtherTextsStayAsTheyAre() {
        CsvText csv = new CsvText();
        csv.row(List.of("-2.5", "+3", "-1e-9", "a=b", "", "Wing -2"));
        assertThat(csv.text()).isEqualTo("-2.5,+3,-1e-9,a=b,,Wing -2\n");
    }
}
