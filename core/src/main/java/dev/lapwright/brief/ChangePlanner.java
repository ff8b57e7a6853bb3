package dev.lapwright.brief;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Planner of the way from a car as it stands to a suggested setup: see {@link ChangePlan}. */
final class ChangePlanner {
    private final BriefLaps laps;
    private final BriefDoubt doubt;
    private final RunValue value;
    private final List<ChangePlan.Turn> open = new ArrayList<>();
    private final List<ChangePlan.Step> steps = new ArrayList<>();
    /** What stood by itself in the last look, and how; emptied by a step. */
    private final Map<String, RobustnessResult.Standing> refused = new HashMap<>();

    private Car car;
    private Lap lap;

    ChangePlanner(BriefLaps laps, BriefDoubt doubt, RunValue value) {
        this.laps = laps;
        this.doubt = doubt;
        this.value = value;
        car = laps.car();
        lap = laps.asItStands();
    }

    ChangePlan plan(SuggestedSetup suggested) {
        suggested.changes().forEach(change -> open.add(turn(change.change())));
        while (steps.size() < ChangePlan.MOST_STEPS) {
            Optional<Trial> next = next();
            if (next.isEmpty()) {
                break;
            }
            take(next.get());
        }
        return new ChangePlan(
                steps,
                left(suggested),
                car,
                BriefLaps.effect(laps.asItStands(), lap),
                doubt.between(laps.car(), car),
                suggested.effect().comparison().second().time() - lap.time());
    }

    /** To the last setting before it where the whole of the way would end at an end of the range; parts to choose among have no such end. */
    static ChangePlan.Turn turn(BriefResult.SettingChange whole) {
        Adjustment adjustment = whole.adjustment();
        List<Double> legal = adjustment.legalSettings();
        int to = nearest(legal, whole.to());
        int steps = Math.abs(to - nearest(legal, whole.from()));
        boolean end = adjustment.choices().isEmpty() && (to == 0 || to == legal.size() - 1);
        int back = end && steps > 1 ? 1 : 0;
        double before = legal.get(whole.to() > whole.from() ? to - back : to + back);
        return new ChangePlan.Turn(
                back == 0 ? whole : new BriefResult.SettingChange(adjustment, whole.from(), before), whole.to());
    }

    private static int nearest(List<Double> legal, double setting) {
        int nearest = 0;
        for (int i = 1; i < legal.size(); i++) {
            if (Math.abs(legal.get(i) - setting) < Math.abs(legal.get(nearest) - setting)) {
                nearest = i;
            }
        }
        return nearest;
    }

    /** Turns, the lap of the car with them, and how they stand on drawn cars. */
    private record Trial(List<ChangePlan.Turn> turns, Car car, Lap lap, Optional<RobustnessResult.Standing> doubt) {
        /** The median on drawn cars, s, or what the car as described does. */
        double difference(double before) {
            return doubt.map(RobustnessResult.Standing::middle).orElse(lap.time() - before);
        }

        double deviation() {
            return doubt.map(RobustnessResult.Standing::deviation).orElse(0.0);
        }
    }

    /** The change that is worth most per lap; if none makes a difference that counts, several that do so together. */
    private Optional<Trial> next() {
        List<List<ChangePlan.Turn>> ones = open.stream()
                .filter(turn -> !isSpring(turn) || open.stream().noneMatch(ChangePlanner::isBar))
                .map(List::of)
                .toList();
        return best(ones).or(() -> best(several()));
    }

    /** Pairs of what is open, and all of it; what by itself is no gain on most drawn cars is no part of any, and springs of none that leaves a bar. */
    private List<List<ChangePlan.Turn>> several() {
        List<ChangePlan.Turn> some =
                open.stream().filter(turn -> !refused.containsKey(name(turn))).toList();
        List<List<ChangePlan.Turn>> several = new ArrayList<>();
        for (int i = 0; i < some.size(); i++) {
            for (int j = i + 1; j < some.size(); j++) {
                several.add(List.of(some.get(i), some.get(j)));
            }
        }
        if (some.size() > 2) {
            several.add(some);
        }
        several.removeIf(turns -> turns.stream().anyMatch(ChangePlanner::isSpring)
                && open.stream().anyMatch(turn -> isBar(turn) && !turns.contains(turn)));
        return several;
    }

