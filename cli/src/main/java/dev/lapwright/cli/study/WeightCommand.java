package dev.lapwright.cli.study;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.setup.WeightBars;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.fault.Check;
import dev.lapwright.report.Report;
import dev.lapwright.results.Subject;
import dev.lapwright.results.WeightReport;
import dev.lapwright.study.weight.Weight;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Command {@code weight}: what each kilogram is worth at a circuit, and where. */
@Command(
        name = "weight",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Says what each kilogram is worth at a circuit, where, and over which axle."},
        customSynopsis = {
            "lapwright weight CAR CIRCUIT [--kg M] [--scatter-s S]",
            "                 [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright weight gt-talvex harrowmere",
            "      What 5 kg more or less do to the lap, by part of the lap and over either axle.",
            "  lapwright weight touring-merrow castelvane --kg 20 --out weight",
            "      The same for 20 kg; result, table and chart go to the folder weight."
        })
public final class WeightCommand extends StudyCommand<WeightReport> {
    private static final double LEAST_SCATTER_S = 0.001;
    private static final double MOST_SCATTER_S = 60;

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nWeight:%n")
    private final Scales scales = new Scales();

    @ArgGroup(validate = false, heading = "%nSetup about which it is varied:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    public WeightCommand(Console console) {
        super(
                console,
                new StudyFiles<>(WeightReport::report)
                        .json("weight.json")
                        .csv("weight.csv")
                        .chart("weight.svg", WeightCommand::chart)
                        .option("--chart", "Draws what a kilogram costs in each part of the lap as .svg or .png.")
                        .out(
                                "A folder for everything: result, table and chart. Or one file, by its ending: .json for the"
                                        + " result, .csv for the table of parts, .svg or .png for the chart."));
    }

    /** How much is taken out and put in, and what the watch can show of it. */
    public static final class Scales {
        @Option(
                names = "--kg",
                paramLabel = "M",
                description = "Mass that is taken out and put in, kg, up to a tenth of the car's; 5 if left out.")
        double kg = 5;

        @Option(
                names = "--scatter-s",
                paramLabel = "S",
                description = "Standard deviation of the driver's lap times in one setup, s; 0.3 if left out.")
        double scatterS = 0.3;
    }

    @Override
    public WeightReport study() {
        Check.positive("--kg", scales.kg);
        Check.inRange("--scatter-s", scales.scatterS, LEAST_SCATTER_S, MOST_SCATTER_S);
        line.refuseRefresh();
        Subject subject = line.drive(documents.subject(setup, conditions.day(), console), console);
        Weight study = Weight.of(subject.car(), subject.driven(), subject.day()).withStep(scales.kg);
        return new WeightReport(subject, scales.scatterS, study.run());
    }

    @Override
    public Report report(WeightReport found) {
        return found.report();
    }

    private static Drawing chart(WeightReport found) {
        int parts = found.result().places().size();
        return new Drawing(
                        WeightBars.of(found.subject().title(), found.result(), ChartStyle.STANDARD),
                        WeightBars.size(parts))
                .withNarrowHeight(WeightBars.narrowHeight(parts), WeightBars.NARROW_BELOW);
    }
}
