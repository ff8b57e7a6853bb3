package dev.lapwright.cli.tables;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Circuit drawn at random, with the numbers of the form that it was drawn by: what a fit that knows the truth's form may seek. Each
 * begins at the origin.
 */
final class DrawnCircuit {
    private static final double NARROWEST = 18;
    private static final double TIGHTEST = 1.0 / 13;
    /** Points between which a curve's curvature is taken as linear, m. */
    private static final double FINE = 1.5;

    /**
     * Control points of outlines drawn by hand for this table, in units of 100 m: a paddock's bend and three shapes of our own. None is
     * that of a circuit.
     */
    private static final double[][][] SHAPES = {
        {
            {0, 0},
            {1, 0},
            {2, 0},
            {3, 0},
            {4, 0},
            {4.8, 0.1},
            {5.2, 0.7},
            {4.8, 1.3},
            {4, 1.5},
            {3.4, 1.9},
            {3.5, 2.6},
            {4.1, 3.1},
            {4.2, 3.8},
            {3.6, 4.3},
            {2.8, 4.1},
            {2.2, 3.4},
            {1.8, 2.6},
            {1, 2.3},
            {0.1, 2.7},
            {-0.8, 2.5},
            {-1.3, 1.7},
            {-1.2, 0.8},
            {-0.8, 0.1}
        },
        {
            {0, 0},
            {1.2, -0.1},
            {2.4, -0.1},
            {3.6, 0},
            {4.8, 0},
            {6, 0.2},
            {6.7, 0.8},
            {6.6, 1.6},
            {5.8, 1.9},
            {4.9, 1.6},
            {4.1, 1.9},
            {3.9, 2.7},
            {4.5, 3.3},
            {4.5, 4.1},
            {3.8, 4.6},
            {2.8, 4.7},
            {1.8, 4.6},
            {0.8, 4.3},
            {0.1, 3.7},
            {0.2, 2.9},
            {0.9, 2.4},
            {0.9, 1.7},
            {0.1, 1.5},
            {-0.7, 1.3},
            {-0.9, 0.5}
        },
        {
            {0, 0},
            {0.9, 0.1},
            {1.8, 0.1},
            {2.6, 0.4},
            {2.8, 1.1},
            {2.4, 1.8},
            {2.7, 2.5},
            {3.5, 2.7},
            {4.4, 2.6},
            {5.1, 3},
            {5.1, 3.7},
            {4.4, 4.2},
            {3.4, 4.2},
            {2.4, 4},
            {1.5, 4.2},
            {0.6, 4.1},
            {0, 3.5},
            {0.3, 2.8},
            {0.9, 2.2},
            {0.7, 1.5},
            {-0.1, 1.3},
            {-0.8, 0.9},
            {-0.7, 0.2}
        },
        {
            {0, 0},
            {1.5, 0},
            {3, 0.1},
            {4.5, 0.4},
            {5.9, 0.9},
            {7, 1.7},
            {7.3, 2.7},
            {6.7, 3.4},
            {5.7, 3.5},
            {4.8, 3.1},
            {4, 2.5},
            {3.2, 2.1},
            {2.4, 2.3},
            {2.1, 3},
            {2.5, 3.8},
            {2.3, 4.6},
            {1.5, 5},
            {0.6, 4.7},
            {0.1, 3.9},
            {-0.3, 3},
            {-0.9, 2.2},
            {-1.4, 1.3},
            {-1, 0.4}
        }
    };

    /** Form by which numbers become a circuit. */
    interface Form {
        /** A circuit that begins at the origin; it need not close where its numbers do not ask for that. */
        Track track(double[] numbers);
    }

    private final Form form;
    private final double[] numbers;
    private final Track truth;

    private DrawnCircuit(Form form, double[] numbers) {
        this.form = form;
        this.numbers = numbers;
        truth = form.track(numbers);
    }

    Track truth() {
        return truth;
    }

    double[] numbers() {
        return numbers.clone();
    }

    /** The circuit of other numbers. */
    Track track(double[] others) {
        return form.track(others);
    }

    /** As many of each form, from a seed on. */
    static List<DrawnCircuit> drawn(int each, long seed) {
        List<DrawnCircuit> circuits = new ArrayList<>();
        for (int i = 0; i < each; i++) {
            circuits.add(clothoids(seed + i));
            circuits.add(waves(seed + i));
            circuits.add(shape(seed + i));
        }
        return circuits;
    }

