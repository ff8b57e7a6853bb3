package dev.lapwright.cli;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.Lines;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * One run of the command inside this process, and what came of it. A command line that reads no file of a test runs once,
 * however many tests ask for it.
 */
public record Run(int code, String out, String err) {
    /** Options that name what a run writes. */
    public static final Set<String> OUTPUTS =
            Set.of("--out", "--to", "--chart", "--trace", "--trade-off", "--traction-chart", "--profile", "--pass");

    private static final String FOLDER_OF_TESTS = System.getProperty("java.io.tmpdir");
    /** A kept line is what a search finds, bit for bit (LineCacheTest). */
    private static final Path LINES = folderOfLines();

    private static final Map<List<Object>, OnlyOnce> RUNS = new ConcurrentHashMap<>();
    private static final Map<List<String>, Written> WRITTEN = new ConcurrentHashMap<>();

    /** Runs it as in a pipe: no terminal. */
    public static Run of(String... arguments) {
        return of(false, false, arguments);
    }

    public static Run of(boolean styled, boolean errIsTerminal, String... arguments) {
        if (!isPure(arguments)) {
            Optional<Path> folder = styled || errIsTerminal ? Optional.empty() : folderOfOutputs(arguments);
            return folder.isPresent()
                    ? written(folder.get(), named(arguments))
                    : anew(styled, errIsTerminal, arguments);
        }
        return RUNS.computeIfAbsent(List.of(styled, errIsTerminal, List.of(arguments)), key -> new OnlyOnce())
                .run(styled, errIsTerminal, arguments);
    }

    /**
     * Runs it with its outputs in a folder of the test, named as a reader names them; so are inputs of the reader's own, which
     * begin with "mine". Without such an input the command runs once for all tests, and each gets a copy of the files.
     */
    public static Run in(Path folder, String... arguments) {
        boolean writes = false;
        boolean shared = true;
        for (int i = 0; i < arguments.length; i++) {
            if (i > 0 && OUTPUTS.contains(arguments[i - 1])) {
                writes = true;
                shared &= !Files.exists(folder.resolve(arguments[i]));
            } else {
                shared &= !isOwn(arguments[i]);
            }
        }
        if (!writes || !shared) {
            return of(inFolder(folder, arguments));
        }
        return written(folder, arguments);
    }

    private static Run written(Path folder, String... arguments) {
        return WRITTEN.computeIfAbsent(List.of(arguments), key -> new Written()).copyTo(folder, arguments);
    }

    /** The folder of a test that all outputs go to, where nothing else of this test has a part in the run. */
    private static Optional<Path> folderOfOutputs(String... arguments) {
        Set<Path> folders = new HashSet<>();
        for (int i = 0; i < arguments.length; i++) {
            if (i > 0 && OUTPUTS.contains(arguments[i - 1])) {
                Path output = Path.of(arguments[i]);
                if (!output.isAbsolute() || !isFree(output)) {
                    return Optional.empty();
                }
                folders.add(output.getParent());
            } else if (arguments[i].contains(FOLDER_OF_TESTS) || arguments[i].contains("=/")) {
                return Optional.empty();
            }
        }
        return folders.stream().filter(any -> folders.size() == 1).findFirst();
    }

    /** Whether a name may be written to in a folder that is there: no file begins with it. */
    private static boolean isFree(Path output) {
        try (Stream<Path> others = Files.list(output.getParent())) {
            String name = output.getFileName().toString();
            String stem = name.contains(".") ? name.substring(0, name.indexOf('.')) : name;
            return others.noneMatch(other -> other.getFileName().toString().startsWith(stem));
        } catch (IOException e) {
            return false;
        }
    }

    private static String[] named(String... arguments) {
        String[] words = arguments.clone();
        for (int i = 1; i < words.length; i++) {
            if (OUTPUTS.contains(words[i - 1])) {
                words[i] = Path.of(words[i]).getFileName().toString();
            }
        }
        return words;
    }

    private static boolean isOwn(String word) {
        return word.startsWith("mine");
    }

