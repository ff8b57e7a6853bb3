package dev.lapwright.cli.output;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * What a command may write to: results go to one stream, remarks and errors to the other, both as UTF-8 with plain line feeds
 * whatever the platform prefers. Nothing else in this module prints.
 */
public final class Console {
    private static final String BOLD = "\u001B[1m";
    private static final String FAINT = "\u001B[2m";
    private static final String PLAIN = "\u001B[0m";

    private final WatchedStream watched;
    private final PrintStream out;
    private final PrintStream err;
    private final PrintWriter writer;
    private final boolean styled;
    private final boolean errIsTerminal;

    /**
     * @param out for results
     * @param err for errors, remarks and progress
     * @param styled whether results may carry bold type
     * @param errIsTerminal whether somebody watches the errors, so that progress is worth showing
     */
    public Console(OutputStream out, OutputStream err, boolean styled, boolean errIsTerminal) {
        watched = new WatchedStream(out);
        this.out = new PrintStream(watched, false, StandardCharsets.UTF_8);
        writer = new PrintWriter(this.out, true, StandardCharsets.UTF_8);
        this.err = new PrintStream(err, true, StandardCharsets.UTF_8);
        this.styled = styled;
        this.errIsTerminal = errIsTerminal;
    }

    /** The streams of this process. */
    public static Console ofProcess() {
        String noColour = System.getenv("NO_COLOR");
        boolean wanted = (noColour == null || noColour.isEmpty()) && !"dumb".equals(System.getenv("TERM"));
        return new Console(
                new BufferedOutputStream(new FileOutputStream(FileDescriptor.out), 1 << 14),
                new FileOutputStream(FileDescriptor.err),
                wanted && Terminal.isOutput(),
                Terminal.isError());
    }

    /** A line of the result. */
    public void line(String text) {
        out.print(text);
        out.print('\n');
    }

    /** An empty line of the result. */
    public void line() {
        out.print('\n');
    }

    /** Text of the result as it is. */
    public void text(String text) {
        out.print(text);
    }

    /** The result's stream for those who bring their own text. */
    public PrintWriter writer() {
        return writer;
    }

    /** A line beside the result: an error, or a remark that must not get among the figures. */
    public void remark(String text) {
        err.print(text + "\n");
    }

    /** Progress: text without a line end, at once. */
    public void progress(String text) {
        err.print(text);
        err.flush();
    }

    /** Bold on a terminal. */
    public String bold(String text) {
        return styled ? BOLD + text + PLAIN : text;
    }

    /** Faint on a terminal. */
    public String faint(String text) {
        return styled ? FAINT + text + PLAIN : text;
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
