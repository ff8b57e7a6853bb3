package dev.lapwright.cache;

import dev.lapwright.fault.LapwrightException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.GrowingFile;
import dev.lapwright.study.StudyMemory;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/**
 * Journal of a command's studies: a text file to which each part of their work, as a lap, is added as it is done, so that what was broken off goes on
 * where it was. Its first line names the program and a SHA-256 of all that the command depends on; each other one a study, a part of it, and its
 * numbers in hexadecimal (Java Language Specification, 3.10.2), exactly. A last line that was not finished is cut off. One command writes
 * it at a time.
 */
public final class StudyJournal implements AutoCloseable {
    private static final String MARK = "lapwright-journal/2";
    /** Begins what is said in words. */
    private static final String WORDS = "!";

    private static final double[] NONE = {};

    private final Path file;
    private final GrowingFile opened;
    private final String title;

    private StudyJournal(Path file, GrowingFile opened, String title) {
        this.file = file;
        this.opened = opened;
        this.title = title;
    }

    /**
     * The journal in a file, which is made if it is not there.
     *
     * @param program which one computes; what another one did is not gone on from
     * @param inputs SHA-256 of all that the command depends on
     * @throws LapwrightException if it cannot be read or written, is no journal, is another command's or program's, or is being written
     */
    @SuppressWarnings("resource") // Closed with the journal.
    public static StudyJournal open(Path file, String program, String inputs) {
        String title = MARK + " " + inputs + " " + program.replaceAll("\\s", "_");
        GrowingFile opened = GrowingFile.open(file, "journal");
        try {
            StudyJournal journal = new StudyJournal(file, opened, title);
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
            throw fault(file, "this is no journal of a study", "name a file that is not there yet");
        }
        String[] words = line.split(" ");
        String[] own = title.split(" ");
        if (words.length != own.length || !words[1].equals(own[1])) {
            throw fault(
                    file,
                    "this is the journal of another study: of another car, setup, circuit, day, line or range",
                    "name another file, or ask for the same again");
        }
        if (!words[2].equals(own[2])) {
            throw fault(
                    file,
                    "this journal was written by another build of Lapwright or Java, or on another kind of machine",
                    "finish it with that one, or name another file");
        }
    }

    /** The memory of one of the studies, by a name without a space. */
    public StudyMemory of(String study) {
        return new StudyMemory() {
            @Override
            public void recall(Recalled recalled) {
                StudyJournal.this.recall(study + " ", recalled);
            }

            @Override
            public void keep(String part, double[] numbers, String words) {
                StudyJournal.this.keep(study + " " + part, numbers, words);
            }

            @Override
            public StudyMemory of(String inner) {
                return StudyJournal.this.of(study + "/" + inner);
            }
        };
    }

    private synchronized void recall(String study, StudyMemory.Recalled recalled) {
        try {
            opened.lines((line, number) -> {
                if (number > 1 && line.startsWith(study)) {
                    recall(line.substring(study.length()), number, recalled);
                }
            });
        } catch (IOException e) {
            throw fault(file, "this journal cannot be read: " + e.getMessage(), "name another file");
        }
    }

    private void recall(String line, int number, StudyMemory.Recalled recalled) {
        int space = line.indexOf(' ');
        if (space < 1) {
            throw notOurs(number);
        }
        String rest = line.substring(space + 1);
        int words = rest.indexOf(WORDS);
        String numbers = words < 0 ? rest : rest.substring(0, words);
        recalled.part(
                line.substring(0, space),
                numbers.isBlank() ? NONE : numbers(numbers.strip(), number),
                words < 0 ? "" : rest.substring(words + 1));
    }

    private double[] numbers(String text, int line) {
        String[] words = text.split(" ");
        double[] numbers = new double[words.length];
        try {
            for (int k = 0; k < numbers.length; k++) {
                numbers[k] = Double.parseDouble(words[k]);
            }
        } catch (NumberFormatException e) {
            throw notOurs(line);
        }
        return numbers;
    }

    private LapwrightException notOurs(int line) {
        return fault(file, "line " + line + " is not what this program wrote", "take the line out");
    }

    private void keep(String part, double[] numbers, String words) {
        StringBuilder line = new StringBuilder(part);
        for (double value : numbers) {
            line.append(' ').append(Double.toHexString(value));
        }
        if (!words.isEmpty()) {
            line.append(' ').append(WORDS).append(words.replaceAll("[\\r\\n]", " "));
        } else if (numbers.length == 0) {
            line.append(' ');
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
