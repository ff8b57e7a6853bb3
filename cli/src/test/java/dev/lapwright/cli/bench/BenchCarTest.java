package dev.lapwright.cli.bench;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.documents.Documents;
import java.io.IOException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The car on the sheet in a real browser, field by field. */
class BenchCarTest extends InTheBrowser {
    @BeforeEach
    void desk() throws IOException, InterruptedException {
        page.click("this car, field by field");
        page.await("document.getElementById('deskfind') !== null");
    }

    private void fill(String path, String text) throws IOException, InterruptedException {
        page.browser.value("(() => { const i = document.getElementById(`desk-" + path + "`); i.value = `" + text
                + "`; i.dispatchEvent(new Event('change')); return 0; })()");
    }

    private String wrong(String path) {
        return "[id=\"desk-" + path + "-wrong\"]";
    }

    @Test
    void everyFieldIsThereWithItsWorth() throws Exception {
        for (Quantity quantity : Quantity.values()) {
            assertThat(page.count("[id=\"desk-" + quantity.path() + "\"]"))
                    .as(quantity.path())
                    .isEqualTo(1);
        }
        page.audit();
        String mass = "document.getElementById('desk-chassis.massKg').closest('.deskrow').textContent";
        assertThat((String) page.browser.value(mass))
                .contains("50 to 40000")
                .matches("(?s).*\\+0\\.\\d{3}±0\\.\\d{3}.*");
        // Those whose doubt is worth most first: the figures fall.
        page.browser.value("document.getElementById('deskworth').click()");
        page.await("document.querySelector('.desk details') === null");
        assertThat(page.browser.value(
                        "(() => { const all = [...document.querySelectorAll('.desk .deskrow:not(.deskhead)"
                                + " .figure + .figure')].map((e) => Number(e.textContent.slice(1)));"
                                + " return all.length > 10 && all.every((v, i) => i === 0 || v <= all[i - 1]); })()"))
                .isEqualTo(true);
        page.clean();
    }

    @Test
    void aChangeIsDrivenAndKept() throws Exception {
        fill("chassis.massKg", "heavy");
        page.awaitText(wrong("chassis.massKg"), "give 50 to 40000 kg");
        assertThat(page.count(".desk [aria-invalid]")).isEqualTo(1);
        fill("chassis.massKg", "320");
        page.awaitText("#desksaid", "slower than the one on the sheet");
        assertThat(page.count(".desk [aria-invalid]")).isZero();
        fill("doubt.chassis.massKg", "0.2 % weighed");
        fill("name", "Pipit weighed");
        page.type("deskfile", "weighed");
        page.click("keep it and drive");
        page.await("document.title.includes('Pipit weighed')");
        page.awaitText("#desksaid", "Wrote ");
        Car kept = Documents.car(page.folder.resolve("weighed.json").toString());
        assertThat(kept.value(Quantity.MASS)).isEqualTo(320);
        assertThat(kept.doubt().quantities()).containsKey("chassis.massKg");
        assertThat(page.browser.value("document.getElementById('desk-chassis.massKg').value"))
                .isEqualTo("320");
        // Nothing is written over.
        page.type("deskfile", "weighed");
        page.click("keep it and drive");
        page.awaitText("#desksaid", "left alone");
        page.clean();
    }
}
