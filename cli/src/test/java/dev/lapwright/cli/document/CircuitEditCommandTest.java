package dev.lapwright.cli.document;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import dev.lapwright.documents.Documents;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.nio.file.Path;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CircuitEditCommandTest {
    @TempDir
    private Path folder;

    @Test
    void theDocumentWrittenHasTheRadiusAndCanBeRead() {
        String out = folder.resolve("mine.json").toString();
        Run run = Run.of("circuit", "edit", "castelvane", "--radius", "T3=45", "--bank", "3=4", "--out", out);
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.line("T3")).contains("radius 45.0 m");
        Track track = Documents.circuit(out);
        // The digits of the document, and the hundredth that spreading a heading's rounding may cost.
        assertThat(track.stations(StationSpacing.DEFAULT).corners().get(2).minimumRadius())
                .isCloseTo(45, Offset.offset(0.05));
    }

    @Test
    void anOpenRunNeedsNoClosing() {
        Run run = Run.of("circuit", "edit", "skarnfell", "--straight", "2=160");
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.line("Refitted")).contains("nothing: an open run need not close");
    }

    @ParameterizedTest
    @CsvSource({
        "--radius,T99=45,there is no corner 'T99'; there are T1 to T",
        "--radius,45,names no corner",
        "--radius,T3=tight,'tight' is not a number",
        "--radius,T3=1,(m): 1 is outside its range",
        "--straight,T3=40000,change less at a time"
    })
    void whatCannotBeDoneIsToldInOneLine(String option, String value, String problem) {
        Run run = Run.of("circuit", "edit", "castelvane", option, value);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains(problem).hasLineCount(1);
    }

    /** The road stays; the document says which corners are one and which are two, and all that read it count so. */
    @Test
    void cornersAreSplitAndMerged() {
        String two = folder.resolve("two.json").toString();
        int count = Documents.circuit("castelvane")
                .stations(StationSpacing.DEFAULT)
                .corners()
                .size();
        assertThat(Run.of("circuit", "edit", "castelvane", "--split", "T10=4050", "--out", two)
                        .line("Look at"))
                .contains(count + " corners became " + (count + 1));
        Run shown = Run.of("lap", "gt-talvex", two, "--line", "middle");
        assertThat(shown.out()).contains("T" + (count + 1) + " ");
        String one = folder.resolve("one.json").toString();
        assertThat(Run.of("circuit", "edit", two, "--merge", "T10", "--out", one)
                        .line("Look at"))
                .contains((count + 1) + " corners became " + count);
        assertThat(Documents.circuit(one).cornerNames())
                .noneMatch(place -> place.name().isEmpty());
        assertThat(Run.of("circuit", "edit", "castelvane", "--merge", "T1").err())
                .contains("they are no one corner")
                .hasLineCount(1);
        assertThat(Run.of("circuit", "edit", "castelvane", "--split", "T10=5").err())
                .contains("is no place inside it")
                .hasLineCount(1);
    }

    @Test
    void nothingToCorrectIsSaid() {
        assertThat(Run.of("circuit", "edit", "castelvane").err()).contains("nothing is to be corrected");
    }
}
