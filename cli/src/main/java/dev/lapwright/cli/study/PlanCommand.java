package dev.lapwright.cli.study;

import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.cli.output.TerminalReport;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.PlanDocument;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.SafeFile;
import dev.lapwright.report.Report;
import dev.lapwright.results.plan.PlanSummary;
import dev.lapwright.results.plan.PlanTable;
import dev.lapwright.results.plan.PlannedCases;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.plan.LapPlan;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Command {@code plan}: many laps as a file plans them, of several cars, circuits and days. */
@Command(
        name = "plan",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Drives the laps that a file plans, of many cars, circuits, days and settings."},
        customSynopsis = {"lapwright plan FILE [--out TABLE] [--resume] [--part K/N] [OPTIONS]"},
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright plan wings.json --out wings.csv",
            "      A row for each lap of the plan in wings.csv, and the fastest of each case here.",
            "  lapwright plan wings.json --out second.csv --part 2/4 --resume",
            "      The second quarter of its laps, going on where it was broken off."
        })
public final class PlanCommand implements Callable<Integer> {
    private static final Pattern PART = Pattern.compile("([0-9]{1,9})/([0-9]{1,9})");
    private final Console console;

    @Parameters(
            index = "0",
            paramLabel = "FILE",
            description =
                    "The plan, JSON: lapwright (plan/1), name, cars, circuits, conditions, line (smoothest or middle), design"
                            + " (grid, latin hypercube or sobol), points, seed, and vary: by what is varied its values as behind --vary of"
                            + " sweep, or \"\" for an adjustment's whole range.")
    private String file;

    @Option(
            names = "--out",
            paramLabel = "TABLE",
            description = "CSV file to which each lap is added as it is driven, with a hash of what it depends on.")
    private String out;

    @Option(names = "--resume", description = "Goes on with the table where it was broken off.")
    private boolean resume;

    @Option(
            names = "--part",
            paramLabel = "K/N",
            description =
                    "Drives the K-th of N equal parts of the laps alone, as on one of N machines; tables of all parts,"
                            + " one below the other, are the table of the whole.")
    private String part = "1/1";

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "How many laps are driven at the same time; one for each processor core if left out.")
    private Integer threads;

    @Option(names = "--json", description = "Prints the result for machines, as JSON.")
    private boolean json;

    @Mixin
    public HelpOption help;

    public PlanCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (resume && out == null) {
            throw new InvalidValueException("--resume", "there is no table to go on with", "name it by --out");
        }
        PlanDocument document = Documents.plan(SafeFile.path(file));
        LapPlan plan = PlannedCases.plan(document, name -> name, console::remark);
        Matcher of = PART.matcher(part);
        long k = of.matches() ? Long.parseLong(of.group(1)) : 0;
        long n = of.matches() ? Long.parseLong(of.group(2)) : 0;
        if (k < 1 || k > n) {
            throw new InvalidValueException("--part", "'" + part + "' is no part", "write K/N, as in 2/4");
        }
        long from = plan.laps() / n * (k - 1) + Math.min(k - 1, plan.laps() % n);
        long to = from + plan.laps() / n + (k <= plan.laps() % n ? 1 : 0);
        Report report = drive(document, plan, from, to);
        if (json) {
            console.text(report::json);
        } else {
            TerminalReport.print(console, report);
        }
        return ExitCode.DONE;
    }

    private Report drive(PlanDocument document, LapPlan plan, long from, long to) {
        StudyRun how = threads == null ? StudyRun.onAllCores() : StudyRun.onThreads(threads);
        if (out == null) {
            try (ProgressBar bar = new ProgressBar(console, "laps")) {
                PlanSummary summary = new PlanSummary(plan);
                plan.drive(from, to, how.reporting(bar), summary::add);
                return summary.report(document.name());
            }
        }
        try (PlanTable table = PlanTable.open(
                plan, SafeFile.path(out), from, resume, console.build().orElse(""))) {
            if (table.next() > to) {
                throw new InvalidValueException("--part", "the table holds laps behind this part", "name another file");
            }
            try (ProgressBar bar = new ProgressBar(console, "laps")) {
                plan.drive(table.next(), to, how.reporting(bar), table::write);
            }
            return table.summary().report(document.name());
        }
    }
}
