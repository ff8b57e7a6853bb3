package dev.lapwright.fit;

import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Suspicions after a fit: what differs from what was given by more than is usual, and so may be at fault in the car's stead. Each
 * is measured in what would be odd of it: half a doubt of the speed's scale or the lag, which need no doubt where the laps tell them; a
 * doubt and a half of the line; radii that scatter from corner to corner by as much; corners that lie elsewhere; two
 * doubts of a car's nuisance; a fitted parameter one and a half times as far off as is usually in doubt. All ours.
 */
final class Suspicions {
    private static final double ODD_SENSOR = 0.5;
    private static final double ODD_LINE = 1.5;
    private static final double ODD_CAR = 2;
    private static final double ODD_PARAMETER = 1.5;
    /** m; laps of one driver brake and turn within less. */
    private static final double ODD_PLACE = 6;
    /** Percent of radius that corners may scatter by where the line is known exactly. */
    private static final double LEAST_SCATTER = 1;
    /** What is within two standard errors is noise. */
    private static final double SURE = 2;

    private static final double PERCENT = 100;

    private final List<FitResult.Suspicion> found = new ArrayList<>();

    private Suspicions() {}

    /**
     * The greatest first; empty if nothing is odd.
     *
     * @param logged less modelled speed in the laps' cells, m/s, and where it counts
     * @param corners of the track
     */
    static List<FitResult.Suspicion> of(
            RobustFit search,
            FitEstimates estimates,
            List<ParameterScale> free,
            CellErrors cells,
            List<Corner> corners) {
        Suspicions suspicions = new Suspicions();
        for (FitResult.Nuisance nuisance : estimates.nuisances()) {
            suspicions.nuisance(nuisance);
        }
        double[] u = search.parameters();
        for (int j = 0; j < u.length; j++) {
            suspicions.add(
                    FitResult.Cause.CAR,
                    FitResult.Sign.PARAMETER,
                    free.get(j).parameter().title(),
                    free.get(j).value(u[j]) - free.get(j).before(),
                    Math.abs(u[j]) / ODD_PARAMETER);
        }
        double line = Math.max(LEAST_SCATTER, ODD_LINE * search.priors().doubts.of(FitNuisance.LINE));
        double radii = cells.radiusScatter(corners);
        suspicions.add(
                FitResult.Cause.LINE,
                FitResult.Sign.CORNER_RADII,
                "corner radii",
                PERCENT * radii,
                PERCENT * radii / line);
        double places = cells.placeScatter();
        suspicions.add(
                FitResult.Cause.CIRCUIT, FitResult.Sign.CORNER_PLACES, "corner places", places, places / ODD_PLACE);
        suspicions.found.sort(
                Comparator.comparingDouble(FitResult.Suspicion::oddness).reversed());
        return suspicions.found;
    }

    private void nuisance(FitResult.Nuisance nuisance) {
        double doubts = Math.abs(nuisance.found()) / nuisance.doubt();
        boolean sure = Math.abs(nuisance.found()) > SURE * nuisance.standardError();
        FitNuisance which = nuisance.nuisance();
        switch (which.side()) {
            case SENSOR ->
                add(
                        FitResult.Cause.SENSOR,
                        FitResult.Sign.NUISANCE,
                        which.title(),
                        nuisance.found(),
                        sure ? doubts / ODD_SENSOR : 0);
            case LINE ->
                add(
                        FitResult.Cause.LINE,
                        FitResult.Sign.NUISANCE,
                        which.title(),
                        nuisance.found(),
                        sure ? doubts / ODD_LINE : 0);
            case RUN -> {
                // Runs differ; the car is not to blame.
            }
            case CAR ->
                add(FitResult.Cause.CAR, FitResult.Sign.NUISANCE, which.title(), nuisance.found(), doubts / ODD_CAR);
        }
    }

    private void add(FitResult.Cause cause, FitResult.Sign sign, String what, double value, double oddness) {
        if (oddness >= 1) {
            found.add(new FitResult.Suspicion(cause, sign, what, value, oddness));
        }
    }
}
