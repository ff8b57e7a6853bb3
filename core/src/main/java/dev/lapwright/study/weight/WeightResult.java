package dev.lapwright.study.weight;

import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import dev.lapwright.track.Corner;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Worth of a kilogram at a circuit. Differences are lap times less that of the car as it stands: below zero is faster.
 *
 * @param lap of the car as it stands
 * @param mass of the car as it stands, fuel included, kg
 * @param atCentre a kilogram at the centre of gravity
 * @param overFront a kilogram over the front axle
 * @param overRear a kilogram over the rear axle
 * @param places corners and what lies between them, in driving order, one that spans the start line last
 * @param byCause difference of lap time for a kilogram more at the centre of gravity, s/kg, by what limits the car; adds up to that of the lap
 */
public record WeightResult(
        Lap lap,
        double mass,
        Worth atCentre,
        Worth overFront,
        Worth overRear,
        List<Place> places,
        Map<Limit, Double> byCause) {
    public WeightResult {
        places = List.copyOf(places);
        Map<Limit, Double> copy = new EnumMap<>(Limit.class);
        copy.putAll(byCause);
        byCause = Collections.unmodifiableMap(copy);
    }

    /**
     * Worth of mass at one place in the car.
     *
     * @param stepKg step of mass, kg
     * @param lighter difference of lap time with one step less, s
     * @param heavier difference of lap time with one step more, s
     */
    public record Worth(double stepKg, double lighter, double heavier) {
        /** Difference of lap time for a kilogram more, s/kg: the central difference. */
        public double perKg() {
            return (heavier - lighter) / (2 * stepKg);
        }
    }

    /**
     * Worth of a kilogram at the centre of gravity in a corner, or on what lies between two.
     *
     * @param label the corner, or the corners that a straight lies between
     * @param corner the corner; empty on a straight
     * @param from distance where it begins, m; exceeds {@code to} where it spans the start line
     * @param to distance where it ends, m
     * @param time the lap spends there, s
     * @param perKg difference of that time for a kilogram more, s/kg; adds up to that of the lap
     */
    public record Place(String label, Optional<Corner> corner, double from, double to, double time, double perKg) {}

    /** Difference of lap time for a kilogram more in all corners together, s/kg. */
    public double inCorners() {
        return places.stream()
                .filter(place -> place.corner().isPresent())
                .mapToDouble(Place::perKg)
                .sum();
    }

    /** Difference of lap time for a kilogram more on all straights together, s/kg. */
    public double onStraights() {
        return places.stream()
                .filter(place -> place.corner().isEmpty())
                .mapToDouble(Place::perKg)
                .sum();
    }

    /** Difference of lap time for a kilogram moved from the front axle to the rear axle, s/kg. */
    public double toTheRear() {
        return overRear.perKg() - overFront.perKg();
    }
}
