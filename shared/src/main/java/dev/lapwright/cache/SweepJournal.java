package dev.lapwright.cache;

import dev.lapwright.fault.LapwrightException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.study.sweep.SweepMemory;
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

/**
 * Journal of a sweep: a text file to which each lap is added as it is driven, so that a sweep that was broken off goes on where it was. Its
 * first line names the program and a SHA-256 of all that the sweep depends on; numbers are written in hexadecimal (Java Language
 * Specification, 3.10.2), exactly. A last line that was not finished is cut off. One sweep writes it at a time.
 */
public final class SweepJournal implements SweepMemory, AutoCloseable {
    private static final String MARK = "lapwright-journal/1";
    private static final String NO_LAP = "!";
    private static final int FIGURES = 6;

    private final Path file;
    private final RandomAccessFile opened;
    private final OutputStream out;
    private final String title;

    private SweepJournal(Path file, RandomAccessFile opened, String title) {
        this.file = file;
        this.opened = opened;
        this.title = title;
        out = Channels.newOutputStream(opened.getChannel());
    }

    /**
     * The journal in a file, which is made if it is not there.
     *
     * @param program which one computes; another one's laps are not gone on from
     * @param inputs SHA-256 of all that the sweep depends on
     * @throws LapwrightException if it cannot be read or written, is no journal, is another sweep's or program's, or is being written
     */
    @SuppressWarnings("resource") // Closed with the journal.
    public static SweepJournal open(Path file, String program, String inputs) {
        String title = MARK + " " + inputs + " " + program.replaceAll("\\s", "_");
        RandomAccessFile opened = null;
        try {
            checkPlain(file);
            opened = new RandomAccessFile(file.toFile(), "rw");
            FileLock lock = lock(opened);
            if (lock == null) {
                throw fault(file, "another sweep is writing this journal", "wait for it, or name another file");
            }
            SweepJournal journal = new SweepJournal(file, opened, title);
            journal.begin();
            return journal;
        } catch (IOException e) {
            close(opened);
            throw fault(file, "this journal cannot be opened: " + e.getMessage(), "check the folder and its rights");
        } catch (LapwrightException e) {
            close(opened);
            throw e;
        }
    }

    private static void checkPlain(Path file) {
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw fault(file, "this is no file", "name a file");
        }
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

    private static LapwrightException fault(Path file, String problem, String remedy) {
        return new DocumentException(file.toString(), problem, remedy);
    }

    /** Reads or writes the first line, and cuts off what follows the last whole one. */
    private void begin() throws IOException {
        if (opened.length() == 0) {
            write(title);
            return;
        }
        long[] end = {0};
        lines((line, number) -> {
            end[0] += line.getBytes(StandardCharsets.UTF_8).length + 1L;
            if (number == 1) {
                checkTitle(line);
            }
        });
        if (end[0] == 0) {
            checkTitle("");
        }
        opened.setLength(end[0]);
        opened.seek(end[0]);
    }

    private void checkTitle(String line) {
        if (!line.startsWith(MARK + " ")) {
            throw fault(file, "this is no journal of a sweep", "name a file that is not there yet");
        }
        String[] words = line.split(" ");
        String[] own = title.split(" ");
        if (words.length != own.length || !words[1].equals(own[1])) {
            throw fault(
                    file,
                    "this is the journal of another sweep: of another car, setup, circuit, day, line or range",
                    "name another file, or ask for the same sweep again");
        }
        if (!words[2].equals(own[2])) {
            throw fault(
                    file,
                    "this journal was written by another build of Lapwright or Java, or on another kind of machine",
                    "finish it with that one, or name another file");
        }
    }

    /** All whole lines from the beginning, with their numbers from 1. */
    private void lines(ObjIntConsumer<String> taker) throws IOException {
        byte[] buffer = new byte[1 << 16];
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        opened.seek(0);
        int number = 0;
        for (int read = opened.read(buffer); read > 0; read = opened.read(buffer)) {
            int from = 0;
            for (int i = 0; i < read; i++) {
                if (buffer[i] == '\n') {
                    line.write(buffer, from, i - from);
                    taker.accept(line.toString(StandardCharsets.UTF_8), ++number);
                    line.reset();
                    from = i + 1;
                }
            }
            line.write(buffer, from, read - from);
        }
    }

    @Override
    public synchronized void recall(Recalled recalled) {
        try {
            long end = opened.length();
            lines((line, number) -> {
                if (number > 1) {
                    recall(line, number, recalled);
                }
            });
            opened.seek(end);
        } catch (IOException e) {
            throw fault(file, "this journal cannot be read: " + e.getMessage(), "name another file");
        }
    }

    private void recall(String line, int number, Recalled recalled) {
        try {
            int space = line.indexOf(' ');
            int index = Integer.parseInt(line.substring(0, space));
            String rest = line.substring(space + 1);
            if (rest.startsWith(NO_LAP)) {
                recalled.lap(index, null, rest.substring(1));
                return;
            }
            String[] words = rest.split(" ");
            double[] v = new double[FIGURES];
            for (int k = 0; k < FIGURES; k++) {
                v[k] = Double.parseDouble(words[k]);
            }
            recalled.lap(index, new LapFigures(v[0], v[1], v[2], v[3], v[4], v[5]), "");
        } catch (RuntimeException e) {
            throw fault(file, "line " + number + " is not what this program wrote", "take the line out");
        }
    }

    @Override
    public void keep(int index, LapFigures lap, String failure) {
        StringBuilder line = new StringBuilder().append(index).append(' ');
        if (lap == null) {
            line.append(NO_LAP).append(failure.replaceAll("[\\r\\n]", " "));
        } else {
            for (double value : new double[] {
                lap.lapTime(),
                lap.topSpeed(),
                lap.minimumSpeed(),
                lap.minimumCornerSpeed(),
                lap.meanCornerSpeed(),
                lap.meanSpeed()
            }) {
                line.append(Double.toHexString(value)).append(' ');
            }
            line.setLength(line.length() - 1);
        }
        try {
            write(line.toString());
        } catch (IOException e) {
            throw fault(
                    file,
                    "a lap cannot be kept: " + e.getMessage(),
                    "make room; what stands in the file is whole, and the same command goes on from it");
        }
    }

    private synchronized void write(String line) throws IOException {
        out.write((line + "\n").getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public void close() {
        close(opened);
    }
}
