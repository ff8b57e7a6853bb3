package dev.lapwright.cli.output;

/** Exit codes of the command. */
public final class ExitCode {
    /** All went well. */
    public static final int DONE = 0;
    /** Something the user can mend. */
    public static final int BAD_INPUT = 2;
    /** A fault of Lapwright. */
    public static final int UNEXPECTED = 3;

    private ExitCode() {}
}
