package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * The commands that a page of the guide shows, in the order of the page, each with what it prints. A line of "…" stands for
 * any lines left out.
 */
public final class ShownCommands {
    private static final Path DOCS = Path.of("..", "docs");
    /** Short pages, one for each question of the README. */
    public static final Path ANSWERS = DOCS.resolve("answers");

    private static final String FENCE = "```";
    static final String PROMPT = "$ ";
    private static final String LAPWRIGHT = "./lapwright";
    static final String LEFT_OUT = "…";
    /** Begins the command that goes on until it is stopped, which no test of the pages runs; BenchCommandTest does. */
    public static final String BENCH = "bench";

    private ShownCommands() {}

    /** A command as a reader types it at the top of the project, and the lines shown below it. */
    public record Shown(String command, List<String> output) {
        /**
         * Runs it from the folder of this module: pages' own files are found where they lie, and what a reader writes, or has
         * written before, goes to a folder of the test.
         */
        public Run run(Path folder) throws IOException {
            String[] words = Run.words(command);
            for (int i = 1; i < words.length; i++) {
                if (words[i].startsWith("docs/")) {
                    words[i] = "../" + words[i];
                }
            }
            switch (words[0]) {
                case LAPWRIGHT -> {
                    return Run.in(folder, Arrays.copyOfRange(words, 1, words.length));
                }
                case "cp" -> Files.copy(Path.of(words[1]), folder.resolve(words[2]));
                default -> throw new IllegalArgumentException("a page shows '" + command + "', which no test can run");
            }
            return new Run(0, "", "");
        }

        /** Whether a test can run it: the others are Maven's and Java's. */
        public boolean isRunnable() {
            return (command.startsWith(LAPWRIGHT + " ") && !command.startsWith(LAPWRIGHT + " " + BENCH))
                    || command.startsWith("cp ");
        }

        /** Whether a run leaves nothing behind and depends on nothing but the pages' own files and the demos. */
        public boolean isPure() {
            return Arrays.stream(command.split(" "))
                    .noneMatch(word -> word.startsWith("mine") || Run.OUTPUTS.contains(word));
        }

        /** Fails where the run printed something else than the page shows. */
        public void verify(Run run, Path folder) {
            assertThat(run.code()).as(run.err()).isZero();
            String printed = run.out().replace(folder + "/", "").replace("../docs/", "docs/");
            List<String> lines =
                    printed.strip().lines().map(String::stripTrailing).toList();
            int at = 0;
            boolean gap = false;
            List<String> part = new ArrayList<>();
            for (String line : output) {
                if (line.equals(LEFT_OUT)) {
                    at = find(lines, part, at, gap);
                    part.clear();
                    gap = true;
                } else {
                    part.add(line);
                }
            }
            at = find(lines, part, at, gap);
            if (output.isEmpty() || !output.get(output.size() - 1).equals(LEFT_OUT)) {
                assertThat(lines.subList(at, lines.size()))
                        .as("printed after what is shown")
                        .isEmpty();
            }
        }

        /** Where the lines of a part end in what was printed. */
        private static int find(List<String> lines, List<String> part, int from, boolean gap) {
            if (gap) {
                for (int at = from; at + part.size() <= lines.size(); at++) {
                    if (lines.subList(at, at + part.size()).equals(part)) {
                        return at + part.size();
                    }
                }
            }
            int end = Math.min(lines.size(), from + part.size());
            assertThat(gap ? lines.subList(from, lines.size()) : lines.subList(from, end))
                    .isEqualTo(part);
            return end;
        }
    }

    /** All pages of the guide: those behind the answers, then the answers. */
    public static List<Path> pages() throws IOException {
        List<Path> pages = new ArrayList<>();
        for (Path folder : List.of(DOCS, ANSWERS)) {
            try (Stream<Path> files = Files.list(folder)) {
                files.filter(file -> file.toString().endsWith(".md")).sorted().forEach(pages::add);
            }
        }
        return pages;
    }

    public static List<Shown> on(String page) throws IOException {
        return in(DOCS.resolve(page));
    }

    public static List<Shown> in(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file);
        List<Shown> shown = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).startsWith(PROMPT)) {
                int end = i + 1;
                while (!lines.get(end).equals(FENCE) && !lines.get(end).startsWith(PROMPT)) {
                    end++;
                }
                List<String> output = new ArrayList<>(lines.subList(i + 1, end));
                while (!output.isEmpty() && output.get(output.size() - 1).isBlank()) {
                    output.remove(output.size() - 1);
                }
                shown.add(new Shown(lines.get(i).substring(PROMPT.length()), output));
            }
        }
        return shown;
    }

    public static List<String> lines(String page) throws IOException {
        return Files.readAllLines(DOCS.resolve(page));
    }
}
