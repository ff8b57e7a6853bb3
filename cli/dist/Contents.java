import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;

/**
 * What an archive holds besides the command: a Java trimmed to the modules it needs, and of each library inside the command its
 * licence and notices. The list of libraries is Maven's, the texts are those that the command's jar holds; the build fails
 * where a library's own terms are not among them.
 *
 * <p>{@code java Contents.java lapwright.jar FOLDER-OF-JAVA FOLDER-OF-NOTICES CLASSPATH}: the first folder is written anew, the second has
 * the list, {@code THIRD-PARTY.txt}.
 */
final class Contents {
    /** A line of Maven's list: {@code (licence) name (group:artifact:version - home)}. */
    private static final Pattern ENTRY = Pattern.compile(" *\\((?<licence>.*)\\) (?<name>[^()]*) \\((?<group>[^:()]+):(?<artifact>[^:]+):"
            + "(?<version>[^ ]+) - (?<home>.*)\\)");

    private Contents() {}

    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path jar = Path.of(arguments[0]).toAbsolutePath().normalize();
        runtime(jar, Path.of(arguments[1]));
        notices(jar, Path.of(arguments[2]), arguments[3]);
    }

    private static void runtime(Path jar, Path runtime) throws IOException, InterruptedException {
        delete(runtime);
        String modules =
                run("jdeps", "--ignore-missing-deps", "--multi-release", "17", "--print-module-deps", jar.toString());
        run(
                "jlink",
                "--add-modules",
                modules.strip(),
                "--strip-debug",
                "--no-header-files",
                "--no-man-pages",
                "--compress=2",
                "--output",
                runtime.toString());
        // Java's own classes, read and checked beforehand.
        Path log = runtime.resolveSibling("share.log");
        int code = new ProcessBuilder(runtime.resolve("bin").resolve("java").toString(), "-XX:+UseSerialGC", "-Xshare:dump")
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start()
                .waitFor();
        if (code != 0) {
            throw new IOException("the trimmed Java does not start: see " + log);
        }
    }

    private static String run(String tool, String... arguments) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PrintStream printed = new PrintStream(out, true, StandardCharsets.UTF_8);
        int code = ToolProvider.findFirst(tool).orElseThrow().run(printed, printed, arguments);
        String text = out.toString(StandardCharsets.UTF_8);
        if (code != 0) {
            throw new IOException(tool + ": " + text);
        }
        return text;
    }

    private static void notices(Path jar, Path notices, String classPath) throws IOException {
        Path licences = notices.resolve("licenses");
        delete(licences);
        Files.createDirectories(licences);
        try (FileSystem inside = FileSystems.newFileSystem(jar)) {
            Path meta = inside.getPath("META-INF");
            String apache = Files.readString(meta.resolve("LICENSE"));
            Map<String, String> texts = new TreeMap<>();
            for (Path folder : List.of(meta, meta.resolve("licenses"))) {
                try (Stream<Path> files = Files.list(folder)) {
                    for (Path file : files.filter(Files::isRegularFile).toList()) {
                        String name = file.getFileName().toString();
                        if (!folder.equals(meta)) {
                            texts.put(name, Files.readString(file));
                        } else if (name.endsWith("-LICENSE")) {
                            texts.put(name + ".txt", Files.readString(file));
                        } else if (name.equals("LICENSE.txt")) {
                            // The one Apache library whose file says more than that licence.
                            texts.put("commons-math3.txt", Files.readString(file));
                        }
                    }
                }
            }
            for (Map.Entry<String, String> text : texts.entrySet()) {
                Files.writeString(licences.resolve(text.getKey()), text.getValue());
            }
            checkOwnTerms(classPath, apache, texts);
            list(notices.resolve("THIRD-PARTY.txt"), texts.keySet());
            StringBuilder all = new StringBuilder();
            for (String name : List.of("NOTICE", "NOTICE.txt")) {
                if (Files.exists(meta.resolve(name))) {
                    Files.readString(meta.resolve(name)).lines().forEach(line -> all.append(line).append('\n'));
                }
            }
            Files.writeString(notices.resolve("NOTICE"), all);
        }
    }

    /** Every licence that a library brings in its jar, other than the plain Apache one, must be among the texts. */
    private static void checkOwnTerms(String classPath, String apache, Map<String, String> texts) throws IOException {
        for (String entry : classPath.split(File.pathSeparator)) {
            Path library = Path.of(entry);
            if (!Files.isRegularFile(library) || library.getFileName().toString().startsWith("lapwright")) {
                continue;
            }
            try (FileSystem inside = FileSystems.newFileSystem(library)) {
                Path meta = inside.getPath("META-INF");
                try (Stream<Path> files = Files.list(meta)) {
                    for (Path file : files.filter(Files::isRegularFile).toList()) {
                        if (file.getFileName().toString().toUpperCase(Locale.ROOT).contains("LICENSE")) {
                            String text = Files.readString(file);
                            if (!words(text).equals(words(apache)) && !texts.containsValue(text)) {
                                throw new IOException(library + " brings " + file
                                        + ", which lapwright.jar does not hold: see the filters in cli/pom.xml");
                            }
                        }
                    }
                }
            }
        }
    }

    private static String words(String text) {
        return text.strip().replace("https:", "http:").replaceAll("\\s+", " ");
    }

    /** Writes Maven's list again, each library with its licence and the file that has the text. */
    private static void list(Path file, Set<String> texts) throws IOException {
        StringBuilder out = new StringBuilder("Libraries inside lib/lapwright.jar and their licences, as the libraries themselves "
                + "declare them.\nThe list is made by the build.\n");
        for (String line : Files.readAllLines(file)) {
            Matcher entry = ENTRY.matcher(line);
            if (entry.matches()) {
                String artifact = entry.group("artifact");
                String licence = entry.group("licence");
                String text = artifact + ".txt";
                if (!texts.contains(text)) {
                    if (!licence.contains("Apache")) {
                        throw new IOException("no text of the licence of " + artifact + " (" + licence
                                + "): put it into cli/dist/files/licenses/" + text + " and cli/pom.xml");
                    }
                    text = null;
                }
                out.append('\n').append(entry.group("name")).append(' ').append(entry.group("version")).append(" (")
                        .append(entry.group("group")).append(':').append(artifact).append(")\n    licence: ").append(licence)
                        .append("\n    text:    ").append(text == null ? "LICENSE" : "licenses/" + text)
                        .append("\n    home:    ").append(entry.group("home")).append('\n');
            }
        }
        Files.writeString(file, out);
    }

    private static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> files = Files.walk(folder)) {
                files.sorted(Comparator.reverseOrder()).forEach(Contents::deleteOne);
            }
        }
    }

    private static void deleteOne(Path file) {
        try {
            Files.delete(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
