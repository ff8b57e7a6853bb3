package dev.lapwright.cli.study;

import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.cli.output.TerminalReport;
import dev.lapwright.report.Report;
import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;

/**
 * Base of the commands of all studies: files are planned before the work and written before anything is printed, and the
 * result is printed for people or for machines.
 *
 * @param <R> what the study found
 */
public abstract class StudyCommand<R> implements Callable<Integer> {
    /** Where to print. */
    public final Console console;

    /** What can be written. */
    public final StudyFiles<R> files;

    @Mixin
    public HelpOption help;

    public StudyCommand(Console console, StudyFiles<R> files) {
        this.console = console;
        this.files = files;
    }

    /** Completes what is known of the command's options. */
    public void addTo(CommandSpec spec) {
        files.addTo(spec);
    }

    /** Finds fault with options that depend on each other, before files are planned. */
    public void check() {}

    /** Does what was asked. */
    public abstract R study();

    /** What is said of the result. */
    public abstract Report report(R result);

    /** Says what stands beside the result, and with which exit code the command ends. */
    public int end(R result) {
        return ExitCode.DONE;
    }

    @Override
    public final Integer call() {
        check();
        StudyFiles<R>.Plan plan = files.plan();
        R result = study();
        plan.write(result);
        Report report = report(result);
        if (files.isJson()) {
            console.text(report::json);
        } else {
            TerminalReport.print(console, report);
        }
        plan.report(console);
        int code = end(result);
        plan.throwIfAny();
        return code;
    }
}
