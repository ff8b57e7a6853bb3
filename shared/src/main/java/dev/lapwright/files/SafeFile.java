package dev.lapwright.files;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Locale;

/**
 * File written whole or not at all, and never over another unless told to. The content goes to a temporary file in the same
 * folder, which takes the name of the target at the end; on failure, and when the program is stopped, it is removed.
 */
public final class SafeFile {
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
        try (FileSet one = new FileSet(overwrite)) {
            one.stage(file, content);
            one.commit();
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
        tryOut(file, folder);
    }

    /** The path a user named, for those who take it as text. */
    public static Path path(String name) {
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new UnwritableFileException(name, "this cannot be a file name: " + e.getReason(), "name a file", e);
        }
    }

    static UnwritableFileException exists(Path file, Throwable cause) {
        return new UnwritableFileException(
                file.toString(),
                "the file exists already",
                "choose another name, or allow it to be overwritten",
                cause);
    }

    static boolean isDevice(Path file) {
        return Files.exists(file) && !Files.isRegularFile(file) && !Files.isDirectory(file);
    }

    private static Path folder(Path file) {
        Path parent = file.toAbsolutePath().getParent();
        return file.getParent() == null ? parent : file.getParent();
    }

    /** Finds out by trying what no attribute tells: a name too long, a closed folder, a file system for reading only. */
    private static void tryOut(Path file, Path folder) {
        checkName(file);
        Path probe = FileSet.aside(folder.resolve("probe"));
        try {
            Files.createFile(probe);
            Files.delete(probe);
        } catch (IOException e) {
            throw new UnwritableFileException(
                    file.toString(),
                    "nothing can be written into the folder " + folder + ": " + reason(e),
                    "choose another folder, or change its permissions",
                    e);
        }
    }

    /**
     * Finds out by trying, before a long computation, whether a folder can be made inside another.
     *
     * @throws UnwritableFileException if it cannot, as in a file system that takes no new folders
     */
    public static void checkFolder(Path folder, Path above) {
        Path probe = FileSet.aside(above.resolve("probe"));
        try {
            Files.createDirectory(probe);
            Files.delete(probe);
        } catch (IOException e) {
            throw new UnwritableFileException(
                    folder.toString(),
                    "no folder can be made in " + above + ": " + reason(e),
                    "choose another place, or change its permissions",
                    e);
        }
    }

    /**
     * Finds out whether a file system can have a file or folder of this name in an existing folder.
     *
     * @throws UnwritableFileException if it cannot, as where the name is too long
     */
    public static void checkName(Path file) {
        try {
            Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
        } catch (NoSuchFileException e) {
            // A name that is free.
        } catch (IOException e) {
            throw unwritable(file, e);
        }
    }

    static UnwritableFileException unwritable(Path file, IOException e) {
        String reason = reason(e);
        boolean tooLong = reason.toLowerCase(Locale.ROOT).contains("name too long");
        return new UnwritableFileException(
                file.toString(),
                "the file cannot be written: " + reason,
                tooLong ? "give it a shorter name" : "choose another place, or make room there",
                e);
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