    /** Straights, transitions and arcs of 14 to 160 m, drawn until they close without crossing. */
    static DrawnCircuit clothoids(long seed) {
        Random random = new Random(seed);
        while (true) {
            int corners = 6 + random.nextInt(7);
            double[] turn = new double[corners];
            double whole = 0;
            for (int i = 0; i < corners; i++) {
                turn[i] = Math.toRadians(25 + 150 * random.nextDouble()) * (random.nextDouble() < 0.72 ? 1 : -1);
                whole += turn[i];
            }
            if (Math.abs(whole - 2 * Math.PI) < 1) {
                for (int i = 0; i < corners; i++) {
                    turn[i] += (2 * Math.PI - whole) / corners;
                }
                DrawnCircuit circuit = closed(turn, random);
                if (circuit != null && circuit.truth.length() < 7000 && isSimple(circuit.truth)) {
                    return circuit;
                }
            }
        }
    }

    /** The least change of the straights' lengths, each by its share, that closes the circuit; null if there is none. */
    private static DrawnCircuit closed(double[] turn, Random random) {
        int n = turn.length;
        double[] numbers = new double[4 * n];
        double[] straight = new double[n];
        for (int i = 0; i < n; i++) {
            double radius = 14 * Math.exp(random.nextDouble() * Math.log(160.0 / 14));
            double transition = (0.2 + 0.5 * random.nextDouble()) * Math.abs(turn[i]) * radius;
            double arc = Math.abs(turn[i]) * radius - transition;
            straight[i] = random.nextDouble() < 0.25
                    ? 15 + 25 * random.nextDouble()
                    : 60 + 500 * Math.pow(random.nextDouble(), 2);
            numbers[4 * i] = Math.log(straight[i]);
            numbers[4 * i + 1] = Math.log(transition);
            numbers[4 * i + 2] = Math.log(arc);
            numbers[4 * i + 3] = Math.log(1 / radius);
        }
        Form form = given -> laid(turn, given);
        Track first = form.track(numbers);
        Stations.Place end = first.stations(StationSpacing.DEFAULT).placeAt(first.length());
        double xx = 0;
        double xy = 0;
        double yy = 0;
        double heading = 0;
        for (int i = 0; i < n; i++) {
            double weight = straight[i] * straight[i];
            xx += weight * Math.cos(heading) * Math.cos(heading);
            xy += weight * Math.cos(heading) * Math.sin(heading);
            yy += weight * Math.sin(heading) * Math.sin(heading);
            heading += turn[i];
        }
        double determinant = xx * yy - xy * xy;
        double east = (-end.x() * yy + end.y() * xy) / determinant;
        double north = (-end.y() * xx + end.x() * xy) / determinant;
        heading = 0;
        for (int i = 0; i < n; i++) {
            double length =
                    straight[i] + straight[i] * straight[i] * (east * Math.cos(heading) + north * Math.sin(heading));
            if (!(length > 8)) {
                return null;
            }
            numbers[4 * i] = Math.log(length);
            heading += turn[i];
        }
        DrawnCircuit circuit = new DrawnCircuit(form, numbers);
        return circuit.truth.stations(StationSpacing.DEFAULT).planeGap() < 0.05 ? circuit : null;
    }

    private static Track laid(double[] turn, double[] numbers) {
        List<TrackPoint> points = new ArrayList<>();
        double s = 0;
        for (int i = 0; i < turn.length; i++) {
            double curvature = Math.signum(turn[i]) * Math.exp(numbers[4 * i + 3]);
            points.add(TrackPoint.flat(s, 0));
            s += Math.exp(numbers[4 * i]);
            points.add(TrackPoint.flat(s, 0));
            s += Math.exp(numbers[4 * i + 1]);
            points.add(TrackPoint.flat(s, curvature));
            s += Math.exp(numbers[4 * i + 2]);
            points.add(TrackPoint.flat(s, curvature));
            s += Math.exp(numbers[4 * i + 1]);
        }
        points.add(TrackPoint.flat(s, 0));
        return Track.closed("drawn", points);
    }

    /** A stretched circle whose radius has seven waves: a road without a straight or an arc. */
    static DrawnCircuit waves(long seed) {
        Random random = new Random(seed);
        while (true) {
            double[] numbers = new double[13];
            numbers[0] = Math.log(300 + 300 * random.nextDouble());
            for (int k = 2; k < 8; k++) {
                double height = 0.6 * random.nextDouble() / (k + 1);
                double phase = 2 * Math.PI * random.nextDouble();
                numbers[2 * k - 3] = height * Math.cos(phase);
                numbers[2 * k - 2] = -height * Math.sin(phase);
            }
            DrawnCircuit circuit = curve(DrawnCircuit::wavy, numbers);
            if (circuit != null) {
                return circuit;
            }
        }
    }

