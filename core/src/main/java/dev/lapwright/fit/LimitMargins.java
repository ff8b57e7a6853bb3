package dev.lapwright.fit;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Corner;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Margins between the axles at the limit: how much more of its grip the front axle uses than the rear at a corner's apex, in the first run;
 * positive where the front gives up first.
 */
final class LimitMargins {
    private final FitModel model;
    private final double[] car;

    /** @param car the unknowns that move it, where the margins are wanted */
    LimitMargins(FitModel model, double[] car) {
        this.model = model;
        this.car = car.clone();
    }

    /** Margin at a corner, or the mean over all if it is empty. */
    double at(String corner) {
        return margin(model.lap(car, 0), corner);
    }

    /** Change of that margin with each of so many unknowns, those that move no car last. */
    double[] slopes(String corner, int unknowns) {
        double[] slopes = new double[unknowns];
        for (int j = 0; j < car.length; j++) {
            Direction direction = model.directions().get(j);
            if (direction.shows(0)) {
                double[] low = car.clone();
                double[] high = car.clone();
                low[j] = direction.clamped(car[j] - direction.step());
                high[j] = direction.clamped(car[j] + direction.step());
                double change = margin(model.lap(high, 0), corner) - margin(model.lap(low, 0), corner);
                slopes[j] = change / (high[j] - low[j]);
            }
        }
        return slopes;
    }

    private static double margin(Lap lap, String name) {
        List<Corner> corners = lap.stations().corners();
        double sum = 0;
        int n = 0;
        for (Corner corner : corners) {
            if (name.isEmpty() || isCalled(corner, name)) {
                int at = SpeedCurve.station(
                        lap.column(Channel.DISTANCE), corner.apex(), lap.track().isClosed());
                sum += lap.value(Channel.UTILISATION_FRONT, at) - lap.value(Channel.UTILISATION_REAR, at);
                n++;
            }
        }
        if (n == 0) {
            throw new InvalidValueException(
                    "corner '" + name + "'",
                    lap.track().name() + " has no corner of that name",
                    corners.isEmpty()
                            ? "say it of the whole lap"
                            : "use one of "
                                    + corners.stream().map(Corner::label).collect(Collectors.joining(", ")));
        }
        return sum / n;
    }

    private static boolean isCalled(Corner corner, String name) {
        String label = corner.label();
        return label.equalsIgnoreCase(name)
                || label.toLowerCase(Locale.ROOT).startsWith(name.toLowerCase(Locale.ROOT) + " ");
    }
}
