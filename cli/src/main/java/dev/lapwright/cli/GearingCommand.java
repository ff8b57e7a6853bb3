package dev.lapwright.cli;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.results.Subject;
import dev.lapwright.results.Vary;
import dev.lapwright.study.gearing.Gearing;
import dev.lapwright.study.gearing.GearingAxes;
import dev.lapwright.study.sweep.SweepAxis;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Which gearing to fit. */
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
final class GearingCommand implements Callable<Integer> {
    private static final double LONGEST_S = 60;

    private final Console console;

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nGearing:%n")
    private final GearingOptions gearing = new GearingOptions();

    @ArgGroup(validate = false, heading = "%nSetup about which it is varied:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final GearingOutputOptions output = new GearingOutputOptions();

    @Mixin
    HelpOption help;

    GearingCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        Check.inRange("--before-braking-s", gearing.beforeBrakingS, 0, LONGEST_S);
        ResultFiles<GearingOutcome> files = GearingFiles.plan(output);
        Subject subject = documents.subject(setup, conditions.day());
        GearingOutcome outcome = new GearingOutcome(
                subject, gearing.beforeBrakingS, study(subject).run());
        files.write(outcome);
        if (output.json) {
            console.text(GearingJson.text(outcome));
        } else {
            new GearingReport(console, outcome).print();
        }
        files.report(console, output.json);
        return Lapwright.DONE;
    }

    private Gearing study(Subject subject) {
        Gearing study = Gearing.of(subject.car(), subject.track(), subject.day());
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
