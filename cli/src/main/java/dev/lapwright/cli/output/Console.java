package dev.lapwright.cli.output;

import dev.lapwright.fault.PlainText;
import dev.lapwright.report.Report;
import dev.lapwright.report.UnitSystem;
import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Output of a command: results go to one stream, remarks and errors to the other, both as UTF-8 with plain line feeds
 * whatever the platform prefers. Nothing else in this module prints.
 */
public final class Console {
    private static final String BOLD = "\u001B[1m";
    private static final String FAINT = "\u001B[2m";
    private static final String PLAIN = "\u001B[0m";
    /** What a line may tell a terminal: its end, bold, faint. */
    private static final Pattern OF_LINES = Pattern.compile("\\n|\\t|\\x1B\\[[012]m");
    /** What progress may: to begin the line anew. */
    private static final Pattern OF_PROGRESS = Pattern.compile("\\r\\x1B\\[K");
    /** What a page of help may: type and colour. JSON and tables hold no such thing, for JSON writes it in other characters. */
    private static final Pattern OF_TEXTS = Pattern.compile("\\r?\\n|\\t|\\x1B\\[[0-9;]*m");

    private final WatchedStream watched;
    private final PrintStream out;
    private final PrintStream err;
    private final PrintWriter writer;
    private final boolean styled;
    private final boolean outIsTerminal;
    private final boolean errIsTerminal;
    private final boolean minusSign;
    private final int width;
    private final Optional<Path> cache;
    private final Optional<String> program;
    private UnitSystem units = UnitSystem.SI;

    /**
     * @param out for results
     * @param err for errors, remarks and progress
     * @param styled whether results may carry bold type
     * @param errIsTerminal whether somebody watches the errors, so that progress is worth showing
     */
    public Console(OutputStream out, OutputStream err, boolean styled, boolean errIsTerminal) {
        this(out, err, styled, errIsTerminal, Lines.WIDTH);
    }

    /** The same with lines of so many columns. */
    public Console(OutputStream out, OutputStream err, boolean styled, boolean errIsTerminal, int width) {
        this(out, err, styled, styled, errIsTerminal, true, width, Optional.empty(), Optional.empty());
    }

    private Console(
            OutputStream out,
            OutputStream err,
            boolean styled,
            boolean outIsTerminal,
            boolean errIsTerminal,
            boolean minusSign,
            int width,
            Optional<Path> cache,
            Optional<String> program) {
        watched = new WatchedStream(out);
        this.out = new PrintStream(watched, false, StandardCharsets.UTF_8);
        writer = new PrintWriter(this.out, true, StandardCharsets.UTF_8);
        this.err = new PrintStream(err, true, StandardCharsets.UTF_8);
        this.styled = styled;
        this.outIsTerminal = outIsTerminal;
        this.errIsTerminal = errIsTerminal;
        this.minusSign = minusSign;
        this.width = width;
        this.cache = cache;
        this.program = program;
    }

    private Console(Console other, Path cache, String program) {
        watched = other.watched;
        out = other.out;
        writer = other.writer;
        err = other.err;
        styled = other.styled;
        outIsTerminal = other.outIsTerminal;
        errIsTerminal = other.errIsTerminal;
        minusSign = other.minusSign;
        width = other.width;
        units = other.units;
        this.cache = Optional.of(cache);
        this.program = Optional.of(program);
    }

    /** The same, keeping what was found in a folder, for the same program only. */
    public Console keeping(Path folder, String sameProgram) {
        return new Console(this, folder, sameProgram);
    }

    /**
     * The streams of this process.
     *
     * @param cache folder in which what was found may be kept; empty to keep nothing
     */
    public static Console ofProcess(Optional<Path> cache) {
        String noColour = System.getenv("NO_COLOR");
        boolean dumb = "dumb".equals(System.getenv("TERM"));
        boolean wanted = (noColour == null || noColour.isEmpty()) && !dumb;
        return new Console(
                new BufferedOutputStream(new FileOutputStream(FileDescriptor.out), 1 << 14),
                new FileOutputStream(FileDescriptor.err),
                wanted && Terminal.isOutput(),
                Terminal.isOutput(),
                // Progress overwrites its line, which takes a code of its own.
                Terminal.isError() && !dumb,
                Terminal.isUnicode(),
                Terminal.isOutput() ? Terminal.width() : Lines.WIDTH,
                cache,
                Optional.empty());
    }

