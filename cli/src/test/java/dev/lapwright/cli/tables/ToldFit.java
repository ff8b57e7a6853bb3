package dev.lapwright.cli.tables;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.survey.LoggedLap;
import dev.lapwright.track.survey.SurveyPoint;
import java.util.Arrays;

/**
 * Fit of a circuit that is told the truth's form, its number of segments and the errors' covariance: what no import can know, and
 * none can be asked to better by much. Generalised least squares by Levenberg and Marquardt's steps from the truth, with distances
 * across the line; a log's constant and scale are sought as well.
 */
final class ToldFit {
    private static final int STEPS = 6;
    private static final int TRIES = 8;
    private static final double LONGEST_STEP = 0.5;
    private static final double DIFFERENCE = 1e-5;
    /** How well a circuit must close: far better than any survey knows. */
    private static final double CLOSE = 0.02;

    private static final double CLOSE_TURN = 1e-4;

    private final DrawnCircuit circuit;
    private final DrawnSurvey survey;
    private final int forms;
    private final double[][] factor;
    private final int points;
    private final double[] places;
    private final int samples;

    private ToldFit(DrawnCircuit circuit, DrawnSurvey survey) {
        this.circuit = circuit;
        this.survey = survey;
        forms = circuit.numbers().length;
        places = survey.toldPlaces();
        points = places.length;
        samples = survey.log() == null ? 0 : survey.log().speed().length;
        factor = survey.source().hasCommon() ? factor() : null;
    }

    /** The circuit found. */
    static Track of(DrawnCircuit circuit, DrawnSurvey survey) {
        return new ToldFit(circuit, survey).found();
    }

