package dev.lapwright.cli.option;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * Folder in which a user's programs keep what they can find again: {@code %LOCALAPPDATA%} on Windows, elsewhere {@code $XDG_CACHE_HOME},
 * or {@code .cache} in the user's home where that is not set (XDG Base Directory Specification, from memory: a path that is not absolute is to
 * be ignored).
 */
public final class CacheFolder {
    private static final String OURS = "lapwright";

    private CacheFolder() {}

    /** Ours within that of the user who runs this process; empty where there is no telling. */
    public static Optional<Path> ofProcess() {
        return of(System::getenv, System.getProperty("os.name", ""), System.getProperty("user.home", ""));
    }

    /** Ours, by variables of the environment, the name of the system and the user's home. */
    static Optional<Path> of(UnaryOperator<String> environment, String system, String home) {
        if (system.startsWith("Windows")) {
            return absolute(environment.apply("LOCALAPPDATA"))
                    .map(local -> local.resolve(OURS).resolve("cache"));
        }
        return absolute(environment.apply("XDG_CACHE_HOME"))
                .or(() -> absolute(home).map(folder -> folder.resolve(".cache")))
                .map(folder -> folder.resolve(OURS));
    }

    private static Optional<Path> absolute(String path) {
        try {
            return path == null || path.isBlank()
                    ? Optional.empty()
                    : Optional.of(Path.of(path)).filter(Path::isAbsolute);
        } catch (InvalidPathException e) {
            return Optional.empty();
        }
    }
}
