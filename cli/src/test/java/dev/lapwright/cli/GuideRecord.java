package dev.lapwright.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Record of everything that the commands of the README and the guide print and write: exit code, both streams, JSON, tables,
 * pages and the text of pictures. Two checkouts are compared by {@code diff -r} of two records.
 *
 * <p>From the folder {@code cli} of a packaged checkout, with {@code target/lapwright.jar:target/test-classes} as class path:
 *
 * <pre>
 * java dev.lapwright.cli.GuideRecord FOLDER [PAGE]...      writes the record
 * java dev.lapwright.cli.GuideRecord --rewrite [PAGE]...   prints the examples of the pages anew, into the pages
 * </pre>
 */
final class GuideRecord {
    private static final Path TOP = Path.of("..");
    private static final Pattern IN_TABLE = Pattern.compile("`lapwright ([^`]+)`");

    private final Path folder;

    private GuideRecord(Path folder) {
        this.folder = folder;
    }

    public static void main(String[] arguments) throws IOException {
        if (arguments.length == 0) {
            throw new IllegalArgumentException("give a folder that does not exist yet, or --rewrite");
        }
        List<String> asked = List.of(arguments).subList(1, arguments.length);
        if (arguments[0].equals("--rewrite")) {
            for (Path page : pages(asked)) {
                rewrite(page);
            }
            return;
        }
        Path folder = Path.of(arguments[0]).toAbsolutePath();
        if (Files.exists(folder)) {
            throw new IllegalArgumentException(folder + " exists already");
        }
        GuideRecord record = new GuideRecord(folder);
        for (Path page : pages(asked)) {
            record.page(page);
        }
        record.help();
    }

    /** Those asked for by name, as in stint or answers-stint; all if none is. */
    private static List<Path> pages(List<String> asked) throws IOException {
        List<Path> pages = new ArrayList<>(List.of(TOP.resolve("README.md")));
        pages.addAll(ShownCommands.pages());
        pages.removeIf(page -> !asked.isEmpty() && !asked.contains(name(page)));
        return pages;
    }

    /** What a page is called: an answer bears the name of its folder too, as the page behind it has the same. */
    private static String name(Path page) {
        String name = page.getFileName().toString().replace(".md", "");
        return page.getParent().endsWith("answers") ? "answers-" + name : name;
    }

    /** Runs each command of a page once as it stands, and once more for machines and with all its files. */
    private void page(Path page) throws IOException {
        Path place = folder.resolve(name(page));
        Path work = place.resolve("files");
        Files.createDirectories(work);
        Map<String, ShownCommands.Shown> shown = new LinkedHashMap<>();
        for (ShownCommands.Shown one : ShownCommands.in(page)) {
            if (one.isRunnable()) {
                shown.putIfAbsent(one.command(), one);
            }
        }
        Matcher table = IN_TABLE.matcher(Files.readString(page));
        while (table.find()) {
            String command = "./lapwright " + table.group(1);
            ShownCommands.Shown one = new ShownCommands.Shown(command, List.of());
            if (!command.contains("…") && one.isRunnable()) {
                shown.putIfAbsent(command, one);
            }
        }
        int number = 0;
        for (ShownCommands.Shown one : shown.values()) {
            number++;
            String name = String.format(Locale.ROOT, "%02d", number);
            write(place.resolve(name + ".txt"), one.command(), one.run(work), work);
            if (one.isPure() && one.command().startsWith("./lapwright")) {
                String whole = one.command() + " --json --out " + name;
                write(
                        place.resolve(name + ".json.txt"),
                        whole,
                        new ShownCommands.Shown(whole, List.of()).run(work),
                        work);
            }
        }
    }

    /** What every command says of itself. */
    private void help() throws IOException {
        Path place = folder.resolve("help");
        Files.createDirectories(place);
        Set<String> commands = new TreeSet<>(List.of(""));
        Matcher named = Pattern.compile("(?m)^  ([a-z]+)  +\\S.*")
                .matcher(Run.of("--help").out());
        while (named.find()) {
            commands.add(named.group(1));
        }
        commands.addAll(List.of(
                "car new",
                "event new",
                "event run",
                "event show",
                "event pack",
                "event unpack",
                "circuit import",
                "circuit show",
                "circuit edit"));
        for (String command : commands) {
            String line = (command + " --help").strip();
            write(place.resolve(line.replace(' ', '_') + ".txt"), line, Run.of(line.split(" ")), place);
        }
    }

