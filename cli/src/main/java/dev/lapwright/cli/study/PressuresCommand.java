package dev.lapwright.cli.study;

import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.setup.PressureCosts;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.ResumeOption;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.option.UsualDoubtOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.files.SafeFile;
import dev.lapwright.logs.GaugeText;
import dev.lapwright.logs.PressureLog;
import dev.lapwright.report.Report;
import dev.lapwright.results.PressuresReport;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.study.pressures.Pressures;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.tyre.TreadTemperatures;
import dev.lapwright.tyre.Wheel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Command {@code pressures}: from cold and hot tyre pressures to the next cold setting. */
@Command(
        name = "pressures",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Says which cold tyre pressures to set next, and what a miss costs on a lap."},
        customSynopsis = {
            "lapwright pressures CAR CIRCUIT (--pair TYRE:COLD:HOT... | --log FILE)",
            "                    [--target TYRE:HOT]... [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright pressures gt-talvex harrowmere --pair front:17psi:25psi --pair rear:17psi:24psi",
            "      The next cold setting for the car's ideal hot pressures, and what being off them costs.",
            "  lapwright pressures gt-talvex harrowmere --pair all:1.2bar:1.7bar --next-air-temp-c 25",
            "      The same in other units, for a warmer day."
        })
public final class PressuresCommand extends StudyCommand<PressuresReport> {
    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nTyres:%n")
    private final Tyres tyres = new Tyres();

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nLong work (of --draws):%n")
    private final ResumeOption resume = new ResumeOption();

    @ArgGroup(validate = false, heading = "%nDoubt:%n")
    private final UsualDoubtOptions doubt = new UsualDoubtOptions();

    public PressuresCommand(Console console) {
        super(
                console,
                new StudyFiles<>(PressuresReport::report)
                        .json("pressures.json")
                        .csv("pressures.csv")
                        .chart("cost.svg", PressuresCommand::chart)
                        .option("--chart", "Draws what pressures off the ideal cost as .svg or .png.")
                        .out(
                                "A folder for everything: result, table and chart. Or one file, by its ending: .json for the"
                                        + " result, .csv for the table of tyres, .svg or .png for the chart."));
    }

    @Override
    public void check() {
        doubt.check(line);
        resume.check(doubt.isDrawing());
    }

    @Override
    public PressuresReport study() {
        tyres.gauge();
        line.refuseRefresh();
        Subject subject = line.drive(documents.subject(setup, conditions.day(), console), console);
        PressuresReport found = tyres.study(subject);
        // Without a loss there is nothing that a pressure costs.
        if (!(subject.car().value(Quantity.PRESSURE_LOSS) > 0)) {
            return found;
        }
        List<String> asked = new ArrayList<>(doubt.asked());
        for (Quantity hot : List.of(Quantity.HOT_PRESSURE_FRONT, Quantity.HOT_PRESSURE_REAR)) {
            asked.add("logged " + found.result().logged().value(hot));
        }
        try (ResumeOption.Kept kept = resume.kept(console, List.of(subject), asked)) {
            return found.with(doubt.standings(
                    () -> Robustness.of(found.result()).remembering(kept.of("draws")), StudyRun.onAllCores(), console));
        }
    }

    @Override
    public Report report(PressuresReport found) {
        return found.report();
    }

    private static Drawing chart(PressuresReport found) {
        return new Drawing(
                PressureCosts.of(
                        found.result(),
                        1 / Unit.KILOPASCAL.convert(1, found.unit()),
                        found.unit().symbol(),
                        ChartStyle.STANDARD),
                PressureCosts.SIZE);
    }

    /** What was read off the tyres, and what is wanted. */
    public static final class Tyres {
        @Option(
                names = "--pair",
                paramLabel = "TYRE:COLD:HOT",
                description =
                        "Gauge pressures as set cold and as read hot: FL:17psi:24psi. TYRE is FL, FR, RL, RR, front,"
                                + " rear, left, right or all; may be repeated.")
        List<String> pairs = new ArrayList<>();

        @Option(
                names = "--log",
                paramLabel = "FILE",
                description = "The same from a file of comma-separated values, a row for each tyre of each run: columns"
                        + " tyre, cold, hot and, if known, air, track, cold temp, inner, middle, outer, units in the"
                        + " headings, as in 'cold (psi)'.")
        String log;

        @Option(
                names = "--unit",
                paramLabel = "UNIT",
                defaultValue = "psi",
                description = "psi, kPa or bar: for pressures printed, and those given without a unit. Default: psi.")
        String unit;

        @Option(
                names = "--target",
                paramLabel = "TYRE:HOT",
                description = "Hot gauge pressure wanted; may be repeated. Without it: the car's ideal.")
        List<String> targets = new ArrayList<>();

        @Option(
                names = "--track-temp-c",
                paramLabel = "T",
                description = "Temperature of the track at the run, degrees Celsius. Without it: that of the air.")
        Double trackTempC;

        @Option(
                names = "--cold-temp-c",
                paramLabel = "T",
                description = "Temperature of the tyres when they were set cold. Without it: that of the air.")
        Double coldTempC;

