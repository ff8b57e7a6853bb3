package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** One fit from laps to result. */
final class FitRun {
    /** Below this share of the strongest direction's effect on speed nothing can be told, whatever the noise. */
    private static final double BLIND = 1e-3;
    /** A direction is held where its standard error is above what is usually in doubt of it: 1 in u. */
    private static final double LEAST_INFORMATION = 1;

    private static final double LEAST_CELL = 5;
    private static final int LEAST_CELLS = 40;

    private final Car car;
    private final Track track;
    private final Conditions conditions;
    private final List<FitScale> asked = new ArrayList<>();
    private final List<FitScale> free = new ArrayList<>();
    private final List<FitTie> ties = new ArrayList<>();

    FitRun(Car car, Track track, Conditions conditions, Set<FitParameter> parameters) {
        this.car = car;
        this.track = track;
        this.conditions = conditions;
        for (FitParameter parameter : FitParameter.values()) {
            if (parameters.contains(parameter)) {
                asked.add(FitScale.of(parameter, car));
            }
        }
        free.addAll(asked);
    }

    FitResult of(List<DrivenLap> laps, double confidence) {
        if (laps.isEmpty()) {
            throw new InvalidValueException("laps", "there is none", "give one at least");
        }
        FitModel model = new FitModel(car, track, conditions, free);
        Lap before = lapAsGiven(model);
        LapDoor door = new LapDoor(track, new SpeedCurve(before), before.time());
        List<LapCells> cells = cells(laps, door);
        double[] start = new double[free.size() + 2 * laps.size()];
        for (int k = 0; k < laps.size(); k++) {
            start[free.size() + 2 * k] = door.offset(cells.get(k));
        }
        FitSearch search = searched(new FitSearch(model, cells, door.mostOffset(), start));
        FitOutcome outcome = new FitOutcome(track, cells, search, before);
        FitEstimates estimates = new FitEstimates(asked, free, ties, search, confidence);
        return outcome.result(car, conditions, estimates, confidence);
    }

    private Lap lapAsGiven(FitModel model) {
        try {
            return model.lap(new double[free.size()]);
        } catch (NoLapException e) {
            throw new InvalidValueException(
                    "car " + car.name(),
                    "it has no lap of " + track.name() + ": " + e.getMessage(),
                    "see to the car first: a fit begins with a lap of the car as given");
        }
    }

    private List<LapCells> cells(List<DrivenLap> laps, LapDoor door) {
        double spacing = LEAST_CELL;
        for (DrivenLap lap : laps) {
            door.check(lap);
            spacing = Math.max(spacing, LapCells.spacing(lap, 0.9));
        }
        int count = (int) Math.max(LEAST_CELLS, Math.round(track.length() / spacing));
        return laps.stream()
                .map(lap -> new LapCells(lap, count, track.length()))
                .toList();
    }

    /** Fits, holding one parameter after another until what is left is told. */
    private FitSearch searched(FitSearch first) {
        FitSearch search = first;
        while (!free.isEmpty()) {
            Optional<FitTies.Weak> blind = search.blind(BLIND);
            if (blind.isEmpty()) {
                break;
            }
            search = held(search, blind.get());
        }
        search.run();
        while (!free.isEmpty()) {
            Optional<FitTies.Weak> weak = FitTies.weakest(search.information().information, LEAST_INFORMATION);
            if (weak.isEmpty()) {
                break;
            }
            search = held(search, weak.get());
            search.run();
        }
        return search;
    }

    private FitSearch held(FitSearch search, FitTies.Weak weak) {
        ties.add(FitTies.tie(weak, free, search.parameters()));
        free.remove(weak.hold());
        return search.without(weak.hold(), free);
    }
}
