package dev.lapwright.files;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.ThreadLocalRandom;

/**
 * File written whole or not at all, and never over another unless told to. The content goes to a temporary file in the same
 * folder, which takes the name of the target at the end; on failure, and when the program is stopped, it is removed.
 */
public final class SafeFile {
    private static final int BUFFER_BYTES = 1 << 16;

    private SafeFile() {}

    /** What is to be written. */
    @FunctionalInterface
    public interface Content {
        /** Writes all of it; need not close the stream. */
        void writeTo(OutputStream out) throws IOException;
    }

    /**
     * Writes a file.
     *
     * @param overwrite whether an existing file may be replaced
     * @throws UnwritableFileException if it exists and may not be replaced, its folder is missing or closed to us,
     *     or writing fails; nothing has changed then
     */
    public static void write(Path file, boolean overwrite, Content content) {
        check(file, overwrite);
        try {
            if (isDevice(file)) {
                // A terminal, a pipe or the null device cannot be replaced, and has no old content to lose.
                try (OutputStream out = Files.newOutputStream(file)) {
                    content.writeTo(out);
                }
            } else {
                // A link keeps pointing where it did; the file behind it is replaced.
                writeAside(Files.isSymbolicLink(file) ? file.toRealPath() : file, overwrite, content);
            }
        } catch (FileAlreadyExistsException e) {
            throw exists(file, e);
        } catch (IOException e) {
            throw new UnwritableFileException(
                    file.toString(),
                    "the file cannot be written: " + reason(e),
                    "choose another place, or make room there",
                    e);
        }
    }

    /** Writes a text as UTF-8. */
    public static void write(Path file, boolean overwrite, String text) {
        write(file, overwrite, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
    }

    /**
     * Finds out, before a long computation, whether a file could be written at its end.
     *
     * @throws UnwritableFileException as {@link #write(Path, boolean, Content)} would
     */
    public static void check(Path file, boolean overwrite) {
        String name = file.toString();
        if (name.isBlank() || file.getFileName() == null) {
            throw new UnwritableFileException(name, "this is no file name", "name a file", null);
        }
        if (Files.isDirectory(file)) {
            throw new UnwritableFileException(name, "this is a folder, not a file", "name a file inside it", null);
        }
        if (isDevice(file)) {
            return;
        }
        Path folder = folder(file);
        if (!Files.exists(folder)) {
            throw new UnwritableFileException(
                    name, "its folder " + folder + " does not exist", "create the folder first", null);
        }
        if (!Files.isDirectory(folder)) {
            throw new UnwritableFileException(name, folder + " is a file, not a folder", "choose another place", null);
        }
        if (Files.exists(file) && !overwrite) {
            throw exists(file, null);
        }
        if (!Files.isWritable(folder)) {
            throw new UnwritableFileException(
                    name,
                    "you may not write into the folder " + folder,
                    "choose another folder, or change its permissions",
                    null);
        }
    }

    /** The path a user named, for those who take it as text. */
    public static Path path(String name) {
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new UnwritableFileException(name, "this cannot be a file name: " + e.getReason(), "name a file", e);
        }
    }

    private static UnwritableFileException exists(Path file, Throwable cause) {
        return new UnwritableFileException(
                file.toString(),
                "the file exists already",
                "choose another name, or allow it to be overwritten",
                cause);
    }

    private static boolean isDevice(Path file) {
        return Files.exists(file) && !Files.isRegularFile(file) && !Files.isDirectory(file);
    }

    private static Path folder(Path file) {
        Path parent = file.toAbsolutePath().getParent();
        return file.getParent() == null ? parent : file.getParent();
    }

    private static void writeAside(Path target, boolean overwrite, Content content) throws IOException {
        Path folder = target.toAbsolutePath().getParent();
        String tag = Long.toUnsignedString(ThreadLocalRandom.current().nextLong(), Character.MAX_RADIX);
        Path aside = folder.resolve("." + target.getFileName() + "." + tag + ".part");
        Thread cleaner = new Thread(() -> remove(aside), "remove " + aside);
        remember(cleaner);
        try {
            try (OutputStream out = new BufferedOutputStream(
                    Files.newOutputStream(aside, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE),
                    BUFFER_BYTES)) {
                content.writeTo(out);
            }
            moveInto(aside, target, overwrite);
        } finally {
            remove(aside);
            forget(cleaner);
        }
    }

    private static void moveInto(Path aside, Path target, boolean overwrite) throws IOException {
        if (!overwrite) {
            Files.move(aside, target);
            return;
        }
        try {
            Files.move(aside, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(aside, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static void remove(Path aside) {
        try {
            Files.deleteIfExists(aside);
        } catch (IOException e) {
            // It stays behind under its own name; the target is untouched, which is what matters.
        }
    }

    private static void remember(Thread cleaner) throws IOException {
        try {
            Runtime.getRuntime().addShutdownHook(cleaner);
        } catch (IllegalStateException e) {
            throw new IOException("the program is being stopped", e);
        }
    }

    private static void forget(Thread cleaner) {
        try {
            Runtime.getRuntime().removeShutdownHook(cleaner);
        } catch (IllegalStateException e) {
            // The program is already stopping and runs the hook itself.
        }
    }

    /** Why a file could not be read or written, in words. */
    static String reason(IOException e) {
        if (e instanceof AccessDeniedException) {
            return "you have no permission";
        }
        if (e instanceof NoSuchFileException) {
            return "there is no such file or folder";
        }
        // The message of a file system exception repeats the file's name; its reason does not.
        String reason = e instanceof FileSystemException f ? f.getReason() : e.getMessage();
        return reason == null || reason.isBlank() ? e.getClass().getSimpleName() : reason;
    }
}
