package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.output.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is refused names its cause, in the words and the unit of the one who typed it, and before the work. */
class RefusalsTest {
    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    --grip=1d          | --grip: '1d' is not a number; see 'lapwright lap --help'
                    --grip=0x1p3       | --grip: '0x1p3' is not a number; see 'lapwright lap --help'
                    --grip=NaN         | --grip: 'NaN' is not a number; see 'lapwright lap --help'
                    --wind-kmh=400     | --wind-kmh: 400 is outside its range; allowed: 0 to 144
                    --air-temp-c=200   | --air-temp-c: 200 is outside its range; allowed: -40 to 60 degC
                    """)
    void aDayThatCannotBe(String option, String words) {
        Run run = Run.of("lap", "gt-talvex", "harrowmere", option);
        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.errorLines()).containsExactly("lapwright: " + words);
    }

    @Test
    void theMostWindIsTaken() {
        assertThat(Run.of("lap", "gt-talvex", "harrowmere", "--wind-kmh", "144").code())
                .isZero();
    }

    @Test
    void aFolderCannotBeShown() {
        Run run = Run.of("show", folder.toString());
        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.errorLines())
                .containsExactly("lapwright: " + folder + ": this is a folder, not a file; name a file inside it");
    }

    @Test
    void complaintsThatContradictEachOtherAreRefusedWithWhatTheyCouldMean() {
        Run run = Run.of(
                "balance",
                "gt-talvex",
                "harrowmere",
                "--complaint",
                "understeer:entry",
                "--complaint",
                "oversteer:entry");
        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.errorLines().get(0)).contains("contradict each other").contains("say which comes first");
    }

    /** 255 bytes are the most of the usual file systems, by their documentation. */
    @ParameterizedTest
    @CsvSource({"lap,--out", "stint,--out"})
    void anOutputThatCannotBeIsFoundBeforeTheWork(String command, String option) throws IOException {
        String name = folder.resolve("a".repeat(252) + ".json").toString();
        String inside = folder.resolve("new").resolve("a".repeat(256)).toString();
        for (String file : List.of(name, inside)) {
            List<String> words = new ArrayList<>(Arrays.asList(command, "gt-talvex", "harrowmere", option, file));
            if (command.equals("stint")) {
                words.addAll(List.of("--laps", "3"));
            }
            Run run = Run.of(words.toArray(String[]::new));
            assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
            assertThat(run.out()).isEmpty();
            assertThat(run.err()).contains("name too long; give it a shorter name");
        }
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left).isEmpty();
        }
    }
}
