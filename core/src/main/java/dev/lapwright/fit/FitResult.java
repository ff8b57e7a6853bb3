package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Track;
import java.util.Arrays;
import java.util.List;

/**
 * A car fitted to logged laps.
 *
 * @param car as given, with its settings
 * @param fitted the same with the fitted values, with the same settings; {@link #document(String, String)} gives what
 *     to write
 * @param track driven on
 * @param conditions of the day
 * @param laps how each entered the fit, in the order given
 * @param estimates one for each parameter asked for, in the order of {@link FitParameter}
 * @param correlation of the estimates, in their order; NaN in the rows and columns of those held. Copied in and out
 * @param ties what cannot be told apart; empty if all is well
 * @param trace logged and modelled speed on the common grid
 * @param parts corners and straights in driving order
 * @param rmsBefore root mean square of logged less modelled speed for the car as given, m/s
 * @param rmsAfter the same for the fitted car, m/s
 * @param confidence of the intervals, as 0.95
 * @param cell length of the grid's cells, m
 * @param persistence correlation of the residuals of neighbouring cells
 * @param bandwidth cells over which residuals were taken to hang together
 * @param effectiveSamples how many independent residuals tell as much as these do
 * @param before lap of the car as given
 * @param after lap of the fitted car
 * @param loggedTime mean of the laps by their clocks, by their speeds where there is none, s
 * @param notes what was not used or looks odd, in plain sentences
 */
public record FitResult(
        Car car,
        Car fitted,
        Track track,
        Conditions conditions,
        List<FittedLap> laps,
        List<FitEstimate> estimates,
        double[][] correlation,
        List<FitTie> ties,
        FitTrace trace,
        List<FitPart> parts,
        double rmsBefore,
        double rmsAfter,
        double confidence,
        double cell,
        double persistence,
        double bandwidth,
        double effectiveSamples,
        Lap before,
        Lap after,
        double loggedTime,
        List<String> notes) {
    public FitResult {
        laps = List.copyOf(laps);
        estimates = List.copyOf(estimates);
        correlation = copy(correlation);
        ties = List.copyOf(ties);
        parts = List.copyOf(parts);
        notes = List.copyOf(notes);
    }

    private static double[][] copy(double[][] rows) {
        return Arrays.stream(rows).map(double[]::clone).toArray(double[][]::new);
    }

    @Override
    public double[][] correlation() {
        return copy(correlation);
    }

    /** The estimate of a parameter that was asked for. */
    public FitEstimate estimate(FitParameter parameter) {
        return estimates.stream()
                .filter(e -> e.parameter() == parameter)
                .findFirst()
                .orElseThrow();
    }

    /**
     * The car as its document describes it, with the fitted values and no settings: what to write. Its adjustments
     * stand at their standard; set as the given car was, it is {@link #fitted}.
     *
     * @param name of the car in its document
     * @param description of the car in its document: say here where the values come from
     */
    public Car document(String name, String description) {
        return FittedCar.named(fitted.document(), name, description);
    }
}
