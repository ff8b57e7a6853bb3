package dev.lapwright.cli.option;

import dev.lapwright.cache.StudyJournal;
import dev.lapwright.cli.output.Console;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.SafeFile;
import dev.lapwright.results.InputHash;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyMemory;
import java.util.List;
import picocli.CommandLine.Option;

/** Option to go on where long work was broken off. */
public final class ResumeOption {
    /** What a program is called that was not built. */
    private static final String UNBUILT = "classes";

    @Option(
            names = "--resume",
            paramLabel = "FILE",
            description =
                    "Keeps each lap, setup, drawn car or round of a fit in this file as it is done, and does only what is missing there: the"
                            + " same command goes on where it was broken off.")
    String resume;

    /** What the studies of a command have done, and what they do; nothing where it is not asked for. */
    public static final class Kept implements AutoCloseable {
        private final StudyJournal journal;

        private Kept(StudyJournal journal) {
            this.journal = journal;
        }

        /** What one of the studies has done, by a name of its own. */
        public StudyMemory of(String study) {
            return journal == null ? StudyMemory.NONE : journal.of(study);
        }

        @Override
        public void close() {
            if (journal != null) {
                journal.close();
            }
        }
    }

    /**
     * What was done of a command's work.
     *
     * @param subjects what it is about: cars as set up, days, circuits and lines
     * @param asked all else that the work depends on, in any words
     */
    public Kept kept(Console console, List<Subject> subjects, List<String> asked) {
        return new Kept(
                resume == null
                        ? null
                        : StudyJournal.open(
                                SafeFile.path(resume),
                                console.program().orElse(UNBUILT),
                                InputHash.of(subjects, asked)));
    }

    /** Refuses it where what it would keep is drawn cars, and there are none. */
    public void check(boolean drawing) {
        if (resume != null && !drawing) {
            throw new InvalidValueException(
                    "--resume", "no cars are drawn, so there is nothing to keep", "add --draws 200, or leave it out");
        }
    }

    /** Whether it is asked for; said where work was broken off. */
    public boolean isAsked() {
        return resume != null;
    }
}
