package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CompletionCommandTest {
    @TempDir
    private Path folder;

    /** What bash would offer for the last of these words. */
    private List<String> offered(String... words) throws IOException, InterruptedException {
        Assumptions.assumeTrue(Files.isExecutable(Path.of("/bin/bash")), "needs bash");
        Path script = folder.resolve("completion.bash");
        Files.writeString(script, Run.of("completion", "bash").out());
        String list = "'" + String.join("' '", words) + "'";
        Process bash = new ProcessBuilder(
                        "/bin/bash",
                        "--norc",
                        "-c",
                        "source " + script + "; COMP_WORDS=(" + list + "); COMP_CWORD=$((${#COMP_WORDS[@]} - 1));"
                                + " COMP_LINE=\"${COMP_WORDS[*]}\"; _complete_lapwright; printf '%s\\n' \"${COMPREPLY[@]}\"")
                .redirectErrorStream(true)
                .start();
        String offered = new String(bash.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(bash.waitFor()).as(offered).isZero();
        return offered.lines().map(String::strip).toList();
    }

    @Test
    void commandsAreCompleted() throws Exception {
        assertThat(offered("lapwright", "sw")).contains("sweep");
    }

    @Test
    void optionsAreCompleted() throws Exception {
        assertThat(offered("lapwright", "lap", "--tr")).contains("--trace");
    }

    @Test
    void namesOfDemoCarsAreCompleted() throws Exception {
        assertThat(offered("lapwright", "lap", "gt-")).contains("gt-talvex");
    }

    @Test
    void namesOfDemoCircuitsAreCompleted() throws Exception {
        assertThat(offered("lapwright", "lap", "gt-talvex", "har")).contains("harrowmere");
    }

    @Test
    void zshIsToldToUnderstandTheScriptFirst() {
        assertThat(Run.of("completion", "zsh").lines().get(0)).contains("bashcompinit");
        assertThat(Run.of("completion").out())
                .isEqualTo(Run.of("completion", "bash").out());
    }

    @Test
    void theScriptCanGoToAFile() throws IOException {
        Path out = folder.resolve("lapwright.bash");
        assertThat(Run.of("completion", "bash", "--out", out.toString()).code()).isZero();
        assertThat(Files.readString(out)).isEqualTo(Run.of("completion", "bash").out());
    }
}
