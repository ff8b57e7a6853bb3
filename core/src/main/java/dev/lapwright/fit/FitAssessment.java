package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Comparison of the fitted car with the logged laps: traces of the first run on the common grid, each lap by itself, root mean squares. */
final class FitAssessment {
    /** Least share of a lap that must count: below, it was driven by another car. */
    private static final double LEAST_SHARE = 0.3;
    /** Of the mean speed: a search that leaves more than this has found no car. */
    private static final double FAILED_SHARE = 0.05;

    private static final double KMH = 3.6;

    private final Track track;
    private final List<LapCells> laps;
    private final RobustFit search;
    private final List<Lap> befores;
    private final List<Lap> afters;
    /** Of the first run. */
    private final Lap before;

    private final Lap after;
    private final int count;

    private final List<ParameterScale> free;

    FitAssessment(Track track, List<LapCells> laps, List<ParameterScale> free, RobustFit search, List<Lap> before) {
        this.track = track;
        this.laps = laps;
        this.free = free;
        this.search = search;
        befores = before;
        afters = search.fittedLaps();
        this.before = befores.get(0);
        after = afters.get(0);
        count = laps.get(0).count;
    }

    FitResult result(Car car, FitEstimates estimates, List<FitResult.Candidate> candidates, double confidence) {
        FitResult.Trace trace = trace();
        List<FitResult.LapFit> list = new ArrayList<>();
        double[] times = new double[befores.size()];
        for (int k = 0; k < laps.size(); k++) {
            FitResult.LapFit lap = lap(k);
            list.add(lap);
            double time = Double.isNaN(lap.loggedTime()) ? lap.speedTime() * search.gain() : lap.loggedTime();
            times[laps.get(k).run] += time / lapsOf(laps.get(k).run);
        }
        List<FitResult.Suspicion> suspicions = Suspicions.of(
                search, estimates, free, errors(), after.stations().corners());
        checkEnd(suspicions);
        SandwichCovariance covariance = estimates.covariance();
        List<FitResult.Estimate> values = estimates.list();
        boolean none = covariance == null;
        FitResult.Residuals residuals = new FitResult.Residuals(
                rms(search.residuals(befores.stream().map(SpeedCurve::new).toList())),
                rms(search.residuals()),
                track.length() / count,
                none ? Double.NaN : covariance.autocorrelation,
                none ? Double.NaN : covariance.correlationCells,
                none ? Double.NaN : covariance.effectiveSamples);
        List<FitResult.RunFit> runs = new ArrayList<>();
        for (int run = 0; run < times.length; run++) {
            Car driven = search.model().runs().get(run).car();
            runs.add(new FitResult.RunFit(driven, befores.get(run), afters.get(run), times[run]));
        }
        return new FitResult(
                car,
                search.model().car(search.car(), 0),
                runs,
                list,
                values,
                confidence,
                new FitResult.Doubts(
                        estimates.correlation(),
                        estimates.nuisances(),
                        estimates.carDoubt(car),
                        estimates.words(),
                        estimates.next(candidates),
                        suspicions,
                        estimates.collinearities()),
                new FitResult.Agreement(trace, new FitParts(after.stations(), trace, times[0]).list(), residuals),
                FitNotes.of(list, values, search.settled()));
    }

    private int lapsOf(int run) {
        return search.model().runs().get(run).laps().size();
    }

    /** Throws where the search ended far from the laps: what it found is then nobody's car. */
    private void checkEnd(List<FitResult.Suspicion> suspicions) {
        double left = Math.max(search.scale(), rms(search.residuals()));
        double mean = track.length() / after.time();
        if (left > FAILED_SHARE * mean) {
            String remedy = suspicions.isEmpty()
                    ? "choose the car, the day and the circuit that were driven"
                    : "look at " + suspicions.get(0).cause().label() + " first ("
                            + suspicions.get(0).what()
                            + "); then choose the car, the day and the circuit that were driven";
            throw new InvalidValueException(
                    "fit to " + laps.get(0).lap.name(),
                    String.format(
                            Locale.ROOT,
                            "the search failed: the best car it found still differs from the laps by %.0f km/h",
                            KMH * left),
                    remedy);
        }
    }

    /** Errors by cell of the first lap's grid, the laps' mean, lifts and gaps left out. */
    private CellErrors errors() {
        double[] error = new double[count];
        double[][] residuals = search.residuals();
        for (int c = 0; c < count; c++) {
            double sum = 0;
            int n = 0;
            for (int k = 0; k < laps.size(); k++) {
                if (search.counts(k)[c]) {
                    sum += residuals[k][c];
                    n++;
                }
            }
            error[c] = n == 0 ? Double.NaN : sum / n;
        }
        SpeedCurve curve = new SpeedCurve(after);
        double cell = track.length() / count;
        double[] speed = new double[count];
        for (int c = 0; c < count; c++) {
            speed[c] = curve.mean(c * cell, (c + 1) * cell);
        }
        return new CellErrors(error, speed, search.model().corners(count), track.length());
    }

    private double rms(double[][] residuals) {
        double sum = 0;
        double weight = 0;
        for (int k = 0; k < residuals.length; k++) {
            double[] weights = search.weights(k);
            for (int c = 0; c < count; c++) {
                sum += weights[c] * residuals[k][c] * residuals[k][c];
                weight += weights[c];
            }
        }
        return Math.sqrt(sum / weight);
    }

