package dev.lapwright.cli.output;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.FileSet;
import dev.lapwright.files.SafeFile;
import java.io.File;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Set of files that a command will write. All are planned, and so checked, before the work starts; then all are written or
 * none.
 */
public final class Outputs {
    private static final int SHORTEST_ENDING = 2;
    private static final int LONGEST_ENDING = 5;

    private final boolean overwrite;
    private final Set<Path> planned = new HashSet<>();
    private final Set<Path> foldersToMake = new HashSet<>();
    private final List<Path> staged = new ArrayList<>();
    private final List<Path> written = new ArrayList<>();
    private final FileSet files;

    /** @param overwrite whether existing files may be replaced */
    public Outputs(boolean overwrite) {
        this.overwrite = overwrite;
        files = new FileSet(overwrite);
    }

    /** Plans a file in an existing folder. */
    public Path file(String name) {
        Path file = SafeFile.path(name);
        checkNew(file);
        check(file);
        return file;
    }

    /** Plans a file in a folder that may not exist yet and is then made. */
    public Path fileIn(String folderName, String name) {
        if (folderName.isBlank()) {
            throw new InvalidValueException("output folder", "its name is empty", "name a folder, or . for this one");
        }
        Path folder = SafeFile.path(folderName);
        Path file = folder.resolve(name);
        checkNew(file);
        if (Files.isDirectory(folder)) {
            check(file);
        } else {
            checkFolderCanBeMade(folder, name);
            foldersToMake.add(folder);
        }
        return file;
    }

    private void checkNew(Path file) {
        if (!planned.add(file.toAbsolutePath().normalize())) {
            throw new InvalidValueException(file.toString(), "two outputs would go to this file", "name two files");
        }
    }

    /**
     * Refuses a file that exists already and may not be replaced.
     *
     * @param folder null for the one that the name is in
     */
    public void refuseExisting(String folder, String name) {
        refuseExisting(
                folder == null ? SafeFile.path(name) : SafeFile.path(folder).resolve(name));
    }

    private void refuseExisting(Path file) {
        if (!overwrite && Files.isRegularFile(file)) {
            throw new InvalidValueException(
                    file.toString(), "the file exists already", "name another, or add --force to overwrite it");
        }
    }

    private void check(Path file) {
        refuseExisting(file);
        SafeFile.check(file, overwrite);
    }

    private static void checkFolderCanBeMade(Path folder, String file) {
        Path above = folder.toAbsolutePath().normalize();
        while (above != null && !Files.exists(above)) {
            above = above.getParent();
        }
        if (above == null || !Files.isDirectory(above)) {
            throw new InvalidValueException(
                    folder.toString(), above + " is a file, not a folder", "choose another place");
        }
        if (!Files.isWritable(above)) {
            throw new InvalidValueException(
                    folder.toString(),
                    "you may not make a folder in " + above,
                    "choose another place, or change its permissions");
        }
        SafeFile.checkFolder(folder, above);
        // Whether a name is too long can be asked only where there is a folder.
        for (Path part : folder.resolve(file)) {
            SafeFile.checkName(above.resolve(part.getFileName()));
        }
    }

    /** Writes a planned file under another name, until {@link #commit()}. */
    public void write(Path file, String text) {
        write(file, text.getBytes(StandardCharsets.UTF_8));
    }

    /** A text that is written bit by bit. */
    @FunctionalInterface
    public interface Writing {
        /** Writes it. */
        void writeTo(Appendable out) throws IOException;
    }

    /** Writes a planned file under another name, until {@link #commit()}. */
    public void write(Path file, Writing text) {
        stage(file, out -> {
            Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
            text.writeTo(writer);
            writer.flush();
        });
    }

    /** Writes a planned file under another name, until {@link #commit()}. */
    public void write(Path file, byte[] bytes) {
        stage(file, out -> out.write(bytes));
    }

    private void stage(Path file, SafeFile.Content content) {
        Path folder = file.getParent();
        if (folder != null && foldersToMake.contains(folder)) {
            files.folder(folder);
        }
        files.stage(file, content);
        staged.add(file);
    }

    /** Gives all files written their names: all or none. */
    public void commit() {
        files.commit();
        written.addAll(staged);
        staged.clear();
    }

    /** Says which files have been written: beside the result, where that is for machines. */
    public void report(Console console, boolean resultIsForMachines) {
        for (Path file : written) {
            if (resultIsForMachines) {
                console.remark("Wrote " + file);
            } else {
                console.line("Wrote " + file);
            }
        }
    }

    /** Whether a name ends like a file of this kind, as in {@code .csv}. */
    public static boolean isNamed(String name, String ending) {
        return name.toLowerCase(Locale.ROOT).endsWith(ending);
    }

    /** Refuses a file name with none of these endings. */
    public static String checkEnding(String option, String name, String... endings) {
        for (String ending : endings) {
            if (isNamed(name, ending)) {
                return name;
            }
        }
        throw new InvalidValueException(
                option + " " + name,
                "the file's kind is not known by its name",
                "end the name in " + String.join(" or ", endings));
    }

    /**
     * Refuses what was meant as a file of a kind we do not write, as in {@code lap.txt}, where any other name is a folder's.
     *
     * @param endings of the kinds of file that may be named instead
     */
    public static void checkFolder(String option, String name, String... endings) {
        boolean open = name.endsWith("/") || name.endsWith(File.separator) || Files.isDirectory(SafeFile.path(name));
        if (!open && endsLikeAFile(name)) {
            throw new InvalidValueException(
                    option + " " + name,
                    "the file's kind is not known by its name",
                    "end a file in " + String.join(" or ", endings) + ", a folder in /");
        }
    }

    /** Whether a letter and one to four letters or digits follow the last dot; "v1.2" does not end so. */
    private static boolean endsLikeAFile(String name) {
        String ending = name.substring(name.lastIndexOf('.') + 1);
        boolean dot = ending.length() < name.length() - 1;
        boolean word = ending.chars().allMatch(Character::isLetterOrDigit);
        return dot
                && word
                && ending.length() >= SHORTEST_ENDING
                && ending.length() <= LONGEST_ENDING
                && Character.isLetter(ending.charAt(0));
    }
}