    private static String[] inFolder(Path folder, String... arguments) {
        String[] words = arguments.clone();
        for (int i = 0; i < words.length; i++) {
            if (isOwn(words[i]) || (i > 0 && OUTPUTS.contains(words[i - 1]))) {
                words[i] = folder.resolve(words[i]).toString();
            }
        }
        return words;
    }

    /** Whether the same words give the same result: files of a test lie in a folder of its own, with an absolute path. */
    private static boolean isPure(String... arguments) {
        return Arrays.stream(arguments)
                .noneMatch(word -> OUTPUTS.contains(word.split("=", 2)[0]) || word.contains(FOLDER_OF_TESTS));
    }

    private static Run anew(boolean styled, boolean errIsTerminal, String... arguments) {
        return run(styled, errIsTerminal, Lines.WIDTH, Optional.of(LINES), arguments);
    }

    /** Runs it anew, on lines of so many columns. */
    public static Run wide(int width, String... arguments) {
        return run(false, false, width, Optional.of(LINES), arguments);
    }

    /** Runs it anew as in a pipe, with lines kept in a folder. */
    public static Run keeping(Path cache, String... arguments) {
        return run(false, false, Lines.WIDTH, Optional.of(cache), arguments);
    }

    private static Run run(
            boolean styled, boolean errIsTerminal, int width, Optional<Path> cache, String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Console bare = new Console(out, err, styled, errIsTerminal, width);
        int code = Lapwright.run(keeping(bare, cache), arguments);
        return new Run(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** A console on which a command finds the lines that runs of this process found. */
    static Console keepingLines(Console bare) {
        return keeping(bare, Optional.of(LINES));
    }

    private static Console keeping(Console bare, Optional<Path> cache) {
        return cache.map(folder -> bare.keeping(folder, "this program")).orElse(bare);
    }

    private static Path folderOfLines() {
        try {
            return Files.createTempDirectory(Files.createDirectories(Path.of("target", "runs")), "lines");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A command line's only run; a second test that asks meanwhile waits for it. */
    private static final class OnlyOnce {
        private Run run;

        private synchronized Run run(boolean styled, boolean errIsTerminal, String... arguments) {
            if (run == null) {
                run = anew(styled, errIsTerminal, arguments);
            }
            return run;
        }
    }

    /** The only run of a command line that writes files, and the folder it wrote them to. */
    private static final class Written {
        private Path place;
        private Run run;

        private synchronized Run copyTo(Path folder, String... arguments) {
            try {
                if (run == null) {
                    place = Files.createTempDirectory(Files.createDirectories(Path.of("target", "runs")), "run")
                            .toAbsolutePath();
                    run = anew(false, false, inFolder(place, arguments));
                }
                copy(folder);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            String there = place.toString();
            String here = folder.toString();
            return new Run(run.code, run.out.replace(there, here), run.err.replace(there, here));
        }

        private void copy(Path folder) throws IOException {
            try (Stream<Path> files = Files.walk(place)) {
                for (Path file : files.toList()) {
                    Path copy = folder.resolve(place.relativize(file).toString());
                    if (Files.isDirectory(file)) {
                        Files.createDirectories(copy);
                    } else {
                        Files.copy(file, copy);
                    }
                }
            }
        }
    }

    public List<String> lines() {
        return out.lines().toList();
    }

    public List<String> errorLines() {
        return err.lines().toList();
    }

    /** The first line of the result that begins so, spaces aside. */
    public String line(String beginning) {
        return out.lines()
                .filter(line -> line.strip().startsWith(beginning))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no line begins with '" + beginning + "' in:\n" + out));
    }

    /** The words of a command line as a shell parts them: what stands in double quotes is one. */
    public static String[] words(String line) {
        return Pattern.compile("\"([^\"]*)\"|\\S+")
                .matcher(line)
                .results()
                .map(found -> found.group(1) == null ? found.group() : found.group(1))
                .toArray(String[]::new);
    }
}
