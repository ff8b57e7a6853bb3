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
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;

/**
 * Study of landscapes: the lap time over the range of each of many things that can be turned, one at a time, about a car as
 * it stands. Made for somebody who waits: each landscape is told as soon as there is something of it, first from a few settings
 * over the whole range, then from all, and if wished with a closer look at the fastest.
 *
 * <pre>{@code
 * Landscapes.about(lap).over("rear-wing", List.of(0., 4., 8., 12.)).telling(found -> draw(found)).run();
 * }</pre>
 */
public final class Landscapes implements Study<List<Landscape>> {
    /** Settings of a first look, the ends of the range among them. */
    private static final int FIRST_LOOK = 5;

    private final Lap lap;
    private final Map<String, Asked> asked;
    private final Consumer<Landscape> listener;

    private Landscapes(Lap lap, Map<String, Asked> asked, Consumer<Landscape> listener) {
        this.lap = lap;
        this.asked = asked;
        this.listener = listener;
    }

    /** What is looked at of one thing: settings, and all among which the fastest may be found. */
    private record Asked(List<Double> settings, List<Double> all) {}

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
        return over(name, settings, settings);
    }

    /**
     * The same, looking closer at the fastest: one more setting, where a parabola through the fastest and those beside it is
     * least (successive parabolic interpolation: Brent, Algorithms for Minimization without Derivatives, 1973, chapter 5).
     *
     * @param all settings that it may have, rising; the nearest of them is taken, unless it is known already
     */
    public Landscapes over(String name, List<Double> settings, List<Double> all) {
        Check.rising(name, settings.stream().mapToDouble(value -> value).toArray());
        Map<String, Asked> more = new LinkedHashMap<>(asked);
        if (more.put(name, new Asked(List.copyOf(settings), List.copyOf(all))) != null) {
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
        List<Look> first = new ArrayList<>();
        List<Look> rest = new ArrayList<>();
        asked.forEach((name, range) -> looks(name, range.settings(), first, rest));
        int looks = first.size() + rest.size();
        Map<String, Landscape> latest = new LinkedHashMap<>();
        for (List<Look> together : List.of(first, rest)) {
            boolean again = together == rest;
            // What the rest of a landscape is looked at for hangs on all of its first look.
            Map<String, Landscape> before = Map.copyOf(latest);
            how.inParallel(
                    together.size(),
                    () -> new LapSolver(lap.stations()),
                    (solver, i) -> {
                        Look look = together.get(i);
                        TreeMap<Double, Landscape.Point> points = new TreeMap<>();
                        if (again) {
                            before.get(look.name()).points().forEach(point -> points.put(point.setting(), point));
                        }
                        DoubleFunction<Landscape.Point> at = setting -> {
                            how.stopIfWanted();
                            return setting == standing(car, day, look.name())
                                    ? new Landscape.Point(setting, Optional.of(baseline), "")
                                    : point(solver, car, day, look.name(), setting);
                        };
                        look.settings().forEach(setting -> points.put(setting, at.apply(setting)));
                        Asked range = asked.get(look.name());
                        boolean complete = points.size() == range.settings().size();
                        if (complete) {
                            closer(points, range.all()).ifPresent(setting -> points.put(setting, at.apply(setting)));
                        }
                        how.stopIfWanted();
                        Landscape landscape =
                                new Landscape(look.name(), baseline, List.copyOf(points.values()), complete);
                        synchronized (latest) {
                            latest.put(look.name(), landscape);
                            listener.accept(landscape);
                        }
                        return landscape;
                    },
                    done -> how.report(again ? first.size() + done : done, looks));
        }
        return asked.keySet().stream().map(latest::get).toList();
    }

    /** A first look at a thing, and the rest of it. */
    private static void looks(String name, List<Double> settings, List<Look> first, List<Look> rest) {
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
    }

    /**
     * The setting nearest to where the parabola through the fastest point and those on either side of it, or the two beside an end,
     * is least; none if it is known, or there is no such place between them.
     */
    private static Optional<Double> closer(NavigableMap<Double, Landscape.Point> known, List<Double> all) {
        List<Landscape.Point> points = List.copyOf(known.values());
        Landscape.Point fastest = points.stream()
                .filter(point -> point.figures().isPresent())
                .min(Comparator.comparingDouble(Landscapes::lapTime))
                .orElse(null);
        if (points.size() < 3 || fastest == null) {
            return Optional.empty();
        }
        int middle = Math.max(1, Math.min(points.size() - 2, points.indexOf(fastest)));
        Landscape.Point a = points.get(middle - 1);
        Landscape.Point b = points.get(middle);
        Landscape.Point c = points.get(middle + 1);
        if (Stream.of(a, b, c).anyMatch(point -> point.figures().isEmpty())) {
            return Optional.empty();
        }
        double before = (lapTime(b) - lapTime(a)) / (b.setting() - a.setting());
        double after = (lapTime(c) - lapTime(b)) / (c.setting() - b.setting());
        double curvature = (after - before) / (c.setting() - a.setting());
        double least = (a.setting() + b.setting()) / 2 - before / (2 * curvature);
        if (!(curvature > 0) || !(least > a.setting() && least < c.setting())) {
            return Optional.empty();
        }
        return all.stream()
                .min(Comparator.comparingDouble(setting -> Math.abs(setting - least)))
                .filter(setting -> !known.containsKey(setting));
    }

    private static double lapTime(Landscape.Point point) {
        return point.figures().orElseThrow().lapTime();
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
