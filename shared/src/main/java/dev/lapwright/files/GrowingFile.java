package dev.lapwright.files;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.nio.channels.Channels;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.ObjIntConsumer;

/** Text file that grows line by line, so that what was broken off is gone on with. One process writes it at a time. */
public final class GrowingFile implements AutoCloseable {
    private static final int BUFFER = 1 << 16;

    private final RandomAccessFile opened;
    private final OutputStream out;
    /** Behind the last whole line that was read. */
    private long end;

    private GrowingFile(RandomAccessFile opened) {
        this.opened = opened;
        out = Channels.newOutputStream(opened.getChannel());
    }

    /**
     * Opens a file, which is made if it is not there.
     *
     * @param what it is, for a message
     * @throws DocumentException if it is no file, cannot be opened, or is being written
     */
    public static GrowingFile open(Path file, String what) {
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw new DocumentException(file.toString(), "this is no file", "name a file");
        }
        RandomAccessFile opened = null;
        FileLock lock;
        try {
            opened = new RandomAccessFile(file.toFile(), "rw");
            lock = lock(opened);
        } catch (IOException e) {
            close(opened);
            throw new DocumentException(
                    file.toString(),
                    "this " + what + " cannot be opened: " + e.getMessage(),
                    "check the folder and its rights");
        }
        if (lock == null) {
            close(opened);
            throw new DocumentException(
                    file.toString(), "another process is writing this " + what, "wait for it, or name another file");
        }
        return new GrowingFile(opened);
    }

    private static FileLock lock(RandomAccessFile opened) throws IOException {
        try {
            return opened.getChannel().tryLock();
        } catch (OverlappingFileLockException e) {
            return null;
        }
    }

    private static void close(RandomAccessFile opened) {
        try {
            if (opened != null) {
                opened.close();
            }
        } catch (IOException e) {
            // Whatever was to be said of it has been.
        }
    }

    /** Whether nothing stands in it. */
    public boolean isEmpty() throws IOException {
        return opened.length() == 0;
    }

    /**
     * Hands on all whole lines from the beginning, with their numbers from 1; changes nothing.
     *
     * @return what stands behind the last of them: a line that was not finished, or nothing
     */
    public String lines(ObjIntConsumer<String> taker) throws IOException {
        byte[] buffer = new byte[BUFFER];
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        end = 0;
        int number = 0;
        opened.seek(0);
        for (int read = opened.read(buffer); read > 0; read = opened.read(buffer)) {
            int from = 0;
            for (int i = 0; i < read; i++) {
                if (buffer[i] == '\n') {
                    line.write(buffer, from, i - from);
                    end += line.size() + 1L;
                    taker.accept(line.toString(StandardCharsets.UTF_8), ++number);
                    line.reset();
                    from = i + 1;
                }
            }
            line.write(buffer, from, read - from);
        }
        opened.seek(opened.length());
        return line.toString(StandardCharsets.UTF_8);
    }

    /** Cuts off what stands behind the last whole line that was read, and goes on from there. */
    public void cut() throws IOException {
        opened.setLength(end);
        opened.seek(end);
    }

    /** Where to write what follows, at the end. */
    public OutputStream out() {
        return out;
    }

    @Override
    public void close() {
        close(opened);
    }
}
