package dev.lapwright.cli.bench;

import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.opinion.SecondOpinion;
import dev.lapwright.study.opinion.SecondOpinionResult;
import dev.lapwright.study.robust.DrawnCars;
import dev.lapwright.study.robust.DriverWord;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.track.StationSpacing;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Setup that others are held against, with its laps on the cars that it may be and by the fuller model: driven once for all that come and go beside it. For
 * one question at a time.
 */
final class Reference {
    /** Cars drawn. */
    private static final int DRAWS = 60;
    /** Setups that are held against it before all is drawn anew, as it remembers the laps of each. */
    private static final int MOST_HELD = 200;

    private final Object key;
    private final Supplier<Subject> made;
    private Subject subject;
    private DrawnCars cars;
    private Optional<SecondOpinionResult> opinion = Optional.empty();
    private int held;

    /** @param made the setup, refused where it cannot be */
    Reference(Object key, Supplier<Subject> made) {
        this.key = key;
        this.made = made;
    }

    /** @throws dev.lapwright.fault.LapwrightException if there is no such setup */
    Subject subject() {
        if (subject == null) {
            subject = made.get();
        }
        return subject;
    }

    private DrawnCars cars() {
        if (cars == null) {
            cars = DrawnCars.about(
                    subject().car(),
                    subject().driven(),
                    StationSpacing.DEFAULT,
                    subject().day(),
                    DRAWS);
        }
        return cars;
    }

    boolean isOf(Object other) {
        return key.equals(other) && held < MOST_HELD;
    }

    /** How a setup stands beside it on the cars that this one may be, and that the driver's words leave. */
    RobustnessResult drawn(Subject now, List<DriverWord> words, StudyRun how) {
        held++;
        return Robustness.of(subject().car(), cars())
                .against(now.car(), now.day(), Double.NaN)
                .hearing(words)
                .run(how);
    }

    /** What both models say of a setup beside it. */
    SecondOpinionResult seconded(Subject now, StudyRun how) {
        SecondOpinion study = SecondOpinion.of(
                        subject().car(), subject().driven(), subject().day())
                .on("this setup", now.car(), now.day());
        SecondOpinionResult found = opinion.map(study::knowing).orElse(study).run(how);
        opinion = Optional.of(found);
        return found;
    }
}
