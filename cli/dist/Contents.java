import java.io.ByteArrayOutputStream;
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
import java.util.spi.ToolProvider;
import java.util.stream.Stream;

/**
 * What an archive holds besides the command: a Java trimmed to the modules it needs, and the licences and notices that its
 * libraries bring along in their jars.
 *
 * <p>{@code java Contents.java lapwright.jar FOLDER-OF-JAVA FOLDER-OF-NOTICES}, both folders written anew.
 */
final class Contents {
    private Contents() {}

    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path jar = Path.of(arguments[0]).toAbsolutePath().normalize();
        runtime(jar, Path.of(arguments[1]));
        notices(jar, Path.of(arguments[2]));
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

    private static void notices(Path jar, Path notices) throws IOException {
        delete(notices);
        Path licences = Files.createDirectories(notices.resolve("licenses"));
        try (FileSystem inside = FileSystems.newFileSystem(jar)) {
            Path meta = inside.getPath("META-INF");
            try (Stream<Path> files = Files.list(meta)) {
                for (Path file : files.toList()) {
                    String name = file.getFileName().toString();
                    if (name.endsWith("-LICENSE")) {
                        Files.copy(file, licences.resolve(name + ".txt"));
                    }
                }
            }
            StringBuilder all = new StringBuilder();
            for (String name : List.of("NOTICE", "NOTICE.txt")) {
                if (Files.exists(meta.resolve(name))) {
                    Files.readString(meta.resolve(name)).lines().forEach(line -> all.append(line).append('\n'));
                }
            }
            Files.writeString(notices.resolve("NOTICE"), all);
        }
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
