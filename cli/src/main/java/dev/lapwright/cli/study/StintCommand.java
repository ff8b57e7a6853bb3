package dev.lapwright.cli.study;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.lap.StintLaps;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.ResumeOption;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.option.UsualDoubtOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.PlainText;
import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.report.Report;
import dev.lapwright.results.StintReport;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.stint.Compound;
import dev.lapwright.study.stint.Neutralised;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.study.stint.Stint;
import dev.lapwright.study.stint.StintResult;
import dev.lapwright.study.stint.StopPlans;
import dev.lapwright.study.stint.StopPlansResult;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Command {@code stint}: fuel for a race, and its laps as fuel burns and tyres wear. */
@Command(
        name = "stint",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Says how much fuel a race takes, and what fuel and wear do to each lap."},
        customSynopsis = {
            "lapwright stint CAR CIRCUIT (--minutes M | --laps N)",
            "                [--compound NAME:GRIP:WEAR]... [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright stint gt-talvex harrowmere --minutes 20",
            "      Fuel for a sprint of 20 minutes with a formation lap and a lap in reserve.",
            "  lapwright stint gt-talvex harrowmere --laps 20 --compound soft:1.01:0.2 --compound hard:1:0.05",
            "      Two compounds over the distance, and from which lap on the harder one is faster."
        })
public final class StintCommand extends StudyCommand<StintReport> {
    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nRace:%n")
    private final Race race = new Race();

    @ArgGroup(validate = false, heading = "%nStops:%n")
    private final Stops stops = new Stops();

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

    public StintCommand(Console console) {
        super(
                console,
                new StudyFiles<>(StintReport::report)
                        .json("stint.json")
                        .csv("stint.csv")
                        .chart(
                                "laps.svg",
                                found -> new Drawing(StintLaps.of(found.result(), ChartStyle.STANDARD), StintLaps.SIZE))
                        .option("--chart", "Draws the lap times as .svg or .png.")
                        .out("A folder for everything: result, table and chart. Or one file, by its ending: .json for"
                                + " the result, .csv for the table of laps, .svg or .png for the chart."));
    }

    @Override
    public void check() {
        doubt.check(line);
        resume.check(doubt.isDrawing());
        stops.check();
    }

    @Override
    public StintReport study() {
        double density = race.density();
        line.refuseRefresh();
        Subject subject = line.drive(documents.subject(setup, conditions.day(), console), console);
        Stint stint = Stint.of(subject.car(), subject.driven(), subject.day(), race.length())
                .withConsumption(race.consumption())
                .onCompounds(race.compounds());
        StintResult found = stint.run();
        List<String> asked = new ArrayList<>(doubt.asked());
        asked.add(race.length() + " " + race.consumption + " " + race.compounds());
        try (ResumeOption.Kept kept = resume.kept(console, List.of(subject), asked)) {
            return new StintReport(
                    subject,
                    found,
                    density,
                    doubt.stint(stint, kept.of("draws"), StudyRun.onAllCores(), console),
                    stops.plans(subject, found));
        }
    }

    @Override
    public Report report(StintReport found) {
        return found.report();
    }

    /** Stops for tyres, and laps behind a safety car. */
    public static final class Stops {
        private static final double PERCENT = 100;
        private static final double LONGEST_S = 600;

        @Option(
                names = "--stop-loss-s",
                paramLabel = "S",
                description = "Plans stops for tyres: what one costs beside driving on, way through the pits and all.")
        Double loss;

        @Option(
                names = "--most-stops",
                paramLabel = "N",
                description = "How many stops are looked at, 0 to 2; 2 if left out.")
        Integer most;

        @Option(
                names = "--neutralised",
                paramLabel = "FROM-TO",
                description = "Laps on which the race is neutralised, as behind a safety car: 8-11.")
        String laps;

        @Option(
                names = "--neutral-pace-percent",
                paramLabel = "P",
                description = "Speed of those laps, of a racing lap; 65 if left out (common practice, no source).")
        Double pace;

        @Option(
                names = "--neutral-stop-loss-s",
                paramLabel = "S",
                description = "What a stop costs then; half if left out (common practice, no source).")
        Double neutralLoss;

        void check() {
            if (loss == null) {
                if (most != null || laps != null || pace != null || neutralLoss != null) {
                    throw new InvalidValueException(
                            "stops",
                            "nothing is said of what a stop costs",
                            "add --stop-loss-s, as in --stop-loss-s 25");
                }
                return;
            }
            Check.inRange("--stop-loss-s", loss, 0, LONGEST_S);
            if (most != null) {
                Check.inRange("--most-stops", most, 0, 2);
            }
            if (laps != null) {
                neutralised();
            } else if (pace != null || neutralLoss != null) {
                throw new InvalidValueException(
                        "neutralised laps", "nothing is said of which they are", "add --neutralised, as in 8-11");
            }
        }

        Optional<StopPlansResult> plans(Subject subject, StintResult stint) {
            if (loss == null) {
                return Optional.empty();
            }
            StopPlans study = StopPlans.of(subject.car(), subject.driven(), subject.day(), stint, loss);
            if (most != null) {
                study = study.withMostStops(most);
            }
            if (laps != null) {
                study = study.neutralised(neutralised());
            }
            return Optional.of(study.run());
        }