        @Option(
                names = "--next-air-temp-c",
                paramLabel = "T",
                description = "Air temperature to set up for. Without it: as at the last run.")
        Double nextAirTempC;

        @Option(
                names = "--next-track-temp-c",
                paramLabel = "T",
                description = "Track temperature to set up for. Without it: moves with the air.")
        Double nextTrackTempC;

        @Option(
                names = "--next-cold-temp-c",
                paramLabel = "T",
                description = "Temperature of the tyres when they will be set. Without it: moves with the air.")
        Double nextColdTempC;

        @Option(
                names = "--tread",
                paramLabel = "TYRE:IN/MID/OUT",
                description = "Temperatures across a tread, degrees Celsius, inner edge first: FL:92/86/80; may be"
                        + " repeated. Says whether camber and pressure fit.")
        List<String> treads = new ArrayList<>();

        Unit gauge() {
            return GaugeText.unit("--unit", unit);
        }

        PressuresReport study(Subject subject) {
            Conditions day = subject.day();
            PressureDay run = new PressureDay(
                    day.airTempC(), trackTempC == null ? day.airTempC() : trackTempC, day.airPressureHpa());
            List<PressurePair> read = new ArrayList<>();
            Map<Wheel, TreadTemperatures> tread = Map.of();
            String columns = "";
            if (log != null) {
                double cold = coldTempC == null ? Double.NaN : coldTempC;
                PressureLog logged = PressureLog.read(DocumentSource.ofFile(SafeFile.path(log)), run, cold, gauge());
                read.addAll(logged.pairs());
                tread = logged.tread();
                columns = logged.columns();
            }
            for (String pair : pairs) {
                read.addAll(pair(pair, run));
            }
            if (read.isEmpty()) {
                throw new InvalidValueException(
                        "pressures", "no pair of cold and hot is given", "add --pair all:17psi:24psi, or --log FILE");
            }
            Pressures study = Pressures.of(subject.car(), subject.driven(), day, read);
            for (Map.Entry<Wheel, TreadTemperatures> one : tread.entrySet()) {
                study = study.withTread(one.getKey(), one.getValue());
            }
            for (String text : treads) {
                study = tread(study, text);
            }
            for (String target : targets) {
                List<String> parts = parts("--target", target, 2, "front:24psi");
                double kpa = GaugeText.kpa("--target " + target, parts.get(1), gauge());
                for (Wheel wheel : Wheel.named(parts.get(0))) {
                    study = study.withTarget(wheel, kpa);
                }
            }
            PressureResult result = next(study, read.get(read.size() - 1)).run();
            return new PressuresReport(subject, result, gauge(), columns, Optional.empty());
        }

        private Pressures next(Pressures study, PressurePair last) {
            PressureDay before = last.day();
            double air = nextAirTempC == null ? before.airTempC() : nextAirTempC;
            double shift = air - before.airTempC();
            double track = nextTrackTempC == null ? before.trackTempC() + shift : nextTrackTempC;
            double cold = nextColdTempC == null ? last.coldTempC() + shift : nextColdTempC;
            return study.forDay(new PressureDay(air, track, before.airPressureHpa()), cold);
        }

        private List<PressurePair> pair(String text, PressureDay run) {
            List<String> parts = parts("--pair", text, 3, "FL:17psi:24psi");
            double cold = GaugeText.kpa("--pair " + text, parts.get(1), gauge());
            double hot = GaugeText.kpa("--pair " + text, parts.get(2), gauge());
            double coldTemp = coldTempC == null ? run.airTempC() : coldTempC;
            return Wheel.named(parts.get(0)).stream()
                    .map(wheel -> new PressurePair(wheel, cold, hot, coldTemp, run))
                    .toList();
        }

        private static Pressures tread(Pressures study, String text) {
            List<String> parts = parts("--tread", text, 2, "FL:92/86/80");
            String[] temperatures = parts.get(1).split("/", -1);
            double[] values = new double[3];
            boolean numbers = temperatures.length == values.length;
            for (int i = 0; numbers && i < values.length; i++) {
                values[i] = DecimalText.number(temperatures[i]).orElse(Double.NaN);
                numbers = !Double.isNaN(values[i]);
            }
            if (!numbers) {
                throw new InvalidValueException(
                        "--tread " + text,
                        "'" + parts.get(1) + "' is not three temperatures",
                        "write inner/middle/outer, as in FL:92/86/80");
            }
            Pressures with = study;
            for (Wheel wheel : Wheel.named(parts.get(0))) {
                with = with.withTread(wheel, new TreadTemperatures(values[0], values[1], values[2]));
            }
            return with;
        }

        private static List<String> parts(String option, String text, int count, String example) {
            List<String> parts = List.of(text.split(":", -1));
            if (parts.size() != count) {
                throw new InvalidValueException(
                        option + " " + text,
                        "it has " + parts.size() + " parts, not " + count,
                        "write it as in " + example);
            }
            return parts;
        }
    }
}
