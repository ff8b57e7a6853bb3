package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.opinion.SecondOpinion;
import dev.lapwright.study.opinion.SecondOpinionResult;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Plan of changes on the way to a suggested setup: steps one after the other, each held against the car as the steps before it left
 * it, so that their differences add up to that of the whole.
 *
 * <p>Their order, and how far each goes, follows what race engineers hold to (common practice, no source): one change at a time, several
 * only where by themselves they make no difference; first what is worth most per lap of testing: what it is expected to gain if it is driven
 * and then kept or put back, over the laps that it takes to see; bars before springs; and no adjustment goes to the end of its range in one
 * step, but to the last setting before it. What is known of a gain before is its median and interval over the drawn cars: a change that is no
 * gain on most of them ({@link RobustnessResult#isFirmGain}) is on no plan, by itself or among others, whatever the car as it is described
 * makes of it.
 *
 * @param steps in order, at most {@link #MOST_STEPS}, each of which counts; may be empty
 * @param left what the suggested setup turns as well, and why the plan does not
 * @param car after all steps
 * @param effect of all steps: the lap as the car stands first, that after all steps second
 * @param doubt how the whole stands on drawn cars; empty where none were drawn
 * @param leftToGoal difference of the suggested setup to the end of the plan, s, minus where faster
 */
public record ChangePlan(
        List<Step> steps,
        List<Left> left,
        Car car,
        BriefResult.ChangeEffect effect,
        Optional<RobustnessResult.Standing> doubt,
        double leftToGoal) {
    /** More changes than these nobody tries in a day (common practice, no source). */
    public static final int MOST_STEPS = 4;

    public ChangePlan {
        steps = List.copyOf(steps);
        left = List.copyOf(left);
    }

    /** The same plan with what both models say of its steps, the fuller asked beside the fast one. */
    ChangePlan seconded(Track driven, Conditions conditions, StudyRun how) {
        if (steps.isEmpty()) {
            return this;
        }
        SecondOpinion study = SecondOpinion.of(
                        steps.get(0).effect().comparison().first().vehicle().car(),
                        driven,
                        conditions,
                        BriefDoubt.SPACING)
                .inTurn();
        for (Step step : steps) {
            study = study.on("", step.effect().comparison().second().vehicle().car());
        }
        List<SecondOpinionResult.Opinion> opinions = study.run(how).opinions();
        List<Step> seconded = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            seconded.add(new Step(step.turns(), step.effect(), step.doubt(), Optional.of(opinions.get(i))));
        }
        return new ChangePlan(seconded, left, car, effect, doubt, leftToGoal);
    }

    /**
     * Change of the suggested setup that the plan leaves out.
     *
     * @param change from where the plan leaves it to where the suggestion has it
     * @param tried setting on the way that was looked at; NaN where the plan has gone there
     * @param reason why
     * @param doubt how that stands on drawn cars beside the car after all steps; empty where that is not the reason
     */
    public record Left(
            BriefResult.SettingChange change, double tried, Reason reason, Optional<RobustnessResult.Standing> doubt) {}

    /** Reason to leave a change out of a plan. */
    public enum Reason {
        /** It goes on to the end of the range, which no adjustment goes to in one step. */
        END,
        /** It is no gain on most of the drawn cars. */
        NOT_FIRM,
        /** Once the others are made it gains nothing that counts. */
        NO_GAIN,
        /** Bars come before springs, and a bar is left as well. */
        BARS_FIRST,
        /** The plan has as many steps as one has. */
        ENOUGH
    }

    /**
     * Step of a plan.
     *
     * @param turns what is turned: one change, or several where each needs the other
     * @param effect the lap before this step first, that after it second
     * @param doubt how it stands on drawn cars beside the car before it; empty where none were drawn
     * @param opinion both models' words on it; empty if the fuller one was not asked
     */
    public record Step(
            List<Turn> turns,
            BriefResult.ChangeEffect effect,
            Optional<RobustnessResult.Standing> doubt,
            Optional<SecondOpinionResult.Opinion> opinion) {
        public Step {
            turns = List.copyOf(turns);
        }

        /** Whether it turns several things at once, because by itself none of them makes a difference that counts. */
        public boolean isBundle() {
            return turns.size() > 1;
        }

        /** What is turned. */
        public List<BriefResult.SettingChange> changes() {
            return turns.stream().map(Turn::change).toList();
        }
    }

    /**
     * Turn of one adjustment in a step.
     *
     * @param change from where to where
     * @param goal setting that the suggestion has
     */
    public record Turn(BriefResult.SettingChange change, double goal) {
        /** Whether it stops on the way to the suggestion, whose setting is an end of the range. */
        public boolean isPartial() {
            return change.to() != goal;
        }
    }
}