    /** The one that is worth most per lap of those that count on the car as described and are a gain on most drawn cars. */
    private Optional<Trial> best(List<List<ChangePlan.Turn>> choices) {
        List<Trial> counting = choices.stream()
                .map(this::trial)
                .flatMap(Optional::stream)
                .filter(trial -> trial.lap().time() - lap.time() <= -LapTimeDifference.COUNTS)
                .toList();
        if (counting.isEmpty()) {
            return Optional.empty();
        }
        Optional<RobustnessResult> drawn =
                doubt.beside(car, counting.stream().map(Trial::car).toList()).value();
        List<Trial> firm = new ArrayList<>();
        for (int i = 0; i < counting.size(); i++) {
            Trial trial = counting.get(i);
            int place = i;
            Optional<RobustnessResult.Standing> standing =
                    drawn.map(found -> found.standings().get(place));
            if (standing.isEmpty() || drawn.get().isFirmGain(standing.get())) {
                firm.add(new Trial(trial.turns(), trial.car(), trial.lap(), standing));
            } else if (trial.turns().size() == 1) {
                refused.put(name(trial.turns().get(0)), standing.get());
            }
        }
        return firm.stream()
                .max(Comparator.comparingDouble(
                        trial -> value.perLap(trial.difference(lap.time()), trial.deviation())));
    }

    /** Empty where there is no such car, or no lap. */
    private Optional<Trial> trial(List<ChangePlan.Turn> turns) {
        try {
            Car changed = car;
            for (ChangePlan.Turn turn : turns) {
                changed = changed.with(
                        turn.change().adjustment().name(), turn.change().to());
            }
            return Optional.of(new Trial(turns, changed, laps.lap(changed), Optional.empty()));
        } catch (LapwrightException noLap) {
            return Optional.empty();
        }
    }

    private void take(Trial next) {
        steps.add(new ChangePlan.Step(next.turns(), BriefLaps.effect(lap, next.lap()), next.doubt(), Optional.empty()));
        open.removeAll(next.turns());
        car = next.car();
        lap = next.lap();
        refused.clear();
    }

    private List<ChangePlan.Left> left(SuggestedSetup suggested) {
        List<ChangePlan.Left> left = new ArrayList<>();
        for (SuggestedSetup.Change change : suggested.changes()) {
            Adjustment adjustment = change.change().adjustment();
            double here = car.setting(adjustment.name());
            if (here != change.change().to()) {
                left.add(new ChangePlan.Left(
                        new BriefResult.SettingChange(
                                adjustment, here, change.change().to()),
                        open.stream()
                                .filter(turn -> name(turn).equals(adjustment.name()))
                                .mapToDouble(turn -> turn.change().to())
                                .findFirst()
                                .orElse(Double.NaN),
                        reason(adjustment.name()),
                        Optional.ofNullable(refused.get(adjustment.name()))));
            }
        }
        return left;
    }

    private ChangePlan.Reason reason(String adjustment) {
        Optional<ChangePlan.Turn> turn =
                open.stream().filter(one -> name(one).equals(adjustment)).findFirst();
        if (turn.isEmpty()) {
            return ChangePlan.Reason.END;
        }
        if (refused.containsKey(adjustment)) {
            return ChangePlan.Reason.NOT_FIRM;
        }
        if (steps.size() >= ChangePlan.MOST_STEPS) {
            return ChangePlan.Reason.ENOUGH;
        }
        return isSpring(turn.get()) && open.stream().anyMatch(ChangePlanner::isBar)
                ? ChangePlan.Reason.BARS_FIRST
                : ChangePlan.Reason.NO_GAIN;
    }

    private static String name(ChangePlan.Turn turn) {
        return turn.change().adjustment().name();
    }

    private static boolean isBar(ChangePlan.Turn turn) {
        return moves(turn, ".antiRollBarNmPerDeg");
    }

    private static boolean isSpring(ChangePlan.Turn turn) {
        return moves(turn, ".springNPerMm");
    }

    private static boolean moves(ChangePlan.Turn turn, String ending) {
        return turn.change().adjustment().effects().stream()
                .map(Effect::quantity)
                .anyMatch(quantity -> quantity.endsWith(ending));
    }
}
