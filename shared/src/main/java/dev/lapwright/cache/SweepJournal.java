package dev.lapwright.cache;

import dev.lapwright.fault.LapwrightException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.GrowingFile;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.study.sweep.SweepMemory;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

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
    private final GrowingFile opened;
    private final String title;

    private SweepJournal(Path file, GrowingFile opened, String title) {
        this.file = file;
        this.opened = opened;
        this.title = title;
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
        GrowingFile opened = GrowingFile.open(file, "journal");
        try {
            SweepJournal journal = new SweepJournal(file, opened, title);
            journal.begin();
            return journal;
        } catch (IOException e) {
            opened.close();
            throw fault(file, "this journal cannot be read: " + e.getMessage(), "check the folder and its rights");
        } catch (LapwrightException e) {
            opened.close();
            throw e;
        }
    }

    private static LapwrightException fault(Path file, String problem, String remedy) {
        return new DocumentException(file.toString(), problem, remedy);
    }

    /** Reads or writes the first line, and cuts off what follows the last whole one. */
    private void begin() throws IOException {
        if (opened.isEmpty()) {
            write(title);
            return;
        }
        boolean[] met = {false};
        opened.lines((line, number) -> {
            if (number == 1) {
                met[0] = true;
                checkTitle(line);
            }
        });
        if (!met[0]) {
            checkTitle("");
        }
        opened.cut();
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

    @Override
    public synchronized void recall(Recalled recalled) {
        try {
            opened.lines((line, number) -> {
                if (number > 1) {
                    recall(line, number, recalled);
                }
            });
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
        opened.out().write((line + "\n").getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public void close() {
        opened.close();
    }
}
