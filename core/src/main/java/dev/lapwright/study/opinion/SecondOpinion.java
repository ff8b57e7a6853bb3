package dev.lapwright.study.opinion;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Limit;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.slip.SlipModel;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.compare.Comparison;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Second opinion on changes of a setup: what each is worth by the fast model of a lap and by the fuller one of {@link SlipModel}, on the same
 * line and day, and where and over which limit the two part.
 *
 * <p>The models share aero, loads, peaks of the tyres, engine and road. They differ in how axles and wheels come to share the forces, so they
 * differ most over what moves balance: springs, bars, pressures, locks, aero balance.
 *
 * <pre>{@code
 * SecondOpinionResult said = SecondOpinion.of(car, track, Conditions.STANDARD).on("stiffer bar", stiffer).run();
 * said.opinions().get(0).fuller(); // s, minus where the change is faster
 * }</pre>
 */
public final class SecondOpinion implements Study<SecondOpinionResult> {
    private final Car car;
    private final Stations stations;
    private final Conditions conditions;
    private final List<Change> changes;
    private final boolean inTurn;
    /** What was said before of the same car as it stands; empty if nothing. */
    private final Optional<SecondOpinionResult> before;

    private SecondOpinion(
            Car car,
            Stations stations,
            Conditions conditions,
            List<Change> changes,
            boolean inTurn,
            Optional<SecondOpinionResult> before) {
        this.inTurn = inTurn;
        this.before = before;
        this.car = car;
        this.stations = stations;
        this.conditions = conditions;
        this.changes = List.copyOf(changes);
    }

    private record Change(String name, Car car, Conditions day) {}

    /** A study of changes to a car as it stands, on what it drives. */
    public static SecondOpinion of(Car car, Track driven, Conditions conditions) {
        return of(car, driven, conditions, StationSpacing.DEFAULT);
    }

    /** The same at another spacing of stations. */
    public static SecondOpinion of(Car car, Track driven, Conditions conditions, StationSpacing spacing) {
        return new SecondOpinion(car, driven.stations(spacing), conditions, List.of(), false, Optional.empty());
    }

    /** The same, but each change is held against the car as the one before it left it, not against the car as it stands. */
    public SecondOpinion inTurn() {
        return new SecondOpinion(car, stations, conditions, changes, true, before);
    }

    /** The same, the laps of the car as it stands being those of an opinion given before of this car on this road and day. */
    public SecondOpinion knowing(SecondOpinionResult earlier) {
        return new SecondOpinion(car, stations, conditions, changes, inTurn, Optional.of(earlier));
    }

    /** The same with a change: the car as changed, under a name for people. */
    public SecondOpinion on(String name, Car changed) {
        return on(name, changed, conditions);
    }

    /** The same with a change of the car, of the day or of both. */
    public SecondOpinion on(String name, Car changed, Conditions day) {
        List<Change> more = new ArrayList<>(changes);
        more.add(new Change(name, changed, day));
        return new SecondOpinion(car, stations, conditions, more, inTurn, before);
    }

    /**
     * {@inheritDoc}
     *
     * @throws dev.lapwright.fault.LapwrightException if the car as it stands has no lap by the fast model
     */
    @Override
    public SecondOpinionResult run(StudyRun how) {
        List<Change> cars = new ArrayList<>(changes);
        if (before.isEmpty()) {
            cars.add(0, new Change("", car, conditions));
        }
        int parts = 2 * cars.size();
        // Laps of the fuller model first: they take longest.
        List<Solved> laps = how.inParallel(
                parts,
                () -> List.of(SlipModel.laps(stations), new LapSolver(stations)),
                (models, i) -> solved(models.get(i / cars.size()), cars.get(i % cars.size())),
                done -> how.report(done, parts));
        List<Solved> byFuller = new ArrayList<>(laps.subList(0, cars.size()));
        List<Solved> byFast = new ArrayList<>(laps.subList(cars.size(), parts));
        before.ifPresent(known -> {
            byFuller.add(0, new Solved(known.fuller(), known.refusal(), Optional.empty()));
            byFast.add(0, new Solved(Optional.of(known.fast()), Optional.empty(), Optional.empty()));
        });
        Solved fuller = byFuller.get(0);
        Solved fast = byFast.get(0);
        if (fast.lap().isEmpty()) {
            throw fast.fault().orElseThrow();
        }
        List<SecondOpinionResult.Opinion> opinions = new ArrayList<>();
        for (int i = 0; i < changes.size(); i++) {
            int from = inTurn ? i : 0;
            opinions.add(opinion(
                    changes.get(i).name(),
                    byFast.get(from),
                    byFast.get(i + 1),
                    byFuller.get(from),
                    byFuller.get(i + 1)));
        }
        return new SecondOpinionResult(fast.lap().get(), fuller.lap(), fuller.refusal(), opinions);
    }

    /** A lap, or why there is none. */
    private record Solved(Optional<Lap> lap, Optional<String> refusal, Optional<RuntimeException> fault) {}

    private static Solved solved(LapSolver solver, Change change) {
        try {
            return new Solved(
                    Optional.of(solver.solve(Vehicle.of(change.car(), change.day()))),
                    Optional.empty(),
                    Optional.empty());
        } catch (NoLapException | InvalidValueException none) {
            return new Solved(Optional.empty(), Optional.of(none.getMessage()), Optional.of(none));
        }
    }

    private static SecondOpinionResult.Opinion opinion(
            String name, Solved fast, Solved fastChanged, Solved fuller, Solved fullerChanged) {
        double byFast = difference(fast, fastChanged);
        double byFuller = difference(fuller, fullerChanged);
        if (Double.isNaN(byFast - byFuller)) {
            return new SecondOpinionResult.Opinion(name, byFast, byFuller, List.of(), Map.of());
        }
        Comparison one =
                Comparison.of(fast.lap().orElseThrow(), fastChanged.lap().orElseThrow());
        Comparison other =
                Comparison.of(fuller.lap().orElseThrow(), fullerChanged.lap().orElseThrow());
        Map<Limit, Double> apart = new EnumMap<>(Limit.class);
        one.byCause().forEach((limit, seconds) -> apart.merge(limit, -seconds, Double::sum));
        other.byCause().forEach((limit, seconds) -> apart.merge(limit, seconds, Double::sum));
        List<SecondOpinionResult.Place> places = new ArrayList<>();
        for (int i = 0; i < one.parts().size(); i++) {
            Comparison.Part here = one.parts().get(i);
            places.add(new SecondOpinionResult.Place(
                    here.label(),
                    here.isCorner(),
                    here.difference(),
                    other.parts().get(i).difference(),
                    atSlowest(one.first(), here),
                    atSlowest(other.first(), here)));
        }
        return new SecondOpinionResult.Opinion(name, byFast, byFuller, places, apart);
    }

    private static double difference(Solved first, Solved second) {
        return first.lap().isEmpty() || second.lap().isEmpty()
                ? Double.NaN
                : second.lap().get().time() - first.lap().get().time();
    }

    /** What limits a lap where it is slowest within a part. */
    private static Limit atSlowest(Lap lap, Comparison.Part part) {
        double[] s = lap.column(Channel.DISTANCE);
        double[] v = lap.column(Channel.SPEED);
        int slowest = -1;
        for (int i = 0; i < v.length; i++) {
            boolean inside = part.from() <= part.to()
                    ? s[i] >= part.from() && s[i] <= part.to()
                    : s[i] >= part.from() || s[i] <= part.to();
            if (inside && (slowest < 0 || v[i] < v[slowest])) {
                slowest = i;
            }
        }
        return lap.limit(slowest);
    }
}
