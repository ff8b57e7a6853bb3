package dev.lapwright.cli.study;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.sweep.SweepTime;
import dev.lapwright.charts.sweep.TradeOff;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.ResumeOption;
import dev.lapwright.cli.option.SeededDoubtOptions;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.BestSoFar;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.report.Report;
import dev.lapwright.results.ChosenLine;
import dev.lapwright.results.Subject;
import dev.lapwright.results.SweepReport;
import dev.lapwright.results.Vary;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepResult;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Command {@code sweep}: a lap for each value of one or two things that are varied. */
@Command(
        name = "sweep",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Laps a circuit once for each of many settings and says what they are worth."},
        customSynopsis = {
            "lapwright sweep CAR CIRCUIT --vary NAME=VALUES [--vary NAME=VALUES]",
            "                [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright sweep gt-talvex castelvane --vary rear-wing --out wing",
            "      The rear wing over its whole range; table and charts go to the folder wing.",
            "  lapwright sweep gt-talvex castelvane --vary rear-wing=2:10:2 --vary final-drive --json",
            "      Every second wing setting with each final drive, for another program to read."
        })
public final class SweepCommand extends StudyCommand<SweepReport> {
    private static final int MOST_AXES = 2;
    private static final String TRADE_OFF = "--trade-off";

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nSweep:%n")
    private final Varied sweep = new Varied();

    @ArgGroup(validate = false, heading = "%nSetup about which it is varied:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nLong work:%n")
    private final ResumeOption resume = new ResumeOption();

    @ArgGroup(validate = false, heading = "%nDoubt:%n")
    private final SeededDoubtOptions doubt = new SeededDoubtOptions();

    public SweepCommand(Console console) {
        super(
                console,
                new StudyFiles<>((SweepReport found) -> found.report(""))
                        .json("sweep.json")
                        .csv(SweepReport.TABLE)
                        .chart("lap-time.svg", SweepCommand::lapTime)
                        .option("--chart", "Draws the lap time over the sweep as .svg or .png.")
                        .chart("trade-off.svg", SweepCommand::tradeOff)
                        .option(TRADE_OFF, "Draws top speed against speed in corners as .svg or .png.")
                        .out("A folder for everything: result, table and charts. Or one file: .json for the result,"
                                + " .csv for the table, .svg or .png for the chart of the lap time."));
    }

    @Override
    public void check() {
        doubt.check(line);
    }

    @Override
    public SweepReport study() {
        if (sweep.vary.isEmpty()) {
            throw new InvalidValueException(
                    "sweep", "there is nothing to vary", "add --vary NAME=first:last:step, or --vary ADJUSTMENT");
        }
        if (sweep.vary.size() > MOST_AXES) {
            throw new InvalidValueException(
                    "--vary", sweep.vary.size() + " things are varied at once", "give it once or twice");
        }
        Subject subject = documents.subject(setup, conditions.day(), console);
        if (files.given(TRADE_OFF) != null && !hasTradeOff(subject.track())) {
            throw new InvalidValueException(
                    TRADE_OFF,
                    subject.track().name() + " has no corners to trade top speed against",
                    "leave it out, or take a track with corners");
        }
        List<Vary> varied =
                sweep.vary.stream().map(text -> Vary.parse(text, subject)).toList();
        varied.forEach(vary -> vary.note(subject.bare()).ifPresent(note -> console.remark("Note: " + note)));
        Subject driven = line.drive(subject, console);
        List<String> asked = new ArrayList<>(doubt.asked());
        asked.add(SweepReport.inputs(driven, varied));
        try (ResumeOption.Kept kept = resume.kept(console, List.of(driven), asked)) {
            SweepResult found = run(driven, varied, kept);
            return new SweepReport(
                    driven,
                    varied,
                    found,
                    doubt.standings(() -> Robustness.of(found).remembering(kept.of("draws")), how(), console));
        }
    }

    @Override
    public Report report(SweepReport found) {
        return found.report(files.placeOf(SweepReport.TABLE));
    }

    private SweepResult run(Subject subject, List<Vary> varied, ResumeOption.Kept kept) {
        ChosenLine chosen = subject.line();
        Sweep study = chosen.isRefreshed()
                ? Sweep.refreshing(subject.car(), chosen.line().orElseThrow(), chosen.choices(), subject.day())
                        .with(line.finder(console))
                : Sweep.of(subject.car(), chosen.driven(), subject.day());
        for (Vary vary : varied) {
            study = study.over(vary.axis());
        }
        try (BestSoFar best = new BestSoFar(console);
                ProgressBar bar = new ProgressBar(console, "laps")) {
            return study.remembering(kept.of("laps"))
                    .tellingFaster((settings, lapTime) -> best.is(said(settings, lapTime, varied, subject)))
                    .run(how().reporting(bar));
        }
    }

    private String said(List<Double> settings, double lapTime, List<Vary> varied, Subject subject) {
        List<String> with = new ArrayList<>();
        for (int i = 0; i < settings.size(); i++) {
            with.add(Subject.said(subject.bare(), varied.get(i).axis().name(), settings.get(i)));
        }
        return BestSoFar.words(lapTime, String.join(", ", with), resume.isAsked());
    }

    private StudyRun how() {
        return sweep.threads == null ? StudyRun.onAllCores() : StudyRun.onThreads(sweep.threads);
    }

    private static Drawing lapTime(SweepReport found) {
        return new Drawing(SweepTime.of(found.result(), ChartStyle.STANDARD), SweepTime.SIZE);
    }

    private static Drawing tradeOff(SweepReport found) {
        return hasTradeOff(found.subject().track())
                ? new Drawing(TradeOff.of(found.result(), ChartStyle.STANDARD), TradeOff.SIZE)
                : null;
    }

    /** Whether there are corners to trade top speed against. */
    private static boolean hasTradeOff(Track track) {
        return !track.stations(StationSpacing.DEFAULT).corners().isEmpty();
    }

    /** What is varied. */
    public static final class Varied {
        @Option(
                names = "--vary",
                paramLabel = "NAME=VALUES",
                description = "What to vary: an adjustment of the car, one of its quantities, or one of the conditions;"
                        + " give it once or twice. VALUES is first:last:step, or a list v1,v2,…; one may carry a"
                        + " unit: front-pressure=24:30:1psi. The name of an adjustment alone takes its whole range.")
        List<String> vary = new ArrayList<>();

        @Option(
                names = "--threads",
                paramLabel = "N",
                description = "How many laps are driven at the same time; one for each processor core if left out.")
        Integer threads;
    }
}
