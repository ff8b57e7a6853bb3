package dev.lapwright.cli.study;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.setup.RankedWorth;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.OpinionOption;
import dev.lapwright.cli.option.ResumeOption;
import dev.lapwright.cli.option.SeededDoubtOptions;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.MinusSign;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.fault.Check;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.results.LineCheck;
import dev.lapwright.results.ModelCheck;
import dev.lapwright.results.SensitivityReport;
import dev.lapwright.results.Standings;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.lines.OwnLinesResult;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.sensitivity.Sensitivity;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Command {@code sensitivity}: what matters at a circuit, and whether it can be seen. */
@Command(
        name = "sensitivity",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Ranks adjustments by what they are worth, and says which the timing screen can show."},
        customSynopsis = {
            "lapwright sensitivity CAR CIRCUIT [--laps N] [--scatter-s S]",
            "                      [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright sensitivity gt-talvex castelvane",
            "      What each adjustment is worth, and what 30 laps can show of it.",
            "  lapwright sensitivity student-pipit harrowmere --laps 12 --scatter-s 0.6 --out worth",
            "      For a driver whose laps scatter more; result, table and chart go to the folder worth."
        })
public final class SensitivityCommand extends StudyCommand<SensitivityReport> {
    private static final double LEAST_SCATTER_S = 0.001;
    private static final double MOST_SCATTER_S = 60;
    private static final int FEWEST_LAPS = 4;
    private static final int MOST_LAPS = 100_000;

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nTiming screen:%n")
    private final TimingScreen screen = new TimingScreen();

    @ArgGroup(validate = false, heading = "%nSetup about which it is varied:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nSecond opinion:%n")
    private final OpinionOption opinion = new OpinionOption();

    @ArgGroup(validate = false, heading = "%nLong work (of --draws):%n")
    private final ResumeOption resume = new ResumeOption();

    @ArgGroup(validate = false, heading = "%nDoubt:%n")
    private final SeededDoubtOptions doubt = new SeededDoubtOptions();

    public SensitivityCommand(Console console) {
        super(
                console,
                new StudyFiles<>(SensitivityReport::report)
                        .json("sensitivity.json")
                        .csv("sensitivity.csv")
                        .chart("sensitivity.svg", SensitivityCommand::chart)
                        .option("--chart", "Draws what each adjustment is worth as .svg or .png.")
                        .out(
                                "A folder for everything: result, table and chart. Or one file: .json for the result, .csv for"
                                        + " the table, .svg or .png for the chart."));
    }

    /** What the timing screen can show, and how many laps are driven at once. */
    public static final class TimingScreen {
        @Option(
                names = "--scatter-s",
                paramLabel = "S",
                description = "Standard deviation of the driver's lap times in one setup, s; 0.3 if left out.")
        double scatterS = 0.3;

        @Option(
                names = "--laps",
                paramLabel = "N",
                description = "Laps there are to try something, half of them with each of two setups; 30 if left out.")
        int laps = 30;

        @Option(
                names = "--threads",
                paramLabel = "N",
                description = "How many laps are computed at the same time; one for each processor core if left out.")
        Integer threads;
    }

    @Override
    public void check() {
        doubt.check(line);
        resume.check(doubt.isDrawing());
    }

    @Override
    public SensitivityReport study() {
        Check.inRange("--scatter-s", screen.scatterS, LEAST_SCATTER_S, MOST_SCATTER_S);
        Check.inRange("--laps", screen.laps, FEWEST_LAPS, MOST_LAPS);
        line.refuseRefresh();
        Subject subject = line.drive(documents.subject(setup, conditions.day(), console), console);
        Sensitivity study = Sensitivity.of(subject.car(), subject.driven(), subject.day())
                .withScatter(screen.scatterS)
                .withLaps(screen.laps);
        StudyRun how = screen.threads == null ? StudyRun.onAllCores() : StudyRun.onThreads(screen.threads);
        SensitivityResult found;
        try (ProgressBar bar = new ProgressBar(console, "adjustments and pairs")) {
            found = study.run(how.reporting(bar));
        }
        Optional<Standings> drawn;
        try (ResumeOption.Kept kept = resume.kept(console, List.of(subject), doubt.asked())) {
            drawn = doubt.standings(() -> robustness(found).remembering(kept.of("draws")), how, console);
        }
        return new SensitivityReport(
                subject, found, checks(subject, found, how), drawn, opinions(subject, found, drawn, how));
    }

