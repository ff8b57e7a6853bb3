package dev.lapwright.fit;

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
        return LimitWord.margin(model.lap(car, 0), corner);
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
                double change =
                        LimitWord.margin(model.lap(high, 0), corner) - LimitWord.margin(model.lap(low, 0), corner);
                slopes[j] = change / (high[j] - low[j]);
            }
        }
        return slopes;
    }
}
