package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PlanCommandTest {
    private static final String PLAN = """
            {
              "lapwright": "plan/1",
              "name": "wings",
              "cars": ["gt-talvex"],
              "circuits": ["harrowmere"],
              "line": "middle",
              "conditions": ["hot-afternoon"],
              "vary": { "rear-wing": "2:8:2", "chassis.massKg": "1250,1300" }
            }
            """;

    @TempDir
    private Path folder;

    private Path plan;

    @BeforeEach
    void write() throws IOException {
        plan = Files.writeString(folder.resolve("plan.json"), PLAN);
    }

    private Run run(String... more) {
        List<String> arguments = new ArrayList<>(List.of("plan", plan.toString()));
        arguments.addAll(List.of(more));
        return Run.of(arguments.toArray(String[]::new));
    }

    private List<String> table(String name, String... more) throws IOException {
        Path table = folder.resolve(name);
        List<String> arguments = new ArrayList<>(List.of("--out", table.toString()));
        arguments.addAll(List.of(more));
        Run run = run(arguments.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return Files.readAllLines(table);
    }

    private void refused(Run run, String... why) {
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains(why).doesNotContain("Exception");
    }

    @Test
    void partsOneBelowTheOtherAreTheTableOfTheWhole() throws IOException {
        List<String> whole = table("whole.csv");
        assertThat(whole).hasSize(9);
        assertThat(whole.get(0))
                .startsWith("lap,case,rear-wing,chassis.massKg,lapTimeS,")
                .endsWith(",fault,inputs");
        List<String> parts = new ArrayList<>(table("one.csv", "--part", "1/3"));
        for (int k = 2; k <= 3; k++) {
            List<String> part = table(k + ".csv", "--part", k + "/3", "--threads", "1");
            parts.addAll(part.subList(1, part.size()));
        }
        assertThat(parts).containsExactlyElementsOf(whole);
    }

    /** Killed in the middle of a row, it goes on from the last whole one and comes to the same bytes; done already, it drives nothing. */
    @Test
    void aTableThatWasBrokenOffIsGoneOnWith() throws IOException {
        table("whole.csv");
        String whole = Files.readString(folder.resolve("whole.csv"));
        for (int length : new int[] {0, 20, whole.length() / 2, whole.length() - 3, whole.length()}) {
            Path broken = Files.writeString(folder.resolve("broken.csv"), whole.substring(0, length));
            table("broken.csv", "--resume");
            assertThat(Files.readString(broken))
                    .as("broken off after %s", length)
                    .isEqualTo(whole);
        }
    }

    @Test
    void theFastestOfEachCaseIsTold() {
        Run run = run();
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out()).contains("gt-talvex at harrowmere, hot-afternoon", "rear-wing");
    }

    @Test
    void aTableOfAnotherPlanIsLeftAlone() throws IOException {
        table("table.csv");
        String table = folder.resolve("table.csv").toString();
        byte[] before = Files.readAllBytes(Path.of(table));
        refused(run("--out", table), "there already", "--resume");
        Files.writeString(plan, PLAN.replace("hot-afternoon", "cool-windy"));
        refused(run("--out", table, "--resume"), "another car, on another circuit, line or day");
        Files.writeString(plan, PLAN.replace("rear-wing", "front-bar").replace("2:8:2", "1:4:1"));
        refused(run("--out", table, "--resume"), "columns");
        refused(run("--out", folder.toString()), "this is no file");
        assertThat(Files.readAllBytes(Path.of(table))).isEqualTo(before);
    }

    /** What somebody keeps in a file of that name is not ours to cut off, though it has no whole line. */
    @ParameterizedTest
    @ValueSource(
            strings = {"a note without an end of line", "a note\nin two lines", "lap,case", "\"\n", "lap,\"case\nx\n"})
    void aFileThatIsNoTableIsLeftAlone(String text) throws IOException {
        Path note = Files.writeString(folder.resolve("note.csv"), text);
        Run run = run("--out", note.toString(), "--resume");
        if (text.equals("lap,case")) {
            // So a table of this plan begins that was broken off in its first line.
            assertThat(run.code()).as(run.err()).isZero();
        } else {
            refused(run, "note.csv");
            assertThat(Files.readString(note)).isEqualTo(text);
        }
    }

    @Test
    void aTableThatWasChangedIsLeftAlone() throws IOException {
        List<String> rows = table("table.csv");
        String time = rows.get(1).split(",")[5];
        for (String other : List.of("soon", "\"1")) {
            Path changed = folder.resolve("changed.csv");
            String text = String.join("\r\n", rows).replace("," + time + ",", "," + other + ",") + "\r\n";
            Files.writeString(changed, text);
            refused(run("--out", changed.toString(), "--resume"), "changed.csv", "lap 0");
            assertThat(Files.readString(changed)).isEqualTo(text);
        }
    }

    @Test
    void anAdjustmentThatHasAnotherUnitOnAnotherCarIsNoAxis() throws IOException {
        Files.writeString(
                plan,
                PLAN.replace("[\"gt-talvex\"]", "[\"gt-talvex\", \"student-pipit\"]")
                        .replace("\"rear-wing\": \"2:8:2\", ", "\"front-spring\": \"200,220\", "));
        refused(run(), "front-spring", "gt-talvex", "student-pipit");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"cars\": [\"gt-talvex\"],||cars",
                "gt-talvex|gt-talvox|gt-talvox",
                "[\"harrowmere\"]|[]|the list is empty",
                "\"middle\"|\"moddle\"|middle",
                "rear-wing|rear-whing|rear-wing",
                "plan/1|plan/2|plan/2",
                "\"name\": \"wings\",|\"name\": \"wings\", \"design\": \"sobol\",|points",
                "\"name\": \"wings\",|\"name\": \"wings\", \"seeds\": 1,|seed",
                "1250,1300|1250,-1|chassis.massKg",
            })
    void aPlanThatCannotBeDrivenIsRefused(String what, String by, String why) throws IOException {
        Files.writeString(plan, PLAN.replace(what, by == null ? "" : by));
        refused(run(), why);
    }

    @Test
    void partsAndTablesThatAreNoneAreRefused() {
        refused(run("--part", "3/2"), "--part");
        refused(run("--part", "x"), "--part");
        refused(run("--resume"), "--resume");
    }
}
