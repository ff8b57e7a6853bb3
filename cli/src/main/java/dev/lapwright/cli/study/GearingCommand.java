package dev.lapwright.cli.study;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Unit;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.OpinionOption;
import dev.lapwright.cli.option.ResumeOption;
import dev.lapwright.cli.option.SeededDoubtOptions;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.report.Report;
import dev.lapwright.results.GearingReport;
import dev.lapwright.results.LineCheck;
import dev.lapwright.results.ModelCheck;
import dev.lapwright.results.Standings;
import dev.lapwright.results.Subject;
import dev.lapwright.results.Vary;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.gearing.Gearing;
import dev.lapwright.study.gearing.GearingAxes;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.gearing.RatioBox;
import dev.lapwright.study.gearing.RatioBoxResult;
import dev.lapwright.study.lines.OwnLinesResult;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.sweep.SweepAxis;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Command {@code gearing}: which gearing to fit. */
@Command(
        name = "gearing",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Says what a lap makes of the gears, and which final drive and ratios to fit."},
        customSynopsis = {
            "lapwright gearing CAR CIRCUIT [--final-drives VALUES] [--ratio GEAR=VALUES]...",
            "                  [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright gearing gt-talvex castelvane --tow-percent 20 --head-wind-kmh 30",
            "      All final drives and ratios of the car, also behind another and against a wind.",
            "  lapwright gearing gt-talvex harrowmere --ratio 6=0.95,1,1.05 --out sixth",
            "      Three sixth gears; result and tables go to the folder sixth."
        })
public final class GearingCommand extends StudyCommand<GearingReport> {
    private static final double LONGEST_S = 60;

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nGearing:%n")
    private final Tried gearing = new Tried();

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

    @ArgGroup(validate = false, heading = "%nDoubt (of the day as given, without tow or wind):%n")
    private final SeededDoubtOptions doubt = new SeededDoubtOptions();

    public GearingCommand(Console console) {
        super(
                console,
                new StudyFiles<>(GearingReport::report)
                        .json("gearing.json")
                        .csv("gearing.csv")
                        .csv("shifts.csv")
                        .csv("traction.csv")
                        .chart("gears.svg", GearingCharts::sawtooth)
                        .option("--chart", "Draws engine speed over road speed in each gear as .svg or .png.")
                        .chart("traction.svg", GearingCharts::traction)
                        .option(
                                "--traction-chart",
                                "Draws the force of each gear against the resistance, also in the tow and the wind, as"
                                        + " .svg or .png.")
                        .out(
                                "A folder for everything: result, table of gearings, shifts, force in each gear over speed,"
                                        + " and charts. Or one file: .json for the result, .csv for the table of gearings, .svg or"
                                        + " .png for the chart of engine speed."));
    }

    /** Which gearings are tried, and in which situations. */
    public static final class Tried {
        @Option(
                names = "--final-drives",
                paramLabel = "VALUES",
                description =
                        "Final drives to try, as the car's own adjustment counts them, in ratios or in teeth: first:last:step,"
                                + " or a list v1,v2,…. first:last takes what that adjustment allows between the two. Without this and --ratio: all that can be fitted.")
        String finalDrives;

        @Option(
                names = "--ratio",
                paramLabel = "GEAR=VALUES",
                description = "Ratios to try in one gear, the others as they are: 6=0.95,1,1.05; may be repeated.")
        List<String> ratios = new ArrayList<>();

        @Option(
                names = "--tow-percent",
                paramLabel = "P",
                description =
                        "Also in the wake of another car that takes away this much of the drag, all the way round.")
        Double towPercent;

        @Option(
                names = "--head-wind-kmh",
                paramLabel = "V",
                description =
                        "Also with a steady wind that meets the car head on where it is fastest; below zero from behind."
                                + " It takes the place of the wind of the day.")
        Double headWindKmh;

        @Option(
                names = "--before-braking-s",
                paramLabel = "T",
                description = "An upshift this short a time before braking is pointed out; 1 s if left out.")
        double beforeBrakingS = 1;

