package dev.lapwright.cli;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentFault;
import java.io.PrintWriter;
import java.io.StringWriter;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Report of whatever went wrong, as lines of the form "lapwright: where: what; what to do". */
final class ErrorReport implements IParameterExceptionHandler, IExecutionExceptionHandler {
    private static final String BEGINNING = "lapwright: ";
    private static final int FAULTS_SHOWN = 20;

    private final Console console;
    private final LapwrightCommand root;

    ErrorReport(Console console, LapwrightCommand root) {
        this.console = console;
        this.root = root;
    }

    @Override
    public int handleParseException(ParameterException fault, String[] arguments) {
        return handleExecutionException(ArgumentFault.of(fault), fault.getCommandLine(), null);
    }

    @Override
    public int handleExecutionException(Exception fault, CommandLine line, ParseResult parsed) {
        if (fault instanceof LapwrightException known) {
            known(console, known);
            trace(console, fault, root.debug);
            return ExitCode.BAD_INPUT;
        }
        return unexpected(console, fault, root.debug);
    }

    /** A fault that a user can mend, in its lines. */
    static void known(Console console, LapwrightException fault) {
        if (fault instanceof DocumentException document && document.faults().size() > 1) {
            int shown = 0;
            for (DocumentFault one : document.faults()) {
                if (shown++ == FAULTS_SHOWN) {
                    int more = document.faults().size() - FAULTS_SHOWN;
                    console.remark(
                            BEGINNING + document.source() + ": there are " + more + " more faults; mend these first");
                    break;
                }
                String place = one.place().isEmpty() ? "" : ", " + one.place();
                String remedy = one.remedy().isEmpty() ? "" : "; " + one.remedy();
                console.remark(BEGINNING + oneLine(document.source() + place + ": " + one.problem() + remedy));
            }
            return;
        }
        console.remark(BEGINNING + oneLine(fault.getMessage()));
    }

    /** A fault that is ours, not the user's, unless it is that the memory is too small. */
    static int unexpected(Console console, Throwable fault, boolean trace) {
        if (isLackOfMemory(fault)) {
            console.remark(BEGINNING
                    + "memory: there is not enough for this; take fewer values, or give Java more with"
                    + " JAVA_TOOL_OPTIONS=-Xmx4g");
            trace(console, fault, trace);
            return ExitCode.BAD_INPUT;
        }
        String what = fault.getClass().getSimpleName();
        String message = fault.getMessage() == null ? "" : " (" + oneLine(fault.getMessage()) + ")";
        String how = trace ? "" : " with what --debug prints";
        console.remark(BEGINNING + "internal fault: " + what + message
                + "; this is a defect of Lapwright, please report the command and its documents" + how);
        trace(console, fault, trace);
        return ExitCode.UNEXPECTED;
    }

    /** Whether it is that, or was on another thread of the work. */
    private static boolean isLackOfMemory(Throwable fault) {
        for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
            if (cause instanceof OutOfMemoryError) {
                return true;
            }
        }
        return false;
    }

    private static void trace(Console console, Throwable fault, boolean wanted) {
        if (wanted) {
            StringWriter lines = new StringWriter();
            fault.printStackTrace(new PrintWriter(lines));
            console.remark(lines.toString().stripTrailing());
        }
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\s*\\R\\s*", " ");
    }
}
