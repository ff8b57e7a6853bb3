package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.LapTimeBand;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import dev.lapwright.track.survey.ImportChoices;
import dev.lapwright.track.survey.ImportedTrack;
import dev.lapwright.track.survey.Survey;
import dev.lapwright.track.survey.SurveyImport;
import dev.lapwright.track.survey.SurveyPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Prints as Markdown how near imported circuits come to the truth they were drawn from: circuits drawn at random, sampled with
 * the errors of several kinds of source. Uses the public API alone; run from the top of the project, with the command built
 * before, with the number of circuits of each kind and the first seed (6 and 1000 if left out):
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/ImportTables.java 6 1000</pre>
 */
public final class ImportTables {
    private static final double NARROWEST = 18;

    private ImportTables() {}

    /** A kind of source: how far apart its points stand, and by how much they err. */
    private enum Source {
        SURVEY("survey: every 5 m, 0.05 m", 5, 0.05, 0, 0),
        MAP("map: every 8 m, 0.3 m, rounded to 0.1 m", 8, 0.3, 0, 0.1),
        RECEIVER("receiver: every 4 m, 0.2 m, and 0.5 m in common over 100 m", 4, 0.2, 0.5, 0),
        COARSE("coarse: every 20 m, 1 m", 20, 1, 0, 0),
        DRAWN("drawn by hand: every 10 m in bends, 40 m on straights, 0.5 m", 0, 0.5, 0, 0);

        private final String words;
        private final double step;
        private final double own;
        private final double common;
        private final double rounded;

        Source(String words, double step, double own, double common, double rounded) {
            this.words = words;
            this.step = step;
            this.own = own;
            this.common = common;
            this.rounded = rounded;
        }
    }

    /** Prints them. */
    public static void main(String... arguments) {
        int each = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 6;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1000;
        Car car = Documents.car("gt-talvex");
        Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
        List<Track> truths = new ArrayList<>();
        for (int i = 0; i < each; i++) {
            truths.add(clothoids(seed + i));
            truths.add(waves(seed + i));
        }
        System.out.println(
                "| points | lap time: mean of the errors' size, s | mean error, s | within the band of nine of ten"
                        + " | radius, root mean square | corners as many as in truth | one more or fewer |");
        System.out.println("|---|---|---|---|---|---|---|");
        for (Source source : Source.values()) {
            System.out.println(row(source, truths, car, vehicle, seed));
        }
    }

    private static String row(Source source, List<Track> truths, Car car, Vehicle vehicle, long seed) {
        double size = 0;
        double error = 0;
        int within = 0;
        double squares = 0;
        int corners = 0;
        int same = 0;
        int near = 0;
        for (Track truth : truths) {
            ImportedTrack found = SurveyImport.of(
                    "drawn", new Survey(points(truth, source, seed), false, false), ImportChoices.circuit());
            LapTimeBand band = LapTimeBand.of(found, car, Conditions.STANDARD);
            double miss = band.lapTime() - LapSolver.on(truth).lapTime(vehicle);
            size += Math.abs(miss) / truths.size();
            error += miss / truths.size();
            within += Math.abs(miss) <= band.nineOfTen() ? 1 : 0;
            List<Corner> known = truth.stations(StationSpacing.DEFAULT).corners();
            int difference = Math.abs(
                    found.track().stations(StationSpacing.DEFAULT).corners().size() - known.size());
            same += difference == 0 ? 1 : 0;
            near += difference <= 1 ? 1 : 0;
            for (Corner corner : known) {
                squares += Math.pow(tightest(found.track(), truth, corner) * corner.minimumRadius() - 1, 2);
                corners++;
            }
        }
        int n = truths.size();
        return String.format(
                Locale.ROOT,
                "| %s | %.2f | %+.2f | %d of %d | %.0f %% | %d of %d | %d of %d |",
                source.words,
                size,
                error,
                within,
                n,
                100 * Math.sqrt(squares / corners),
                same,
                n,
                near,
                n);
    }