        @Option(
                names = "--together",
                description =
                        "Also drives every combination of all that is tried, as of the ratios in the box, and tells the best"
                                + " for each number of things changed.")
        boolean together;

        @Option(
                names = "--change-minutes",
                paramLabel = "FINAL:RATIO",
                description =
                        "With --together: the work of changing the final drive, and one ratio, in minutes: 30:90.")
        String changeMinutes;

        @Option(
                names = "--also-at",
                paramLabel = "CIRCUIT=WEIGHT",
                completionCandidates = DemoNames.Circuits.class,
                description =
                        "With --together: one set of ratios for another circuit too, on its smoothest line; WEIGHT is how much a lap"
                                + " of it counts beside one of CIRCUIT, 1 if left out. May be repeated.")
        List<String> alsoAt = new ArrayList<>();
    }

    @Override
    public void check() {
        doubt.check(line);
        resume.check(doubt.isDrawing());
        if (!gearing.together && (gearing.changeMinutes != null || !gearing.alsoAt.isEmpty())) {
            throw new InvalidValueException(
                    gearing.changeMinutes != null ? "--change-minutes" : "--also-at",
                    "it is for combinations, and none are driven",
                    "add --together");
        }
    }

    @Override
    public GearingReport study() {
        Check.inRange("--before-braking-s", gearing.beforeBrakingS, 0, LONGEST_S);
        line.refuseRefresh();
        Subject subject = line.drive(documents.subject(setup, conditions.day(), console), console);
        GearingReport alone = doubted(new GearingReport(
                subject, gearing.beforeBrakingS, gearing(subject).run()));
        GearingReport all = gearing.together ? alone.together(together(subject, alone.result())) : alone;
        List<GearingResult.Candidate> toFit = all.toFit();
        GearingReport found = all.seconded(seconded(subject, all, toFit));
        if (toFit.isEmpty()) {
            return found;
        }
        return line.ownLines(
                        subject,
                        toFit.stream().map(GearingResult.Candidate::car).toList(),
                        StudyRun.onAllCores(),
                        console)
                .map(own -> found.checked(checks(found, toFit, own)))
                .orElse(found);
    }

    /** Every combination of what was tried, on all circuits. */
    private RatioBoxResult together(Subject subject, GearingResult tried) {
        Map<String, Double> minutes = minutes(tried);
        RatioBox study = RatioBox.of(subject.car(), subject.driven(), subject.day(), tried.axes())
                .withMinutes(minutes);
        for (String text : gearing.alsoAt) {
            int equals = text.lastIndexOf('=');
            String name = equals < 0 ? text : text.substring(0, equals);
            double weight = equals < 0
                    ? 1
                    : DecimalText.number(text.substring(equals + 1))
                            .orElseThrow(() -> new InvalidValueException(
                                    "--also-at " + text,
                                    "its weight is not a number",
                                    "write CIRCUIT=WEIGHT, as in harrowmere=0.5"));
            Subject there = LineOptions.driveStandard(subject.at(Documents.circuit(name.trim())), console);
            study = study.alsoAt(there.driven(), weight);
        }
        try (ProgressBar bar = new ProgressBar(console, "combinations")) {
            return study.run(StudyRun.onAllCores().reporting(bar));
        }
    }

    private Map<String, Double> minutes(GearingResult tried) {
        Map<String, Double> minutes = new LinkedHashMap<>();
        if (gearing.changeMinutes != null) {
            String[] parts = gearing.changeMinutes.split(":", -1);
            OptionalDouble drive = DecimalText.number(parts[0]);
            OptionalDouble ratio = parts.length == 2 ? DecimalText.number(parts[1]) : OptionalDouble.empty();
            if (drive.isEmpty() || ratio.isEmpty()) {
                throw new InvalidValueException(
                        "--change-minutes",
                        "'" + gearing.changeMinutes + "' is not two numbers",
                        "write FINAL:RATIO, as in 30:90");
            }
            String finalDrive =
                    GearingAxes.finalDrive(tried.car()).map(Adjustment::name).orElse(GearingAxes.FINAL_DRIVE);
            for (SweepAxis axis : tried.axes()) {
                boolean isDrive = axis.name().equals(finalDrive) || axis.name().equals(GearingAxes.FINAL_DRIVE);
                minutes.put(axis.name(), isDrive ? drive.getAsDouble() : ratio.getAsDouble());
            }
        }
        return minutes;
    }

