package dev.lapwright.doubt;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * All that may truly be on a day at a circuit: the cars that one may be, the days, the roads, and what else a study does not know exactly.
 * Immutable.
 */
public final class PlausibleDays {
    private final PlausibleCars cars;
    private final PlausibleRoads roads;
    private final List<Unknown> unknowns;
    private final int ofCars;
    private final int ofRoads;

    private PlausibleDays(PlausibleCars cars, PlausibleRoads roads, List<Unknown> others) {
        this.cars = cars;
        this.roads = roads;
        ofCars = cars.unknowns().size();
        ofRoads = roads.unknowns().size();
        List<Unknown> all = new ArrayList<>(cars.unknowns());
        all.addAll(roads.unknowns());
        all.addAll(others);
        unknowns = List.copyOf(all);
    }

    /**
     * What may be.
     *
     * @param car that is asked about
     * @param driven road or line
     * @param assuming whether what documents do not state is assumed by its class
     * @param others unknowns of the study's own
     * @throws InvalidValueException if nothing is in doubt
     */
    public static PlausibleDays of(Car car, Track driven, Conditions day, boolean assuming, List<Unknown> others) {
        PlausibleDays days = assuming
                ? new PlausibleDays(PlausibleCars.of(car, day), PlausibleRoads.of(driven), others)
                : new PlausibleDays(PlausibleCars.asStated(car, day), PlausibleRoads.asStated(driven), others);
        if (days.unknowns.isEmpty()) {
            throw new InvalidValueException(
                    "doubt", "the document of " + car.name() + " states no doubt", "assume it by class, or state some");
        }
        return days;
    }

    /** The unknowns: those of the car and the day, of the road, and the study's own; independent of each other. */
    public List<Unknown> unknowns() {
        return unknowns;
    }

    /**
     * Draws of all unknowns, each standard normal, by {@link LatinHypercube}.
     *
     * @return draws by unknowns; the caller's
     */
    public double[][] draws(int count, long seed) {
        return LatinHypercube.normal(count, unknowns.size(), seed);
    }

    /** A car of the same document, set up as it is, as it would be if the errors were these. */
    public Car car(Car setUp, double[] draw) {
        return cars.car(setUp, Arrays.copyOf(draw, ofCars));
    }

    /** A day as it would be if the errors were these. */
    public Conditions day(Conditions day, double[] draw) {
        return cars.day(day, Arrays.copyOf(draw, ofCars));
    }

    /** Whether the road is in doubt. */
    public boolean isRoadInDoubt() {
        return ofRoads > 0;
    }

    /** The road as it would be if the errors were these. */
    public Track road(double[] draw) {
        return roads.road(Arrays.copyOfRange(draw, ofCars, ofCars + ofRoads));
    }

    /** What was drawn of the study's own unknowns, standard normal; a new array. */
    public double[] others(double[] draw) {
        return Arrays.copyOfRange(draw, ofCars + ofRoads, draw.length);
    }
}
