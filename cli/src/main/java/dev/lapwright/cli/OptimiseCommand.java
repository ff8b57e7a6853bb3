package dev.lapwright.cli;

import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.results.Subject;
import dev.lapwright.results.Vary;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationLimits;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.sweep.SweepAxis;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** The best setup on legal steps. */
@Command(
        name = "optimise",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Looks for the best setup on the legal steps of the car's adjustments."},
        customSynopsis = {
            "lapwright optimise CAR CIRCUIT [--over NAMES] [--circuit NAME=WEIGHT]...",
            "                   [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright optimise gt-talvex castelvane --over rear-wing,rake,front-bar --min-top-speed-kmh 278",
            "      Three adjustments, with no less than a top speed; the rest stays as it is.",
            "  lapwright optimise touring-merrow harrowmere --over rear-wing,rear-bar --out best",
            "      Two adjustments; result, table of setups, chart and best setup go to the folder best."
        })
final class OptimiseCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nSearch:%n")
    private final OptimiseOptions search = new OptimiseOptions();

    @ArgGroup(validate = false, heading = "%nLimits that the setup must keep on every circuit and day:%n")
    private final OptimiseLimitOptions limits = new OptimiseLimitOptions();

    @ArgGroup(validate = false, heading = "%nSetup that it is compared with, and from which it starts:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final OptimiseOutputOptions output = new OptimiseOutputOptions();

    @Mixin
    HelpOption help;

    OptimiseCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        ResultFiles<OptimiseOutcome> files = OptimiseFiles.plan(output);
        OptimisationLimits kept = limits.limits();
        Subject subject = documents.subject(setup, conditions.day());
        OptimisationResult result = run(study(subject).within(kept));
        if (!result.isMet()) {
            throw OptimiseReading.missed(result);
        }
        OptimiseOutcome outcome = new OptimiseOutcome(subject, result);
        files.write(outcome);
        if (output.json) {
            console.text(OptimiseJson.text(outcome));
        } else {
            new OptimiseReport(console, outcome).print();
        }
        files.report(console, output.json);
        return Lapwright.DONE;
    }

    private OptimisationResult run(Optimisation study) {
        StudyRun how = search.threads == null ? StudyRun.onAllCores() : StudyRun.onThreads(search.threads);
        try (ProgressBar bar = new ProgressBar(console, "setups at most")) {
            return study.run(how.reporting(bar));
        }
    }

    private Optimisation study(Subject subject) {
        List<Optimisation.Circuit> circuits = new ArrayList<>();
        circuits.add(new Optimisation.Circuit(subject.track(), 1));
        search.circuits.forEach(text -> circuits.add(circuit(text)));
        Optimisation study = Optimisation.of(subject.car(), circuits, subject.day())
                .over(search.over.stream().map(String::trim).toList());
        for (String text : search.ranges) {
            study = study.inConditions(range(text, subject));
        }
        if (search.worst) {
            if (search.ranges.isEmpty()) {
                throw new InvalidValueException("--worst", "there is only one day", "add --range, or leave it out");
            }
            study = study.forTheWorstDay();
        }
        return search.seed == null ? study : study.withSeed(search.seed);
    }

    private static Optimisation.Circuit circuit(String text) {
        int equals = text.lastIndexOf('=');
        String name = equals < 0 ? text : text.substring(0, equals);
        double weight;
        try {
            weight = equals < 0
                    ? 1
                    : Double.parseDouble(text.substring(equals + 1).trim());
        } catch (NumberFormatException notANumber) {
            throw new InvalidValueException(
                    "--circuit " + text, "its weight is not a number", "write name=weight, as in harrowmere=0.5");
        }
        return new Optimisation.Circuit(Documents.circuit(name.trim()), weight);
    }

    private static SweepAxis range(String text, Subject subject) {
        if (!text.trim().startsWith("conditions.")) {
            throw new InvalidValueException(
                    "--range " + text, "it is not one of the conditions", "write it like conditions.airTempC=5,35");
        }
        return Vary.parse(text, subject).axis();
    }
}