    /** Greatest curvature of the track found within a corner of the truth, to its side. */
    private static double tightest(Track found, Track truth, Corner corner) {
        double extent = (corner.exit() - corner.entry() + truth.length()) % truth.length();
        double greatest = 0;
        for (int i = 0; i <= 60; i++) {
            double s = (corner.entry() + extent * i / 60) % truth.length();
            double k = found.pointAt(Math.min(found.length(), s * found.length() / truth.length()))
                    .curvature();
            greatest = Math.max(greatest, corner.left() ? k : -k);
        }
        return greatest;
    }

    private static List<SurveyPoint> points(Track truth, Source source, long seed) {
        Stations stations = truth.stations(StationSpacing.DEFAULT);
        Random random = new Random(seed + source.ordinal());
        double length = truth.length();
        List<Double> places = new ArrayList<>();
        double step = source.step == 0 ? 0 : length / Math.floor(length / source.step);
        for (double s = 0; s < length - 5; ) {
            places.add(s);
            s += step > 0 ? step : (bends(truth, s) ? 10 : 40) * (0.8 + 0.4 * random.nextDouble());
        }
        double[] x = wander(places.size(), source, random);
        double[] y = wander(places.size(), source, random);
        List<SurveyPoint> points = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            Stations.Place place = stations.placeAt(places.get(i));
            points.add(SurveyPoint.plan(
                    rounded(place.x() + x[i] + source.own * random.nextGaussian(), source.rounded),
                    rounded(place.y() + y[i] + source.own * random.nextGaussian(), source.rounded)));
        }
        return points;
    }

    private static boolean bends(Track truth, double s) {
        boolean bends = false;
        for (double ahead = 0; ahead <= 25; ahead += 5) {
            bends |= Math.abs(truth.pointAt((s + ahead) % truth.length()).curvature()) > 1.0 / 300;
        }
        return bends;
    }

    private static double rounded(double value, double to) {
        return to > 0 ? Math.rint(value / to) * to : value;
    }

    /** An Ornstein and Uhlenbeck process over 100 m, its end brought to its start. */
    private static double[] wander(int count, Source source, Random random) {
        double[] w = new double[count + 1];
        double kept = Math.exp(-source.step / 100);
        w[0] = source.common * random.nextGaussian();
        for (int i = 1; i <= count; i++) {
            w[i] = kept * w[i - 1] + source.common * Math.sqrt(1 - kept * kept) * random.nextGaussian();
        }
        double gap = w[count] - w[0];
        for (int i = 0; i <= count; i++) {
            w[i] -= gap * i / count;
        }
        return w;
    }

    /** Straights, transitions and arcs of 14 to 160 m, drawn until they close without crossing. */
    private static Track clothoids(long seed) {
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
                Track track = closed(turn, random);
                if (track != null && track.length() < 7000 && isSimple(track)) {
                    return track;
                }
            }
        }
    }

    /** The least change of the straights' lengths, each by its share, that closes the circuit; null if there is none. */
    private static Track closed(double[] turn, Random random) {
        int n = turn.length;
        double[][] pieces = new double[n][];
        double[] straight = new double[n];
        for (int i = 0; i < n; i++) {
            double radius = 14 * Math.exp(random.nextDouble() * Math.log(160.0 / 14));
            double transition = (0.2 + 0.5 * random.nextDouble()) * Math.abs(turn[i]) * radius;
            double arc = Math.abs(turn[i]) * radius - transition;
            pieces[i] = new double[] {transition, arc, Math.signum(turn[i]) / radius};
            straight[i] = random.nextDouble() < 0.25
                    ? 15 + 25 * random.nextDouble()
                    : 60 + 500 * Math.pow(random.nextDouble(), 2);
        }
        double[] sums = new double[3];
        double[] end = end(pieces, straight, turn, sums);
        double determinant = sums[0] * sums[2] - sums[1] * sums[1];
        double east = (-end[0] * sums[2] + end[1] * sums[1]) / determinant;
        double north = (-end[1] * sums[0] + end[0] * sums[1]) / determinant;
        double heading = 0;
        for (int i = 0; i < n; i++) {
            straight[i] += straight[i] * straight[i] * (east * Math.cos(heading) + north * Math.sin(heading));
            if (!(straight[i] > 8)) {
                return null;
            }
            heading += turn[i];
        }
        Track track = laid(pieces, straight);
        return track.stations(StationSpacing.DEFAULT).planeGap() < 0.05 ? track : null;
    }

    private static double[] end(double[][] pieces, double[] straight, double[] turn, double[] sums) {
        Track open = Track.open("open", 10, laid(pieces, straight).points());
        Stations stations = open.stations(StationSpacing.DEFAULT);
        Stations.Place place = stations.placeAt(open.length());
        double heading = 0;
        for (int i = 0; i < turn.length; i++) {
            double weight = straight[i] * straight[i];
            sums[0] += weight * Math.cos(heading) * Math.cos(heading);
            sums[1] += weight * Math.cos(heading) * Math.sin(heading);
            sums[2] += weight * Math.sin(heading) * Math.sin(heading);
            heading += turn[i];
        }
        return new double[] {place.x(), place.y()};
    }

    private static Track laid(double[][] pieces, double[] straight) {
        List<TrackPoint> points = new ArrayList<>();
        double s = 0;
        for (int i = 0; i < pieces.length; i++) {
            points.add(TrackPoint.flat(s, 0));
            s += straight[i];
            points.add(TrackPoint.flat(s, 0));
            s += pieces[i][0];
            points.add(TrackPoint.flat(s, pieces[i][2]));
            s += pieces[i][1];
            points.add(TrackPoint.flat(s, pieces[i][2]));
            s += pieces[i][0];
        }
        points.add(TrackPoint.flat(s, 0));
        return Track.closed("drawn", points);
    }

    /** A stretched circle whose radius has seven waves: a road without a straight or an arc. */
    private static Track waves(long seed) {
        Random random = new Random(seed);
        while (true) {
            double size = 300 + 300 * random.nextDouble();
            double[] height = new double[8];
            double[] phase = new double[8];
            for (int k = 2; k < 8; k++) {
                height[k] = 0.6 * random.nextDouble() / (k + 1);
                phase[k] = 2 * Math.PI * random.nextDouble();
            }
            int count = 6000;
            double[] x = new double[count + 4];
            double[] y = new double[count + 4];
            for (int i = 0; i < count + 4; i++) {
                double a = 2 * Math.PI * (i - 1) / count;
                double r = size;
                for (int k = 2; k < 8; k++) {
                    r += size * height[k] * Math.cos(k * a + phase[k]);
                }
                x[i] = 1.4 * r * Math.cos(a);
                y[i] = r * Math.sin(a);
            }
            List<TrackPoint> points = new ArrayList<>();
            double s = 0;
            double tightest = 0;
            for (int i = 1; i <= count + 1; i++) {
                double before = Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
                double behind = Math.hypot(x[i + 1] - x[i], y[i + 1] - y[i]);
                double across = Math.hypot(x[i + 1] - x[i - 1], y[i + 1] - y[i - 1]);
                // The circle through three points: exact to the square of their step.
                double k = 2
                        * ((x[i] - x[i - 1]) * (y[i + 1] - y[i]) - (y[i] - y[i - 1]) * (x[i + 1] - x[i]))
                        / (before * behind * across);
                tightest = Math.max(tightest, Math.abs(k));
                points.add(TrackPoint.flat(s, Math.max(-0.4, Math.min(0.4, k))));
                s += behind;
            }
            if (tightest < 1.0 / 13) {
                Track track = Track.closed("drawn", points);
                if (track.stations(StationSpacing.DEFAULT).planeGap() < 0.5 && isSimple(track)) {
                    return track;
                }
            }
        }
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
