package dev.lapwright.study.optimise;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ObjDoubleConsumer;

/**
 * Search for the best setup on the legal steps of a car's adjustments. First between the steps, by an evolution strategy
 * with a fixed seed; then on the steps: single steps, whole lines and pairs of steps until none helps. The same for any
 * number of threads.
 *
 * <pre>{@code
 * OptimisationResult best = Optimisation.of(car, track, Conditions.STANDARD)
 *         .over(List.of("rear-wing", "rake", "final-drive"))
 *         .within(OptimisationLimits.NONE.withTopSpeedKmh(250))
 *         .run();
 * }</pre>
 */
public final class Optimisation implements Study<OptimisationResult> {
    /** Seed that is used if none is given. */
    public static final long SEED = 1;

    private static final int MOST_DAYS = 100;

    final Car car;
    final List<Circuit> circuits;
    final Conditions conditions;
    final List<SweepAxis> ranges;
    final List<String> named;
    final OptimisationLimits limits;
    final boolean worst;
    final Search search;

    /**
     * How it is searched.
     *
     * @param seed of the random numbers between the steps
     * @param rough whether the first stages do
     * @param memory of setups driven before
     * @param better told of each setup that beats all before it
     */
    record Search(long seed, boolean rough, StudyMemory memory, ObjDoubleConsumer<Setup> better) {}

    private Optimisation(
            Car car,
            List<Circuit> circuits,
            Conditions conditions,
            List<SweepAxis> ranges,
            List<String> named,
            OptimisationLimits limits,
            boolean worst,
            Search search) {
        this.car = car;
        this.circuits = circuits;
        this.conditions = conditions;
        this.ranges = ranges;
        this.named = named;
        this.limits = limits;
        this.worst = worst;
        this.search = search;
    }

    private Optimisation with(Search other) {
        return new Optimisation(car, circuits, conditions, ranges, named, limits, worst, other);
    }

    /** An optimisation of a car as it stands, which is the setup it is compared with. */
    public static Optimisation of(Car car, Track track, Conditions conditions) {
        return of(car, List.of(new Circuit(track, 1)), conditions);
    }

    /** The same for several circuits by weight: what is made small is the weighted mean of the lap times. */
    public static Optimisation of(Car car, List<Circuit> circuits, Conditions conditions) {
        if (circuits.isEmpty()) {
            throw new InvalidValueException("circuits", "there are none", "name at least one");
        }
        return new Optimisation(
                car,
                List.copyOf(circuits),
                conditions,
                List.of(),
                List.of(),
                OptimisationLimits.NONE,
                false,
                new Search(SEED, false, StudyMemory.NONE, (setup, lapTime) -> {}));
    }

    /**
     * The same over these adjustments only. Without this call all are searched but those of fuel, mass, power, tyre pressure,
     * compound, brake balance, toe and overrun locking, about which a lap time says too little.
     */
    public Optimisation over(List<String> adjustments) {
        return new Optimisation(car, circuits, conditions, ranges, List.copyOf(adjustments), limits, worst, search);
    }

    /** Adjustments of a car that are left alone unless {@link #over} names them, and why. */
    public static List<OptimisationResult.LeftAlone> leftAlone(Car car) {
        return SearchedAdjustments.keptUnnamed(car);
    }

    /** The same with limits to keep on every circuit and day. */
    public Optimisation within(OptimisationLimits kept) {
        return new Optimisation(car, circuits, conditions, ranges, named, kept, worst, search);
    }

    /**
     * The same for several days: each combination of the values given here, the rest as on the day given first. What is made
     * small is the mean over the days.
     *
     * @param range one of the conditions and its values
     */
    public Optimisation inConditions(SweepAxis range) {
        List<SweepAxis> more = new ArrayList<>(ranges);
        for (SweepAxis known : ranges) {
            if (known.name().equals(range.name())) {
                throw new InvalidValueException(range.name(), "its range is given twice", "give each once");
            }
        }
        more.add(range);
        return new Optimisation(car, circuits, conditions, List.copyOf(more), named, limits, worst, search);
    }

    /** The same, but the day on which it makes the lap least faster counts, not the mean. */
    public Optimisation forTheWorstDay() {
        return new Optimisation(car, circuits, conditions, ranges, named, limits, true, search);
    }

    /** The same with another seed for the random numbers of the search between the steps. */
    public Optimisation withSeed(long number) {
        return with(new Search(number, search.rough, search.memory, search.better));
    }

    /**
     * The same at a quarter of the laps: it goes down from the setup that the car stands in and from the middle of all ranges alone, and
     * does not walk over setups that are as good. For a question whose answer is looked at further, as a brief's.
     */
    public Optimisation roughly() {
        return with(new Search(search.seed, true, search.memory, search.better));
    }

    /** The same, going on from what a memory recalls of this very search, and keeping there what it drives. */
    public Optimisation remembering(StudyMemory setups) {
        return with(new Search(search.seed, search.rough, setups, search.better));
    }

    /**
     * The same, telling each setup that beats all before it, and its lap time (s), as it is met; never two at once. Before the search comes to
     * legal steps it lies between them.
     */
    public Optimisation tellingBetter(ObjDoubleConsumer<Setup> told) {
        return with(new Search(search.seed, search.rough, search.memory, told));
    }

    /** The days that the setup is to serve. */
    List<Conditions> days() {
        List<Conditions> days = List.of(conditions);
        for (SweepAxis range : ranges) {
            if ((long) days.size() * range.count() > MOST_DAYS) {
                throw new InvalidValueException(
                        "conditions", "that makes more than " + MOST_DAYS + " days", "give fewer values");
            }
            List<Conditions> more = new ArrayList<>();
            for (Conditions day : days) {
                for (int i = 0; i < range.count(); i++) {
                    more.add(day.with(range.name(), range.value(i)));
                }
            }
            days = more;
        }
        return days;
    }

    /**
     * Runs it. Names and limits are checked before the first lap. Limits that no setup keeps are no error: the result then
     * says what was missed.
     *
     * @param how its progress is told as the number of setups driven of how many at most
     * @throws LapwrightException if a name is unknown, nothing is left to search, a limit asks for corners that no circuit
     *     has, or the car as it stands has no lap
     */
    @Override
    public OptimisationResult run(StudyRun how) {
        SearchedAdjustments choice = SearchedAdjustments.of(car, named);
        checkCorners();
        return new OptimisationRun(this, choice, how).run();
    }

    private void checkCorners() {
        boolean any = circuits.stream()
                .anyMatch(circuit -> !circuit.track()
                        .stations(StationSpacing.DEFAULT)
                        .corners()
                        .isEmpty());
        if (limits.needCorners() && !any) {
            throw new InvalidValueException(
                    "limits", "balance or upshifts in corners are limited, but there are no corners", "leave them out");
        }
    }

    /**
     * Circuit that a setup is to serve.
     *
     * @param track where
     * @param weight how much its lap time counts beside those of the others; above 0
     */
    public record Circuit(Track track, double weight) {
        public Circuit {
            Check.positive("weight of " + track.name(), weight);
        }
    }
}
