package dev.lapwright.study.landscape;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * Study of landscapes: the lap time over the range of each of many things that can be turned, one at a time, about a car as
 * it stands. Made for somebody who waits: each landscape is told as soon as there is something of it, first from a few settings
 * over the whole range, then from all.
 *
 * <pre>{@code
 * Landscapes.about(lap).over("rear-wing", List.of(0., 4., 8., 12.)).telling(found -> draw(found)).run();
 * }</pre>
 */
public final class Landscapes implements Study<List<Landscape>> {
    /** Settings of a first look, the ends of the range among them. */
    private static final int FIRST_LOOK = 5;

    private final Lap lap;
    private final Map<String, List<Double>> asked;
    private final Consumer<Landscape> listener;

    private Landscapes(Lap lap, Map<String, List<Double>> asked, Consumer<Landscape> listener) {
        this.lap = lap;
        this.asked = asked;
        this.listener = listener;
    }

    /** About the car of a lap, as it stood and on its day, at the lap's stations. */
    public static Landscapes about(Lap lap) {
        return new Landscapes(lap, Map.of(), found -> {});
    }

    /**
     * The same over one more thing. They are looked at in the order in which they are named.
     *
     * @param name of an adjustment, a quantity of the car, or one of the conditions ({@code conditions.airTempC})
     * @param settings rising, in its unit; at least one
     * @throws InvalidValueException if it is named twice, or the settings do not rise
     */
    public Landscapes over(String name, List<Double> settings) {
        Check.rising(name, settings.stream().mapToDouble(value -> value).toArray());
        Map<String, List<Double>> more = new LinkedHashMap<>(asked);
        if (more.put(name, List.copyOf(settings)) != null) {
            throw new InvalidValueException(name, "it is looked at twice", "name each thing once");
        }
        return new Landscapes(lap, more, listener);
    }

    /**
     * The same telling each landscape whenever something of it is found: at most twice.
     *
     * @param told called by several threads, never at the same time
     */
    public Landscapes telling(Consumer<Landscape> told) {
        return new Landscapes(lap, asked, told);
    }

    /** Settings of one thing that are looked at together. */
    private record Look(String name, List<Double> settings) {}

    /**
     * Runs it.
     *
     * @throws InvalidValueException if a name is not known; a setting without a lap is no error but says so in its
     *     {@link Landscape.Point}
     */
    @Override
    public List<Landscape> run(StudyRun how) {
        Car car = lap.vehicle().car();
        Conditions day = lap.vehicle().conditions();
        asked.keySet().forEach(name -> standing(car, day, name));
        LapFigures baseline = lap.figures();
        List<Look> looks = looks();
        Map<String, TreeMap<Double, Landscape.Point>> found = new LinkedHashMap<>();
        asked.keySet().forEach(name -> found.put(name, new TreeMap<>()));
        Map<String, Landscape> latest = new LinkedHashMap<>();
        Object telling = new Object();
        how.inParallel(
                looks.size(),
                () -> new LapSolver(lap.stations()),
                (solver, i) -> {
                    Look look = looks.get(i);
                    List<Landscape.Point> points = new ArrayList<>();
                    for (double setting : look.settings()) {
                        how.stopIfWanted();
                        points.add(
                                setting == standing(car, day, look.name())
                                        ? new Landscape.Point(setting, Optional.of(baseline), "")
                                        : point(solver, car, day, look.name(), setting));
                    }
                    how.stopIfWanted();
                    synchronized (telling) {
                        TreeMap<Double, Landscape.Point> known = found.get(look.name());
                        points.forEach(point -> known.put(point.setting(), point));
                        boolean complete =
                                known.size() == asked.get(look.name()).size();
                        Landscape landscape =
                                new Landscape(look.name(), baseline, List.copyOf(known.values()), complete);
                        latest.put(look.name(), landscape);
                        listener.accept(landscape);
                    }
                    return points;
                },
                done -> how.report(done, looks.size()));
        return asked.keySet().stream().map(latest::get).toList();
    }

    /** First looks at all, then the rest of each. */
    private List<Look> looks() {
        List<Look> first = new ArrayList<>();
        List<Look> rest = new ArrayList<>();
        asked.forEach((name, settings) -> {
            int n = settings.size();
            List<Double> few = new ArrayList<>();
            List<Double> others = new ArrayList<>(settings);
            if (n <= FIRST_LOOK) {
                few.addAll(settings);
            } else {
                for (int k = 0; k < FIRST_LOOK; k++) {
                    few.add(settings.get((int) Math.round(k * (n - 1) / (FIRST_LOOK - 1.0))));
                }
            }
            others.removeAll(few);
            first.add(new Look(name, few));
            if (!others.isEmpty()) {
                rest.add(new Look(name, others));
            }
        });
        List<Look> looks = new ArrayList<>(first);
        looks.addAll(rest);
        return looks;
    }

    private static double standing(Car car, Conditions day, String name) {
        if (Conditions.isMeantBy(name)) {
            return day.value(name);
        }
        boolean adjustment = car.adjustments().stream().anyMatch(a -> a.name().equals(name));
        return adjustment ? car.setting(name) : car.value(name);
    }

    private static Landscape.Point point(LapSolver solver, Car car, Conditions day, String name, double setting) {
        try {
            Vehicle changed = Conditions.isMeantBy(name)
                    ? Vehicle.of(car, day.with(name, setting))
                    : Vehicle.of(car.with(name, setting), day);
            return new Landscape.Point(setting, Optional.of(solver.figures(changed)), "");
        } catch (NoLapException | InvalidValueException noLap) {
            return new Landscape.Point(setting, Optional.empty(), noLap.getMessage());
        }
    }
}
