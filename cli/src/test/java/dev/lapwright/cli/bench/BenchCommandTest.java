package dev.lapwright.cli.bench;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import dev.lapwright.cli.output.Console;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** The command that starts the bench. */
class BenchCommandTest {
    private static final String EXAMPLE = "  lapwright bench ";

    @TempDir
    private Path folder;

    static List<String> examples() {
        List<String> examples = new ArrayList<>();
        for (String line : Run.of("bench", "--help").lines()) {
            if (line.startsWith(EXAMPLE)) {
                examples.add(line.substring(EXAMPLE.length()));
            }
        }
        return examples;
    }

    private static BenchCommand command(String... words) {
        BenchCommand command =
                new BenchCommand(new Console(new ByteArrayOutputStream(), new ByteArrayOutputStream(), false, false));
        new CommandLine(command).parseArgs(words);
        return command;
    }

    @ParameterizedTest
    @MethodSource("examples")
    void everyExampleStartsABench(String example) throws IOException {
        String[] words =
                example.replace("--folder setups", "--folder " + folder).split(" ");
        try (BenchServer server = command(words).start()) {
            URI address = URI.create(server.address());
            try (Socket socket = new Socket(address.getHost(), address.getPort())) {
                socket.getOutputStream()
                        .write(("GET " + address.getPath() + "start HTTP/1.1\r\nHost: 127.0.0.1:" + address.getPort()
                                        + "\r\nConnection: close\r\n\r\n")
                                .getBytes(StandardCharsets.US_ASCII));
                String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
                assertThat(answer).contains("\"car\":\"gt-talvex\"").contains("\"circuit\":\"castelvane\"");
                if (example.contains("rear-wing=8")) {
                    assertThat(answer).contains("\"set\":{\"rear-wing\":8}");
                }
            }
        }
    }

    /** Where there is no program to start a browser, or it finds none, the address is to be opened by hand. */
    @Test
    void aBrowserThatCannotBeStartedIsSaid() {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        assertThat(BrowserStart.isTaken(List.of("no-such-program-of-ours"))).isFalse();
        assertThat(BrowserStart.isTaken(List.of(java, "--no-such-option"))).isFalse();
        assertThat(BrowserStart.isTaken(List.of(java, "-version"))).isTrue();
        assertThat(BenchCommand.invitation(false)).startsWith("Open that address in a browser on this machine.");
        assertThat(BenchCommand.invitation(true)).startsWith("It is being opened");
    }

    @Test
    void withoutNamesItBeginsWithTheFirstDemos() {
        try (BenchServer server = command().start()) {
            assertThat(server.address()).startsWith("http://127.0.0.1:");
        }
    }

    @Test
    void eachBenchHasAnotherSecret() {
        try (BenchServer one = command().start();
                BenchServer other = command().start()) {
            String path = URI.create(one.address()).getPath();
            // 18 bytes of a random number made for secrets, as base64: 144 bits.
            assertThat(path)
                    .hasSize(26)
                    .isNotEqualTo(URI.create(other.address()).getPath());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "no-such-car harrowmere|no-such-car",
                "gt-talvex nowhere|nowhere",
                "gt-talvex harrowmere -s rear-wing=99|rear-wing",
                "gt-talvex harrowmere --port 70000|--port",
                "gt-talvex harrowmere --line scenic|scenic",
                "--state no-such.json|no-such.json"
            })
    void whatIsWrongIsSaidBeforeAnythingStarts(String words, String named) {
        Run run = Run.of(("bench --no-browser " + words).split(" "));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains(named);
        assertThat(run.out()).isEmpty();
    }

    @Test
    void aStateFileIsReadAndAnythingElseIsRefused() throws IOException {
        Path state = folder.resolve("state.json");
        Files.writeString(state, """
                {"lapwright": "bench/1", "car": "student-pipit", "circuit": "skarnfell",
                 "now": {"name": "now", "set": {"rear-flap": 40}}, "pins": [{"name": "standard"}]}""");
        try (BenchServer server = command("--state", state.toString()).start()) {
            assertThat(server.address()).isNotBlank();
        }
        Files.writeString(state, "{\"lapwright\": \"setup/1\", \"name\": \"x\", \"settings\": {}}");
        Run run = Run.of("bench", "--no-browser", "--state", state.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("no state of the bench");
        assertThat(Run.of("bench", "gt-talvex", "--no-browser", "--state", state.toString())
                        .code())
                .isEqualTo(2);
    }

    @Test
    void aFileIsNoFolderToSaveTo() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "x");
        Run run = Run.of("bench", "--no-browser", "--folder", file.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("--folder");
    }
}
