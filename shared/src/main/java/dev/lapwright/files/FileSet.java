package dev.lapwright.files;

import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ThreadLocalRandom;

/**
 * Files written all or none. Each is first written to a temporary file in the folder where it belongs; {@link #commit()} gives
 * all of them their names. On failure, and when the program is stopped before that, the temporary files and the folders made
 * for them are removed; a stop during it waits until all have their names. A program that is killed outright may leave some.
 */
public final class FileSet implements AutoCloseable {
    private static final int BUFFER_BYTES = 1 << 16;

    private final boolean overwrite;
    private final List<Path> foldersMade = new ArrayList<>();
    private final List<Staged> staged = new ArrayList<>();
    private final Thread cleaner = new Thread(this::stop, "remove unfinished files");
    private boolean watched;
    private boolean stopped;

    /** A file that waits under another name; {@code device} holds what goes to a terminal, a pipe or the null device. */
    private record Staged(Path file, Path target, Path aside, byte[] device) {}

    /** @param overwrite whether existing files may be replaced */
    public FileSet(boolean overwrite) {
        this.overwrite = overwrite;
    }

    /**
     * Makes a folder, with those above it, for files to come.
     *
     * @throws UnwritableFileException if it cannot be made
     */
    public synchronized void folder(Path folder) {
        try {
            watch();
            List<Path> missing = new ArrayList<>();
            for (Path f = folder.toAbsolutePath().normalize(); f != null && !Files.exists(f); f = f.getParent()) {
                missing.add(0, f);
            }
            for (Path f : missing) {
                Files.createDirectory(f);
                foldersMade.add(f);
            }
        } catch (IOException e) {
            discard();
            throw new UnwritableFileException(
                    folder.toString(), "the folder cannot be made: " + SafeFile.reason(e), "choose another place", e);
        }
    }

    /**
     * Writes a file under a temporary name.
     *
     * @throws UnwritableFileException if it exists and may not be replaced, its folder is missing or closed to us, or writing
     *     fails; nothing of the whole set is left then
     */
    public void stage(Path file, SafeFile.Content content) {
        try {
            SafeFile.check(file, overwrite);
            if (SafeFile.isDevice(file)) {
                // Cannot be replaced, and has no old content to lose.
                ByteArrayOutputStream bytes = new ByteArrayOutputStream();
                content.writeTo(bytes);
                add(new Staged(file, file, null, bytes.toByteArray()));
                return;
            }
            // A link keeps pointing where it did; the file behind it is replaced.
            Path target = Files.isSymbolicLink(file) ? file.toRealPath() : file;
            Path aside = aside(target);
            try (OutputStream out =
                    new BufferedOutputStream(open(new Staged(file, target, aside, null)), BUFFER_BYTES)) {
                content.writeTo(out);
            }
        } catch (IOException e) {
            discard();
            throw SafeFile.unwritable(file, e);
        } catch (UncheckedIOException e) {
            // As from those who write rows one by one.
            discard();
            throw SafeFile.unwritable(file, e.getCause());
        } catch (RuntimeException | Error e) {
            discard();
            throw e;
        }
    }

    private synchronized void add(Staged file) throws IOException {
        watch();
        staged.add(file);
    }

    /** Opens the file's other name: whoever stops the program finds it there and removes it, or nothing is opened any more. */
    private synchronized OutputStream open(Staged file) throws IOException {
        add(file);
        return Files.newOutputStream(file.aside(), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    }

    /** What the end of the program does, whatever is being written. */
    private synchronized void stop() {
        stopped = true;
        discard();
    }

    /**
     * Gives all files their names.
     *
     * @throws UnwritableFileException if one cannot be had; all is then as it was before
     */
    public synchronized void commit() {
        List<Staged> done = new ArrayList<>();
        List<Path> backups = new ArrayList<>();
        Staged now = null;
        try {
            for (Staged file : staged) {
                now = file;
                backups.add(file.device() == null && overwrite ? backup(file.target()) : null);
                done.add(file);
                if (file.device() != null) {
                    Files.write(file.file(), file.device());
                } else {
                    moveInto(file.aside(), file.target());
                }
            }
            backups.forEach(FileSet::remove);
            staged.clear();
            foldersMade.clear();
        } catch (IOException e) {
            undo(done, backups, now);
            throw e instanceof FileAlreadyExistsException
                    ? SafeFile.exists(now.file(), e)
                    : SafeFile.unwritable(now.file(), e);
        } finally {
            close();
        }
    }

    /** Removes what has not got its name. */
    @Override
    public synchronized void close() {
        discard();
        forget();
    }

    private static void undo(List<Staged> done, List<Path> backups, Staged failed) {
        for (int i = 0; i < done.size(); i++) {
            Staged file = done.get(i);
            boolean untouched = file.equals(failed) && Files.exists(file.target());
            if (untouched) {
                remove(backups.get(i));
            } else if (backups.get(i) != null) {
                try {
                    Files.move(backups.get(i), file.target(), StandardCopyOption.REPLACE_EXISTING);
                } catch (IOException e) {
                    // The old content stays under the backup's name.
                }
            } else if (!file.equals(failed) && file.device() == null) {
                remove(file.target());
            }
        }
    }

    /** The old content under another name, by which it can be had back; null if there is none. */
    private static Path backup(Path target) throws IOException {
        if (!Files.isRegularFile(target)) {
            return null;
        }
        Path backup = aside(target);
        try {
            return Files.createLink(backup, target);
        } catch (UnsupportedOperationException | IOException e) {
            return Files.copy(target, backup, StandardCopyOption.COPY_ATTRIBUTES);
        }
    }

    private void moveInto(Path aside, Path target) throws IOException {
        if (!overwrite) {
            name(aside, target);
            return;
        }
        try {
            Files.move(aside, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(aside, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** Gives a file a name that is free. Of two at the same moment one alone gets it; a move would look first and go then. */
    private static void name(Path aside, Path target) throws IOException {
        try {
            Files.createLink(target, aside);
        } catch (FileAlreadyExistsException e) {
            throw e;
        } catch (UnsupportedOperationException | IOException e) {
            // As on a disk that knows no links.
            Files.move(aside, target);
            return;
        }
        remove(aside);
    }

    /** A free name in the folder of a file; short, however long the file's own is. */
    static Path aside(Path target) {
        String tag = Long.toUnsignedString(ThreadLocalRandom.current().nextLong(), Character.MAX_RADIX);
        return target.toAbsolutePath().resolveSibling(".lapwright-" + tag + ".part");
    }

    private synchronized void discard() {
        staged.forEach(file -> remove(file.aside()));
        staged.clear();
        for (int i = foldersMade.size() - 1; i >= 0; i--) {
            remove(foldersMade.get(i));
        }
        foldersMade.clear();
    }

    private static void remove(Path path) {
        try {
            if (path != null) {
                Files.deleteIfExists(path);
            }
        } catch (IOException e) {
            // It stays behind under its own name; the target is untouched, which is what matters.
        }
    }

    private void watch() throws IOException {
        if (stopped) {
            throw new IOException("the program is being stopped");
        }
        if (!watched) {
            try {
                Runtime.getRuntime().addShutdownHook(cleaner);
            } catch (IllegalStateException e) {
                throw new IOException("the program is being stopped", e);
            }
            watched = true;
        }
    }

    private void forget() {
        try {
            if (watched) {
                Runtime.getRuntime().removeShutdownHook(cleaner);
            }
        } catch (IllegalStateException e) {
            // The program is already stopping and runs the hook itself.
        }
        watched = false;
    }
}