    /** Of those that gain most. */
    private List<ModelCheck> opinions(
            Subject subject, SensitivityResult found, Optional<Standings> drawn, StudyRun how) {
        List<SensitivityResult.Worth> first = SensitivityReport.first(found);
        Map<String, Car> cars = new LinkedHashMap<>();
        for (SensitivityResult.Worth worth : first) {
            String name = worth.adjustment().name();
            double best = worth.best().setting();
            cars.put(Subject.said(subject.car(), name, best), subject.car().with(name, best));
        }
        return opinion.ask(
                subject,
                cars,
                i -> drawn.map(of -> of.result().standings().get(found.worths().indexOf(first.get(i)))),
                how,
                console);
    }

    /** Asked of the one that gains most. */
    private static Robustness robustness(SensitivityResult found) {
        Robustness study = Robustness.of(found);
        return SensitivityReport.first(found).stream()
                .findFirst()
                .map(worth -> study.asking(found.worths().indexOf(worth)))
                .orElse(study.asking(0));
    }

    /** Those that gain most, each on a line of its own. */
    private List<LineCheck> checks(Subject subject, SensitivityResult found, StudyRun how) {
        List<SensitivityResult.Worth> first = SensitivityReport.first(found);
        if (first.isEmpty()) {
            return List.of();
        }
        List<Car> cars = first.stream()
                .map(worth -> subject.car()
                        .with(worth.adjustment().name(), worth.best().setting()))
                .toList();
        Optional<OwnLinesResult> own = line.ownLines(subject, cars, how, console);
        List<LineCheck> checks = new ArrayList<>();
        for (int i = 0; own.isPresent() && i < first.size(); i++) {
            SensitivityResult.Worth worth = first.get(i);
            checks.add(LineCheck.of(
                    Subject.said(
                            subject.car(),
                            worth.adjustment().name(),
                            worth.best().setting()),
                    worth.best().difference(),
                    own.get(),
                    i));
        }
        return checks;
    }

    @Override
    public Report report(SensitivityReport found) {
        return found.report();
    }

    private static Drawing chart(SensitivityReport found) {
        List<RankedWorth.WorthBars> bars =
                found.result().worths().stream().map(SensitivityCommand::bars).toList();
        String subject = found.subject().title();
        double visible = found.result().visible();
        return new Drawing(
                RankedWorth.of(subject, bars, visible, ChartStyle.STANDARD),
                RankedWorth.size(bars.size()),
                width -> new Drawing(
                        RankedWorth.overTheRange(subject, bars, visible, ChartStyle.STANDARD),
                        RankedWorth.sizeOverTheRange(width, bars.size(), ChartStyle.STANDARD)),
                RankedWorth.NARROW_BELOW);
    }

    /** What a chart says of one adjustment. */
    public static RankedWorth.WorthBars bars(SensitivityResult.Worth worth) {
        Adjustment adjustment = worth.adjustment();
        boolean faster = worth.hasFaster();
        boolean slower = worth.hasSlower();
        return new RankedWorth.WorthBars(
                adjustment.label().isBlank() ? adjustment.name() : adjustment.label(),
                adjustment.choices().isEmpty() ? Numbers.with(adjustment.step(), adjustment.unit()) : "",
                worth.lower().difference(),
                worth.higher().difference(),
                faster ? worth.best().difference() : 0,
                MinusSign.in(SensitivityReport.setting(worth, worth.best().setting())),
                slower ? worth.worst().difference() : 0,
                MinusSign.in(SensitivityReport.setting(worth, worth.worst().setting())));
    }
}