    private Track found() {
        double[] numbers = Arrays.copyOf(circuit.numbers(), forms + 5);
        double[] residuals = residuals(numbers);
        double cost = squares(residuals);
        double damping = 1e-6;
        for (int step = 0; step < STEPS; step++) {
            double[][] slopes = slopes(numbers, residuals);
            double before = cost;
            for (int attempt = 0; attempt < TRIES; attempt++) {
                double[] tried = numbers.clone();
                double[] change = change(slopes, residuals, damping);
                for (int i = 0; i < tried.length; i++) {
                    boolean bounded = i < forms && isLogarithm(i);
                    tried[i] += bounded ? Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, change[i])) : change[i];
                }
                double[] left = residualsOrNull(tried);
                if (left != null && squares(left) < cost) {
                    numbers = tried;
                    residuals = left;
                    cost = squares(left);
                    damping = Math.max(1e-9, damping / 10);
                    break;
                }
                damping *= 10;
            }
            if (before - cost < 1e-3) {
                break;
            }
        }
        return circuit.track(Arrays.copyOf(numbers, forms));
    }

    /** Numbers of segments are logarithms, those of control points are metres. */
    private boolean isLogarithm(int i) {
        return Math.abs(circuit.numbers()[i]) < 8;
    }

    private static double squares(double[] values) {
        return Arrays.stream(values).map(v -> v * v).sum();
    }

    private double[] residualsOrNull(double[] numbers) {
        try {
            return residuals(numbers);
        } catch (InvalidValueException e) {
            // Tighter than a track may be.
            return null;
        }
    }

    /** Whitened misfits of points, of samples and of the loop. */
    private double[] residuals(double[] numbers) {
        Track track = circuit.track(Arrays.copyOf(numbers, forms));
        Stations stations = track.stations(StationSpacing.DEFAULT);
        double[] all = new double[points + samples + 3];
        double[] across = new double[points];
        double cos = Math.cos(numbers[forms + 2]);
        double sin = Math.sin(numbers[forms + 2]);
        for (int i = 0; i < points; i++) {
            SurveyPoint p = survey.told(i);
            double dx = p.x() - numbers[forms];
            double dy = p.y() - numbers[forms + 1];
            double x = cos * dx + sin * dy;
            double y = -sin * dx + cos * dy;
            double s = places[i];
            Stations.Place place = stations.placeAt(within(s, track));
            for (int k = 0; k < 3; k++) {
                s += (x - place.x()) * Math.cos(place.heading()) + (y - place.y()) * Math.sin(place.heading());
                place = stations.placeAt(within(s, track));
            }
            across[i] = (y - place.y()) * Math.cos(place.heading()) - (x - place.x()) * Math.sin(place.heading());
        }
        System.arraycopy(white(across), 0, all, 0, points);
        LoggedLap log = survey.log();
        double[] speed = samples == 0 ? new double[0] : log.speed();
        double[] lateral = samples == 0 ? new double[0] : log.lateralAcceleration();
        for (int i = 0; i < samples; i++) {
            double curvature = track.pointAt(within(survey.places()[i], track)).curvature();
            all[points + i] =
                    (lateral[i] - numbers[forms + 3] - (1 + numbers[forms + 4]) * speed[i] * speed[i] * curvature)
                            / survey.source().accelerationError();
        }
        Stations.Place end = stations.placeAt(track.length());
        all[points + samples] = end.x() / CLOSE;
        all[points + samples + 1] = end.y() / CLOSE;
        all[points + samples + 2] =
                Math.IEEEremainder(end.heading() - stations.placeAt(0).heading(), 2 * Math.PI) / CLOSE_TURN;
        return all;
    }

    private static double within(double s, Track track) {
        return s - Math.floor(s / track.length()) * track.length();
    }

    private double[] white(double[] across) {
        if (factor == null) {
            double size = Math.sqrt(survey.source().ownVariance());
            return Arrays.stream(across).map(v -> v / size).toArray();
        }
        double[] w = new double[points];
        for (int i = 0; i < points; i++) {
            double sum = across[i];
            for (int k = 0; k < i; k++) {
                sum -= factor[i][k] * w[k];
            }
            w[i] = sum / factor[i][i];
        }
        return w;
    }

    /** Cholesky's factor of the covariance of the points' distances across the truth. */
    private double[][] factor() {
        Stations stations = circuit.truth().stations(StationSpacing.DEFAULT);
        double length = circuit.truth().length();
        double[] heading = new double[points];
        for (int i = 0; i < points; i++) {
            heading[i] = stations.placeAt(places[i]).heading();
        }
        double[][] l = new double[points][];
        for (int i = 0; i < points; i++) {
            l[i] = new double[i + 1];
            for (int k = 0; k <= i; k++) {
                double apart = places[i] - places[k];
                double sum = survey.source().commonCovariance(Math.min(apart, length - apart))
                                * Math.cos(heading[i] - heading[k])
                        + (i == k ? survey.source().ownVariance() : 0);
                sum /= survey.laps();
                for (int m = 0; m < k; m++) {
                    sum -= l[i][m] * l[k][m];
                }
                l[i][k] = i == k ? Math.sqrt(Math.max(1e-12, sum)) : sum / l[k][k];
            }
        }
        return l;
    }

    private double[][] slopes(double[] numbers, double[] residuals) {
        double[][] slopes = new double[numbers.length][];
        for (int i = 0; i < numbers.length; i++) {
            double[] moved = numbers.clone();
            double step = DIFFERENCE * Math.max(1, Math.abs(moved[i]));
            moved[i] += step;
            double[] there = residuals(moved);
            slopes[i] = new double[residuals.length];
            for (int k = 0; k < residuals.length; k++) {
                slopes[i][k] = (there[k] - residuals[k]) / step;
            }
        }
        return slopes;
    }

    private static double[] change(double[][] slopes, double[] residuals, double damping) {
        int n = slopes.length;
        double[][] a = new double[n][n + 1];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                for (int k = 0; k < residuals.length; k++) {
                    a[i][j] += slopes[i][k] * slopes[j][k];
                }
            }
            for (int k = 0; k < residuals.length; k++) {
                a[i][n] -= slopes[i][k] * residuals[k];
            }
        }
        for (int i = 0; i < n; i++) {
            a[i][i] = a[i][i] * (1 + damping) + 1e-9;
        }
        return solved(a);
    }

    /** Gauss's elimination with the greatest pivot. */
    private static double[] solved(double[][] a) {
        int n = a.length;
        for (int i = 0; i < n; i++) {
            int best = i;
            for (int k = i + 1; k < n; k++) {
                best = Math.abs(a[k][i]) > Math.abs(a[best][i]) ? k : best;
            }
            double[] row = a[best];
            a[best] = a[i];
            a[i] = row;
            for (int k = i + 1; k < n; k++) {
                double f = a[k][i] / row[i];
                for (int j = i; j <= n; j++) {
                    a[k][j] -= f * row[j];
                }
            }
        }
        double[] x = new double[n];
        for (int i = n - 1; i >= 0; i--) {
            double sum = a[i][n];
            for (int j = i + 1; j < n; j++) {
                sum -= a[i][j] * x[j];
            }
            x[i] = sum / a[i][i];
        }
        return x;
    }
}
