package dev.lapwright.cli.bench;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.SafeFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;

/** The one folder that the page may save to: under checked names, and never over another file. */
final class SavedFiles {
    /** A letter or digit first, so that no name is hidden, a path, or an option; none that ends in a dot or a space. */
    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}](?:[\\p{L}\\p{N} ._-]{0,58}[\\p{L}\\p{N}_-])?");

    /** Names that some systems keep for devices. */
    private static final Pattern DEVICE = Pattern.compile("(?i)(?:con|prn|aux|nul|com[0-9]|lpt[0-9])(?:\\..*)?");

    private final Path folder;

    SavedFiles(Path folder) {
        this.folder = folder.toAbsolutePath().normalize();
        if (Files.exists(this.folder) && !Files.isDirectory(this.folder)) {
            throw new InvalidValueException(
                    "--folder " + folder, "this is a file, not a folder", "name a folder to save to");
        }
    }

    Path folder() {
        return folder;
    }

    /** The file of a name, which is no path. */
    Path file(String name, String ending) {
        if (!NAME.matcher(name).matches() || DEVICE.matcher(name).matches()) {
            throw new InvalidValueException(
                    "name",
                    "'" + name + "' is no name for a file here",
                    "take letters, digits, spaces, dots, hyphens and underscores, at most 60, a letter or digit first");
        }
        Path file = folder.resolve(name + ending).normalize();
        if (!folder.equals(file.getParent())) {
            throw new InvalidValueException("name", "it leads out of the folder", "take a plain name");
        }
        return file;
    }

    /**
     * Writes a text under a name.
     *
     * @return the file
     * @throws dev.lapwright.fault.LapwrightException if there is such a file already, or it cannot be written
     */
    Path save(String name, String ending, String text) {
        Path file = file(name, ending);
        if (Files.exists(file)) {
            throw new InvalidValueException(
                    name + ending, "there is such a file already, which is left alone", "take another name");
        }
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        SafeFile.write(file, false, text);
        return file;
    }
}
