package dev.lapwright.cli.option;

import dev.lapwright.car.Car;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.results.ModelCheck;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.opinion.SecondOpinion;
import dev.lapwright.study.opinion.SecondOpinionResult;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import picocli.CommandLine.Option;

/** Option for the fuller model's word on what is recommended. */
public final class OpinionOption {
    @Option(
            names = "--no-second-opinion",
            description = "Does not ask the fuller model, which takes some tenths of a second a lap.")
    boolean none;

    /** Whether the fuller model is to be asked. */
    public boolean isWanted() {
        return !none;
    }

    /**
     * Both models' words on changes; none if none is wanted or there are none.
     *
     * @param cars as changed, by what is said of the change, in order
     * @param drawn how each change stands on drawn cars, by its place; empty if none were drawn
     */
    public List<ModelCheck> ask(
            Subject subject,
            Map<String, Car> cars,
            IntFunction<Optional<RobustnessResult.Standing>> drawn,
            StudyRun how,
            Console console) {
        if (none || cars.isEmpty()) {
            return List.of();
        }
        SecondOpinion study = SecondOpinion.of(subject.car(), subject.driven(), subject.day());
        for (Map.Entry<String, Car> one : cars.entrySet()) {
            study = study.on(one.getKey(), one.getValue());
        }
        SecondOpinionResult found;
        try (ProgressBar bar = new ProgressBar(console, "laps for a second opinion")) {
            found = study.run(how.reporting(bar));
        }
        List<ModelCheck> checks = new ArrayList<>();
        for (int i = 0; i < cars.size(); i++) {
            checks.add(ModelCheck.of(found, i, drawn.apply(i)));
        }
        return checks;
    }
}