    private static double[] wavy(double[] numbers, double turn) {
        double a = 2 * Math.PI * turn;
        double r = 1;
        for (int k = 2; k < 8; k++) {
            r += numbers[2 * k - 3] * Math.cos(k * a) + numbers[2 * k - 2] * Math.sin(k * a);
        }
        double size = Math.exp(numbers[0]);
        return new double[] {1.4 * size * r * Math.cos(a), size * r * Math.sin(a)};
    }

    /** An outline drawn by hand, stretched and shaken: a uniform cubic B-spline. */
    static DrawnCircuit shape(long seed) {
        Random random = new Random(seed);
        double[][] shape = SHAPES[Math.floorMod(seed, SHAPES.length)];
        while (true) {
            double wide = 60 + 60 * random.nextDouble();
            double high = 60 + 60 * random.nextDouble();
            double[] numbers = new double[2 * shape.length];
            for (int i = 0; i < shape.length; i++) {
                numbers[2 * i] = wide * (shape[i][0] + 0.12 * random.nextGaussian());
                numbers[2 * i + 1] = high * (shape[i][1] + 0.12 * random.nextGaussian());
            }
            DrawnCircuit circuit = curve(DrawnCircuit::spline, numbers);
            if (circuit != null) {
                return circuit;
            }
        }
    }

    private static double[] spline(double[] numbers, double turn) {
        int n = numbers.length / 2;
        double place = (turn - Math.floor(turn)) * n;
        int i = Math.min(n - 1, (int) place);
        double u = place - i;
        double[] weight = {
            (1 - u) * (1 - u) * (1 - u) / 6,
            (3 * u * u * u - 6 * u * u + 4) / 6,
            (-3 * u * u * u + 3 * u * u + 3 * u + 1) / 6,
            u * u * u / 6
        };
        double x = 0;
        double y = 0;
        for (int k = 0; k < 4; k++) {
            int at = (i + k) % n;
            x += weight[k] * numbers[2 * at];
            y += weight[k] * numbers[2 * at + 1];
        }
        return new double[] {x, y};
    }

    private interface Curve {
        /** x and y, m, after a share of the round. */
        double[] at(double[] numbers, double turn);
    }

    /** Null where it crosses itself, or is too tight. */
    private static DrawnCircuit curve(Curve curve, double[] numbers) {
        double length = 0;
        double[] before = curve.at(numbers, 0);
        for (int i = 1; i <= 1000; i++) {
            double[] here = curve.at(numbers, i / 1000.0);
            length += Math.hypot(here[0] - before[0], here[1] - before[1]);
            before = here;
        }
        int count = (int) (length / FINE);
        try {
            DrawnCircuit circuit = new DrawnCircuit(given -> along(curve, given, count), numbers);
            double tightest = circuit.truth.points().stream()
                    .mapToDouble(p -> Math.abs(p.curvature()))
                    .max()
                    .orElseThrow();
            boolean fits = tightest < TIGHTEST
                    && circuit.truth.stations(StationSpacing.DEFAULT).planeGap() < 0.5
                    && isSimple(circuit.truth);
            return fits ? circuit : null;
        } catch (InvalidValueException e) {
            // Tighter than a track may be.
            return null;
        }
    }

    private static Track along(Curve curve, double[] numbers, int count) {
        double[][] p = new double[count + 3][];
        for (int i = 0; i < count + 3; i++) {
            p[i] = curve.at(numbers, (i - 1) / (double) count);
        }
        List<TrackPoint> points = new ArrayList<>();
        double s = 0;
        double first = 0;
        for (int i = 1; i <= count + 1; i++) {
            double ux = p[i][0] - p[i - 1][0];
            double uy = p[i][1] - p[i - 1][1];
            double vx = p[i + 1][0] - p[i][0];
            double vy = p[i + 1][1] - p[i][1];
            double behind = Math.hypot(vx, vy);
            // The circle through three points: exact to the square of their step.
            double k = 2 * (ux * vy - uy * vx) / (Math.hypot(ux, uy) * behind * Math.hypot(ux + vx, uy + vy));
            first = i == 1 ? k : first;
            points.add(TrackPoint.flat(s, i == count + 1 ? first : k));
            // The arc over a chord, to the third order.
            s += behind * (1 + k * k * behind * behind / 24);
        }
        return Track.closed("drawn", points);
    }

    /** Whether the road stays clear of itself. */
    private static boolean isSimple(Track track) {
        Stations stations = track.stations(StationSpacing.DEFAULT);
        int n = (int) (track.length() / 8);
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            Stations.Place place = stations.placeAt(i * track.length() / n);
            x[i] = place.x();
            y[i] = place.y();
        }
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                boolean apart = Math.min(j - i, n - j + i) * 8 > 3 * NARROWEST;
                if (apart && Math.hypot(x[i] - x[j], y[i] - y[j]) < NARROWEST) {
                    return false;
                }
            }
        }
        return true;
    }
}
