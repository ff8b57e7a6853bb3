package dev.lapwright.cli;

import dev.lapwright.report.Report;
import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;

/**
 * What the commands of all studies have in common: files are planned before the work and written before anything is printed,
 * and the result is printed for people or for machines.
 *
 * @param <R> what the study found
 */
abstract class StudyCommand<R> implements Callable<Integer> {
    /** Where to print. */
    final Console console;

    /** What can be written. */
    final StudyFiles<R> files;

    @Mixin
    HelpOption help;

    StudyCommand(Console console, StudyFiles<R> files) {
        this.console = console;
        this.files = files;
    }

    /** Completes what is known of the command's options. */
    void addTo(CommandSpec spec) {
        files.addTo(spec);
    }

    /** Does what was asked. */
    abstract R study();

    /** What is said of the result. */
    abstract Report report(R result);

    @Override
    public final Integer call() {
        StudyFiles<R>.Plan plan = files.plan();
        R result = study();
        plan.write(result);
        Report report = report(result);
        if (files.isJson()) {
            console.text(report.json());
        } else {
            TerminalReport.print(console, report);
        }
        plan.report(console);
        return Lapwright.DONE;
    }
}
