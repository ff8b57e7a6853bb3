package dev.lapwright.study.robust;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.slip.SlipModel;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Choices of the model that no measurement of the car settles, and what a difference between two setups becomes if they are made otherwise: how a
 * light inner wheel is braked, whether slip stiffness falls as a tyre is used across, which of two models of a lap is asked, and on which line laps are
 * driven. Each choice has
 * alternatives with stated weights, which are ours: even among those that are named. They are told apart from what is not known of the car.
 *
 * @param alternatives of all choices, in turn
 */
public record ModelChoices(List<Alternative> alternatives) {
    private static final String BRAKES = "brake force of a light inner wheel";
    private static final String SLIP = "slip stiffness of a tyre used across";
    private static final String LINE = "line";
    private static final String MODEL = "model";

    public ModelChoices {
        alternatives = List.copyOf(alternatives);
    }

    /**
     * One way to make a choice.
     *
     * @param choice what is chosen
     * @param taken how
     * @param weight its share among the alternatives of that choice, 0 to 1
     * @param difference lap time of the other setup over that of the first with it, s; NaN where one has no lap
     */
    public record Alternative(String choice, String taken, double weight, double difference) {}

    /**
     * The choices, each made otherwise by itself.
     *
     * @param before a car
     * @param day its day
     * @param after the same car in another setup
     * @param other that one's day
     * @param driven road or line that laps are driven on
     * @param road the road itself, where a line on it is driven
     */
    public static ModelChoices between(
            Car before, Conditions day, Car after, Conditions other, Track driven, Optional<Track> road) {
        List<Alternative> all = new ArrayList<>();
        for (Map.Entry<String, Double> brakes :
                ends("no wheel locks", "it may slide").entrySet()) {
            all.add(new Alternative(
                    BRAKES,
                    brakes.getKey(),
                    0.5,
                    difference(
                            before.with(Quantity.LIGHT_WHEEL, brakes.getValue()),
                            day,
                            after.with(Quantity.LIGHT_WHEEL, brakes.getValue()),
                            other,
                            driven)));
        }
        for (Map.Entry<String, Double> slip : ends("does not fall", "falls").entrySet()) {
            all.add(new Alternative(
                    SLIP,
                    slip.getKey(),
                    0.5,
                    difference(
                            before.with(Quantity.SLIP_STIFFNESS_FALL, slip.getValue()),
                            day,
                            after.with(Quantity.SLIP_STIFFNESS_FALL, slip.getValue()),
                            other,
                            driven)));
        }
        all.add(new Alternative(MODEL, "the fast one", 0.5, difference(before, day, after, other, driven)));
        all.add(new Alternative(
                MODEL,
                "the fuller one",
                0.5,
                difference(before, day, after, other, SlipModel.laps(driven.stations(StationSpacing.DEFAULT)))));
        road.ifPresent(middle -> {
            all.add(new Alternative(LINE, "as driven here", 0.5, difference(before, day, after, other, driven)));
            all.add(new Alternative(
                    LINE, "the middle of the road", 0.5, difference(before, day, after, other, middle)));
        });
        return new ModelChoices(all);
    }

    private static Map<String, Double> ends(String none, String all) {
        Map<String, Double> ends = new LinkedHashMap<>();
        ends.put(none, 0.0);
        ends.put(all, 100.0);
        return ends;
    }

    private static double difference(Car before, Conditions day, Car after, Conditions other, Track track) {
        return difference(before, day, after, other, LapSolver.on(track));
    }

    private static double difference(Car before, Conditions day, Car after, Conditions other, LapSolver solver) {
        try {
            double first = solver.lapTime(Vehicle.of(before, day));
            return solver.lapTime(Vehicle.of(after, other)) - first;
        } catch (NoLapException | InvalidValueException none) {
            return Double.NaN;
        }
    }

    /** The choices by name, each with its alternatives. */
    public Map<String, List<Alternative>> byChoice() {
        Map<String, List<Alternative>> choices = new LinkedHashMap<>();
        for (Alternative one : alternatives) {
            choices.computeIfAbsent(one.choice(), name -> new ArrayList<>()).add(one);
        }
        return choices;
    }

    /** Standard deviation of the difference by all choices, independent of each other and weighted, s; those without a lap are left out. */
    public double deviation() {
        double variance = 0;
        for (List<Alternative> choice : byChoice().values()) {
            List<Alternative> known = choice.stream()
                    .filter(one -> !Double.isNaN(one.difference()))
                    .toList();
            double weight = known.stream().mapToDouble(Alternative::weight).sum();
            double mean = known.stream()
                            .mapToDouble(one -> one.weight() * one.difference())
                            .sum()
                    / weight;
            variance += known.isEmpty()
                    ? 0
                    : known.stream()
                                    .mapToDouble(one -> one.weight() * Math.pow(one.difference() - mean, 2))
                                    .sum()
                            / weight;
        }
        return Math.sqrt(variance);
    }
}