    /** Prints reports in these units from here on. */
    public void inUnits(UnitSystem system) {
        units = system;
    }

    /** Units in which reports are printed. */
    public UnitSystem units() {
        return units;
    }

    /** Folder in which what was found may be kept; empty where nothing is. */
    public Optional<Path> cache() {
        return cache;
    }

    /** For which program it is kept; empty for the one that runs, where there is telling which that is. */
    public Optional<String> program() {
        return program.or(VersionText::fingerprint);
    }

    /** The same for results that stand beside those of other machines. */
    public Optional<String> build() {
        return program.or(VersionText::build);
    }

    /** A line of the result, with true minus signs where the terminal has them. */
    public void line(String text) {
        out.print(seen(signed(text), OF_LINES));
        out.print('\n');
    }

    private String signed(String text) {
        return minusSign ? MinusSign.in(text) : Report.plain(text);
    }

    /** An empty line of the result. */
    public void line() {
        out.print('\n');
    }

    /** A document or table of the result: as it is where a program reads it, on a terminal without what cannot be seen. */
    public void text(String text) {
        out.print(outIsTerminal ? seen(text, OF_TEXTS) : text);
    }

    /** A document of the result that is written bit by bit, so that it need not stand in memory. */
    public void text(Document document) {
        try {
            document.writeTo(new Appendable() {
                @Override
                public Appendable append(CharSequence part) {
                    text(part.toString());
                    return this;
                }

                @Override
                public Appendable append(CharSequence part, int start, int end) {
                    return append(part.subSequence(start, end));
                }

                @Override
                public Appendable append(char part) {
                    return append(String.valueOf(part));
                }
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Writes itself bit by bit. */
    @FunctionalInterface
    public interface Document {
        void writeTo(Appendable out) throws IOException;
    }

    /** The result's stream for those who bring their own text. */
    public PrintWriter writer() {
        return writer;
    }

    /** A line beside the result: an error, or a remark that must not get among the figures. */
    public void remark(String text) {
        err.print(seen(text, OF_LINES) + "\n");
    }

    /** Progress: text without a line end, at once. */
    public void progress(String text) {
        err.print(seen(signed(text), OF_PROGRESS));
        err.flush();
    }

    /**
     * Text from anywhere with a question mark for all that would move the cursor, change the terminal or turn the direction of
     * writing; what we tell terminals ourselves stays.
     */
    private static String seen(String text, Pattern own) {
        int bad = 0;
        while (bad < text.length() && !PlainText.isRefused(text.charAt(bad))) {
            bad++;
        }
        if (bad == text.length()) {
            return text;
        }
        StringBuilder seen = new StringBuilder(text.length());
        Matcher ours = own.matcher(text);
        int at = 0;
        while (ours.find()) {
            seen.append(PlainText.shown(text.substring(at, ours.start()))).append(ours.group());
            at = ours.end();
        }
        return seen.append(PlainText.shown(text.substring(at))).toString();
    }

    /** Bold on a terminal. */
    public String bold(String text) {
        return styled ? BOLD + text + PLAIN : text;
    }

    /** Faint on a terminal. */
    public String faint(String text) {
        return styled ? FAINT + text + PLAIN : text;
    }

    /** Columns of a line of the result; into a pipe or a file those of the widest text. */
    public int width() {
        return width;
    }

    /** Whether results may carry bold type. */
    public boolean isStyled() {
        return styled;
    }

    /** Whether errors and progress go to a terminal. */
    public boolean errIsTerminal() {
        return errIsTerminal;
    }

    /** Sends everything on its way and tells why results could not be written, if they could not. */
    public Optional<String> flush() {
        writer.flush();
        out.flush();
        err.flush();
        return watched.failure();
    }
}