        private Neutralised neutralised() {
            String[] ends = laps.split("-", -1);
            if (ends.length != 2
                    || !ends[0].strip().matches("[0-9]{1,3}")
                    || !ends[1].strip().matches("[0-9]{1,3}")) {
                throw new InvalidValueException(
                        "--neutralised", "'" + laps + "' is no stretch of laps", "write it like 8-11");
            }
            return new Neutralised(
                    (int) Check.inRange("--neutralised", Integer.parseInt(ends[0].strip()), 1, 999),
                    Integer.parseInt(ends[1].strip()),
                    pace == null
                            ? Neutralised.USUAL_PACE
                            : Check.inRange("--neutral-pace-percent", pace, 20, PERCENT) / PERCENT,
                    Neutralised.USUAL_FUEL,
                    Neutralised.USUAL_WEAR,
                    neutralLoss == null
                            ? Neutralised.USUAL_LOSS * loss
                            : Check.inRange("--neutral-stop-loss-s", neutralLoss, 0, LONGEST_S));
        }
    }

    /** How far, on what, and what the engine drinks. */
    public static final class Race {
        private static final double PERCENT = 100;
        private static final int SECONDS_PER_MINUTE = 60;
        private static final int WITH_CLIFF = 5;

        @Option(names = "--minutes", paramLabel = "M", description = "A timed race: the lap under way is finished.")
        Double minutes;

        @Option(names = "--laps", paramLabel = "N", description = "A counted race.")
        Integer laps;

        @Option(
                names = "--formation-laps",
                paramLabel = "N",
                defaultValue = "1",
                description = "Laps before the start. Default: 1.")
        int formationLaps;

        @Option(
                names = "--formation-percent",
                paramLabel = "P",
                defaultValue = "60",
                description = "Fuel of a formation lap, in percent of a racing lap. Default: 60 (common practice, no"
                        + " source).")
        double formationPercent;

        @Option(
                names = "--reserve-laps",
                paramLabel = "N",
                defaultValue = "1",
                description = "Racing laps for which fuel is left at the flag. Default: 1.")
        double reserveLaps;

        @Option(
                names = "--consumption",
                paramLabel = "G_PER_KWH",
                defaultValue = "304",
                description =
                        "Specific fuel consumption at full load, g/kWh, or a map of it over engine speed:"
                                + " 3000=310,6000=290,8000=320. Default: 304 (0.5 lb/hp h, racing engine without a turbocharger).")
        String consumption;

        @Option(
                names = "--density-kg-per-l",
                paramLabel = "D",
                defaultValue = "0.745",
                description = "Density of the fuel. Default: 0.745 (EN 228 petrol: 0.720 to 0.775).")
        double density;

        @Option(
                names = "--compound",
                paramLabel = "NAME:GRIP:WEAR",
                description =
                        "A tyre: grip when new, 1 for that of the car's document, and the percent of it lost on each"
                                + " lap, as in soft:1.01:0.2; ':LAPS:WEAR' behind adds wear after so many laps. May be repeated, to"
                                + " compare. Without it: tyre:1:0.1 (common practice, no source).")
        List<String> compounds = new ArrayList<>();

        RaceLength length() {
            if ((laps == null) == (minutes == null)) {
                throw new InvalidValueException(
                        "race",
                        laps == null ? "its length is not given" : "it is both counted and timed",
                        "give --laps N or --minutes M");
            }
            double timed = minutes == null ? 0 : Check.inRange("--minutes", minutes, 0.1, 360);
            double counted = laps == null ? 0 : Check.inRange("--laps", laps, 1, 300);
            double share = Check.inRange("--formation-percent", formationPercent, 0, PERCENT);
            Check.inRange("--formation-laps", formationLaps, 0, 10);
            Check.inRange("--reserve-laps", reserveLaps, 0, 20);
            return new RaceLength(
                    (int) counted, timed * SECONDS_PER_MINUTE, formationLaps, share / PERCENT, reserveLaps);
        }

        double density() {
            return Check.inRange("--density-kg-per-l", density, 0.5, 1.2);
        }

        FuelConsumption consumption() {
            String place = "--consumption " + consumption;
            if (consumption.indexOf('=') < 0) {
                return FuelConsumption.constant(number(place, consumption));
            }
            String[] points = consumption.split(",", -1);
            double[] rpm = new double[points.length];
            double[] values = new double[points.length];
            for (int i = 0; i < points.length; i++) {
                String[] parts = points[i].split("=", -1);
                if (parts.length != 2) {
                    throw new InvalidValueException(
                            place, "'" + points[i] + "' is no point of a map", "write RPM=G_PER_KWH, as in 6000=290");
                }
                rpm[i] = number(place, parts[0]);
                values[i] = number(place, parts[1]);
            }
            return new FuelConsumption(rpm, values);
        }

        List<Compound> compounds() {
            if (compounds.isEmpty()) {
                return List.of(Compound.steady("tyre", 1, 0.001));
            }
            List<Compound> read = new ArrayList<>();
            Set<String> names = new HashSet<>();
            for (String text : compounds) {
                String place = "--compound " + text;
                String[] parts = text.split(":", -1);
                if ((parts.length != 3 && parts.length != WITH_CLIFF) || parts[0].isBlank()) {
                    throw new InvalidValueException(
                            place,
                            "it is no name with grip and wear",
                            "write it as in soft:1.01:0.2 or soft:1.01:0.2:15:0.5");
                }
                PlainText.problem(parts[0].trim()).ifPresent(problem -> {
                    throw new InvalidValueException(place, problem, "leave it out");
                });
                if (!names.add(parts[0].trim())) {
                    throw new InvalidValueException(place, "two have this name", "give each its own name");
                }
                boolean cliff = parts.length == WITH_CLIFF;
                read.add(new Compound(
                        parts[0].trim(),
                        number(place, parts[1]),
                        number(place, parts[2]) / PERCENT,
                        cliff ? number(place, parts[3]) : 0,
                        cliff ? number(place, parts[4]) / PERCENT : 0));
            }
            return read;
        }

        private static double number(String place, String text) {
            return DecimalText.number(text)
                    .orElseThrow(() -> new InvalidValueException(
                            place, "'" + text + "' is not a number", "write a number with a decimal point"));
        }
    }
}