    private List<ModelCheck> seconded(Subject subject, GearingReport found, List<GearingResult.Candidate> toFit) {
        Map<String, Car> cars = new LinkedHashMap<>();
        toFit.forEach(choice -> cars.put(found.said(choice), choice.car()));
        return opinion.ask(subject, cars, i -> found.stands(toFit.get(i)), StudyRun.onAllCores(), console);
    }

    private GearingReport doubted(GearingReport found) {
        Map<String, Standings> drawn = new LinkedHashMap<>();
        List<String> asked = new ArrayList<>(doubt.asked());
        asked.add(gearing.finalDrives + " " + gearing.towPercent + " " + gearing.headWindKmh);
        asked.addAll(gearing.ratios);
        try (ResumeOption.Kept kept = resume.kept(console, List.of(found.subject()), asked)) {
            for (SweepAxis axis : found.result().axes()) {
                doubt.standings(
                                () -> Robustness.of(found.result(), axis.name())
                                        .remembering(kept.of("draws-" + axis.name())),
                                StudyRun.onAllCores(),
                                console)
                        .ifPresent(standings -> drawn.put(axis.name(), standings));
            }
        }
        return found.doubted(drawn);
    }

    private static List<LineCheck> checks(
            GearingReport found, List<GearingResult.Candidate> toFit, OwnLinesResult own) {
        List<LineCheck> checks = new ArrayList<>();
        for (int i = 0; i < toFit.size(); i++) {
            GearingResult.Candidate choice = toFit.get(i);
            double held = found.result().asGiven().difference(choice);
            checks.add(LineCheck.of(found.said(choice), held, own, i));
        }
        return checks;
    }

    @Override
    public Report report(GearingReport found) {
        return found.report();
    }

    private Gearing gearing(Subject subject) {
        Gearing study = Gearing.of(subject.car(), subject.driven(), subject.day());
        if (gearing.finalDrives != null) {
            study = study.over(finalDrives(subject));
        }
        for (String ratio : gearing.ratios) {
            study = study.over(ratio(ratio, subject));
        }
        if (gearing.towPercent != null) {
            study = study.withTow(Check.inRange("--tow-percent", gearing.towPercent, 0, 60) / 100);
        }
        if (gearing.headWindKmh != null) {
            double kmh = Check.inRange("--head-wind-kmh", gearing.headWindKmh, -144, 144);
            study = study.withHeadWind(Unit.KILOMETRE_PER_HOUR.convert(kmh, Unit.METRE_PER_SECOND));
        }
        return study;
    }

    /** A range without a step takes the steps of the adjustment; any other values are ratios. */
    private SweepAxis finalDrives(Subject subject) {
        Optional<Adjustment> adjustment = GearingAxes.finalDrive(subject.bare());
        boolean withoutStep = gearing.finalDrives.chars().filter(c -> c == ':').count() == 1;
        String name = withoutStep && adjustment.isPresent() ? adjustment.get().name() : GearingAxes.FINAL_DRIVE;
        return Vary.parse(name + "=" + gearing.finalDrives, subject).axis();
    }

    private static SweepAxis ratio(String text, Subject subject) {
        int equals = text.indexOf('=');
        String gear = equals < 0 ? "" : text.substring(0, equals).trim();
        if (!gear.matches("[0-9]{1,2}")) {
            throw new InvalidValueException(
                    "--ratio " + text, "it does not begin with a gear", "write GEAR=VALUES, as in 6=0.95,1,1.05");
        }
        String name = GearingAxes.ratio(subject.bare(), Integer.parseInt(gear));
        return Vary.parse(name + text.substring(equals), subject).axis();
    }
}