    private void write(Path file, String command, Run run, Path work) throws IOException {
        String text = ("$ " + command + "\nexit " + run.code() + "\n" + run.out() + "--- remarks\n" + run.err())
                .replace(work + "/", "")
                .replace("../docs/", "docs/");
        Files.writeString(file, text);
    }

    /** Replaces what a page shows below its commands by what they print now. */
    private static void rewrite(Path page) throws IOException {
        Path work = Files.createTempDirectory("record");
        List<String> lines = new ArrayList<>(Files.readAllLines(page));
        int from = 0;
        for (ShownCommands.Shown one : ShownCommands.in(page)) {
            int at = find(lines, ShownCommands.PROMPT + one.command(), from);
            from = at + 1;
            if (!one.isRunnable()) {
                continue;
            }
            Run run = one.run(work);
            if (one.output().isEmpty()) {
                continue;
            }
            List<String> printed = run.out()
                    .replace(work + "/", "")
                    .replace("../docs/", "docs/")
                    .strip()
                    .lines()
                    .map(String::stripTrailing)
                    .toList();
            List<String> anew = Excerpt.of(one.output(), printed, page + ": " + one.command());
            lines.subList(at + 1, at + 1 + one.output().size()).clear();
            lines.addAll(at + 1, anew);
            from = at + 1 + anew.size();
        }
        String text = String.join("\n", lines) + "\n";
        if (!text.equals(Files.readString(page))) {
            Files.writeString(page, text);
            System.err.println("rewrote " + page);
        }
        try (Stream<Path> files = Files.walk(work)) {
            files.sorted((a, b) -> b.compareTo(a)).forEach(GuideRecord::delete);
        }
    }

    private static void delete(Path file) {
        try {
            Files.delete(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static int find(List<String> lines, String line, int from) {
        for (int i = from; i < lines.size(); i++) {
            if (lines.get(i).equals(line)) {
                return i;
            }
        }
        throw new IllegalStateException("the page has lost its line " + line);
    }

    /** What a page shows of a longer output: parts between lines of "…", each found again by its words. */
    private static final class Excerpt {
        private Excerpt() {}

        static List<String> of(List<String> shown, List<String> printed, String place) {
            if (!shown.contains(ShownCommands.LEFT_OUT)) {
                return printed;
            }
            List<String> anew = new ArrayList<>();
            int at = 0;
            int i = 0;
            while (i < shown.size()) {
                if (shown.get(i).equals(ShownCommands.LEFT_OUT)) {
                    anew.add(shown.get(i++));
                    continue;
                }
                int end = i;
                while (end < shown.size() && !shown.get(end).equals(ShownCommands.LEFT_OUT)) {
                    end++;
                }
                int size = end - i;
                boolean last = end == shown.size();
                int start = i == 0 ? 0 : last ? printed.size() - size : best(shown.subList(i, end), printed, at);
                if (!words(shown.get(i)).equals(words(printed.get(start)))) {
                    System.err.println(place + ": look at the part that begins '" + shown.get(i) + "'");
                }
                anew.addAll(printed.subList(start, start + size));
                at = start + size;
                i = end;
            }
            return anew;
        }

        private static int best(List<String> part, List<String> printed, int from) {
            int best = from;
            int most = -1;
            for (int at = from; at + part.size() <= printed.size(); at++) {
                int same = 0;
                for (int k = 0; k < part.size(); k++) {
                    same += words(part.get(k)).equals(words(printed.get(at + k))) ? 2 : 0;
                    same += part.get(k).equals(printed.get(at + k)) ? 1 : 0;
                    same += name(part.get(k)).equals(name(printed.get(at + k))) ? 3 : 0;
                }
                if (same > most) {
                    most = same;
                    best = at;
                }
            }
            return best;
        }

        /** First cell of a row, by which it is known: a name may hold digits. */
        private static String name(String line) {
            return line.strip().split(" {2,}", 2)[0];
        }

        private static List<String> words(String line) {
            return Arrays.asList(line.replaceAll("[-+0-9.:]+", "#").strip().split("\\s+"));
        }
    }
}