    private FitResult.Trace trace() {
        double cell = track.length() / count;
        double[] distance = new double[count];
        double[] logged = new double[count];
        double[] weight = new double[count];
        double[] modelBefore = new double[count];
        double[] modelAfter = new double[count];
        SpeedCurve curveBefore = new SpeedCurve(before);
        SpeedCurve curveAfter = new SpeedCurve(after);
        for (int c = 0; c < count; c++) {
            distance[c] = (c + 0.5) * cell;
            modelBefore[c] = curveBefore.mean(c * cell, (c + 1) * cell);
            modelAfter[c] = curveAfter.mean(c * cell, (c + 1) * cell);
            double sum = 0;
            int n = 0;
            for (int k = 0; k < lapsOf(0); k++) {
                LapCells one = laps.get(k);
                double at = logged(k, distance[c] + search.lag() * curveAfter.at(distance[c]));
                double half = 0.5 * cell / one.scaleWith(search.stretch(k));
                int own = (int) Math.floor((at - one.first) / one.lap.length() * count);
                own = Math.max(0, Math.min(count - 1, own));
                if (one.sampled[own]) {
                    sum += one.speedCurve.mean(at - half, at + half) / search.gain();
                    n++;
                }
                weight[c] += search.weights(k)[own] / lapsOf(0);
            }
            logged[c] = n > 0 ? sum / n : Double.NaN;
        }
        return new FitResult.Trace(distance, logged, modelBefore, modelAfter, weight);
    }

    /** Where a place on the track lies in a lap's own distance; a circuit's lap is taken round. */
    private double logged(int k, double place) {
        LapCells one = laps.get(k);
        double at = one.loggedDistance(place, search.offset(k), search.stretch(k));
        double turn = track.isClosed() ? one.lap.length() : 0;
        double end = one.first + one.lap.length();
        return at < one.first ? at + turn : at > end ? at - turn : at;
    }

    private FitResult.LapFit lap(int k) {
        LapCells one = laps.get(k);
        double share = Arrays.stream(search.weights(k)).sum() / count;
        double dropped = 0;
        for (double weight : search.weights(k)) {
            dropped += weight == 0 ? 1.0 / count : 0;
        }
        if (!(share >= LEAST_SHARE)) {
            throw new InvalidValueException(
                    one.lap.name(),
                    String.format(
                            Locale.ROOT,
                            "only %.0f %% of it can be driven by this car whatever is fitted",
                            100 * share),
                    "leave this lap out, or choose the car, the day and the circuit that were driven");
        }
        double scale = one.scaleWith(search.stretch(k));
        double[] speed = one.lap.speed();
        double missing =
                (track.length() - scale * one.lap.length()) / Math.max(0.5 * (speed[0] + speed[speed.length - 1]), 1);
        double[] clock = one.lap.time();
        return new FitResult.LapFit(
                one.lap,
                new FitResult.Alignment(scale, one.offsetWith(search.offset(k), search.stretch(k))),
                clock.length == 0 ? Double.NaN : clock[clock.length - 1] - clock[0] + missing,
                LapValidator.timeBySpeed(one.lap) + missing,
                share,
                dropped,
                lifted(k),
                gearAgreement(k),
                accelerationRms(k));
    }

    private double lifted(int k) {
        if (laps.get(k).lap.throttle().length == 0) {
            return Double.NaN;
        }
        int n = 0;
        for (boolean cell : search.lifted(k, afters.get(laps.get(k).run))) {
            n += cell ? 1 : 0;
        }
        return (double) n / count;
    }

    private double middle(int k, int cell) {
        LapCells one = laps.get(k);
        double offset = search.offset(k);
        double stretch = search.stretch(k);
        return 0.5 * (one.edge(cell, offset, stretch) + one.edge(cell + 1, offset, stretch));
    }

    private double gearAgreement(int k) {
        double[] gears = laps.get(k).means(laps.get(k).lap.gear());
        Lap fitted = afters.get(laps.get(k).run);
        double[] s = fitted.column(Channel.DISTANCE);
        int agreed = 0;
        int n = 0;
        for (int c = 0; c < gears.length; c++) {
            double gear = Math.rint(gears[c]);
            // A cell in which the gear changes, or neutral, is neither right nor wrong.
            if (Math.abs(gears[c] - gear) < 0.05 && gear >= 1) {
                n++;
                int station = SpeedCurve.station(s, middle(k, c), track.isClosed());
                agreed += fitted.value(Channel.GEAR, station) == gear ? 1 : 0;
            }
        }
        return n == 0 ? Double.NaN : (double) agreed / n;
    }

    private double accelerationRms(int k) {
        double[] logged = laps.get(k).means(laps.get(k).lap.longitudinalAcceleration());
        Lap fitted = afters.get(laps.get(k).run);
        double[] s = fitted.column(Channel.DISTANCE);
        double sum = 0;
        int n = 0;
        for (int c = 0; c < logged.length; c++) {
            if (search.weights(k)[c] > 0) {
                int station = SpeedCurve.station(s, middle(k, c), track.isClosed());
                double miss = logged[c] - fitted.value(Channel.LONGITUDINAL_ACCELERATION, station);
                sum += miss * miss;
                n++;
            }
        }
        return n == 0 ? Double.NaN : Math.sqrt(sum / n);
    }
}
