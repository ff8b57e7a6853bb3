package dev.lapwright.cli.tables;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.cli.tables.DrawnSurvey.Source;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.LapTimeBand;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.survey.ImportChoices;
import dev.lapwright.track.survey.ImportedTrack;
import dev.lapwright.track.survey.LoggedLapImport;
import dev.lapwright.track.survey.SurveyImport;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Prints as Markdown how near imported circuits come to the truth they were drawn from, beside what a fit that is told the truth's
 * form attains on the first draw: circuits drawn at random, sampled with the errors of several kinds of source. Run from the top of the project,
 * packaged, with the number of circuits of each of the three forms, how many draws of errors on each, the first seed (2, 1 and 1000
 * if left out), and kinds of source, by name, if not all:
 *
 * <pre>java -cp cli/target/lapwright.jar:cli/target/test-classes dev.lapwright.cli.tables.ImportTables 10 1 1000 MAP DRAWN</pre>
 */
public final class ImportTables {
    private static final List<String> ASKED = List.of("final-drive", "rear-wing");

    private final Car car = Documents.car("gt-talvex");
    private final Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
    private final int draws;
    private final long seed;

    private ImportTables(int draws, long seed) {
        this.draws = draws;
        this.seed = seed;
    }

    /** Prints them. */
    public static void main(String... arguments) {
        int each = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 2;
        int draws = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 1;
        long seed = arguments.length > 2 ? Long.parseLong(arguments[2]) : 1000;
        List<Source> sources = arguments.length > 3
                ? Arrays.stream(arguments).skip(3).map(Source::valueOf).toList()
                : List.of(Source.values());
        ImportTables tables = new ImportTables(draws, seed);
        List<DrawnCircuit> circuits = DrawnCircuit.drawn(each, seed);
        System.out.println(
                circuits.size() + " circuits, " + draws + " draws of errors on each, seeds from " + seed + "\n");
        List<Row> rows =
                sources.stream().map(source -> tables.row(source, circuits)).toList();
        System.out.println("| points | refused | lap time: root mean square, s | attainable, s | mean error, s"
                + " | radius: root mean square | attainable | within the band of nine of ten | its half, s"
                + " | error over the band's deviation, root mean square |");
        System.out.println("|---|---|---|---|---|---|---|---|---|---|");
        rows.forEach(row -> System.out.println(row.errors()));
        System.out.println();
        System.out.println("| points | corners as many as in truth | one more or fewer | told the form, as many"
                + " | best final drive is the truth's | told the form | costs, s | best wing is the truth's | told the form | costs, s"
                + " | one import, s | document, kB |");
        System.out.println("|---|---|---|---|---|---|---|---|---|---|---|---|");
        rows.forEach(row -> System.out.println(row.decisions()));
    }

    /** What is found and what is attainable. */
    private static final class Compared {
        private int count;
        private double squares;
        private double sum;
        private double radii;
        private int corners;
        private int same;
        private int near;
        private final int[] best = new int[ASKED.size()];
        private final double[] cost = new double[ASKED.size()];
    }

    /** A row of both tables. */
    private static final class Row {
        private final Source source;
        private final Compared found = new Compared();
        private final Compared told = new Compared();
        private final List<Double> sizes = new ArrayList<>();
        private final List<Double> times = new ArrayList<>();
        private int count;
        private int refused;
        private int within;
        private int bands;
        private double half;
        private double scores;

        Row(Source source) {
            this.source = source;
        }

        private static double median(List<Double> values) {
            return values.isEmpty()
                    ? Double.NaN
                    : values.stream().sorted().toList().get(values.size() / 2);
        }

        String errors() {
            return String.format(
                    Locale.ROOT,
                    "| %s | %d of %d | %.2f | %.2f | %+.2f | %.1f %% | %.1f %% | %s | %.2f | %.2f |",
                    source.words(),
                    refused,
                    count + refused,
                    Math.sqrt(found.squares / count),
                    Math.sqrt(told.squares / told.count),
                    found.sum / count,
                    100 * Math.sqrt(found.radii / found.corners),
                    100 * Math.sqrt(told.radii / told.corners),
                    bands == 0 ? "none" : within + " of " + bands,
                    half / bands,
                    Math.sqrt(scores / bands));
        }

        String decisions() {
            return String.format(
                    Locale.ROOT,
                    "| %s | %d of %d | %d | %d | %d | %d | %.3f | %d | %d | %.3f | %.2f | %.0f |",
                    source.words(),
                    found.same,
                    count,
                    found.near,
                    told.same,
                    found.best[0],
                    told.best[0],
                    found.cost[0] / count,
                    found.best[1],
                    told.best[1],
                    found.cost[1] / count,
                    median(times),
                    median(sizes));
        }
    }

    /** What is known of the truth. */
    private record Known(Track track, double time, List<Corner> corners, double[] best, List<double[]> times) {}

    private Row row(Source source, List<DrawnCircuit> circuits) {
        Row row = new Row(source);
        for (DrawnCircuit circuit : circuits) {
            Known known = known(circuit.truth());
            for (int k = 0; k < draws; k++) {
                DrawnSurvey survey = DrawnSurvey.of(circuit.truth(), source, car, seed + 1_000_003L * k);
                one(row, circuit, survey, known, k == 0);
            }
            System.err.print('.');
        }
        System.err.println(source);
        return row;
    }

    private void one(Row row, DrawnCircuit circuit, DrawnSurvey survey, Known known, boolean first) {
        ImportedTrack found;
        long start = System.nanoTime();
        try {
            found = imported(survey);
        } catch (InvalidValueException e) {
            row.refused++;
            System.err.println(e.getMessage());
            return;
        }
        row.times.add(1e-9 * (System.nanoTime() - start));
        row.sizes.add(DocumentWriter.text(found.track()).getBytes(StandardCharsets.UTF_8).length / 1000.0);
        row.count++;
        double miss = compare(row.found, found.track(), known);
        if (first) {
            compare(row.told, ToldFit.of(circuit, survey), known);
        }
        if (found.band() != null) {
            LapTimeBand band = LapTimeBand.of(found, car, Conditions.STANDARD);
            row.bands++;
            row.half += band.nineOfTen();
            row.scores += Math.pow(miss / band.deviation(), 2);
            row.within += Math.abs(miss) <= band.nineOfTen() ? 1 : 0;
        }
    }

    static ImportedTrack imported(DrawnSurvey survey) {
        return survey.source().use() == DrawnSurvey.Use.LOG
                ? LoggedLapImport.of("drawn", survey.log(), ImportChoices.circuit())
                : SurveyImport.of("drawn", survey.survey(), ImportChoices.circuit());
    }

    private Known known(Track truth) {
        List<double[]> times = ASKED.stream().map(name -> times(truth, name)).toList();
        return new Known(
                truth,
                LapSolver.on(truth).lapTime(vehicle),
                truth.stations(StationSpacing.DEFAULT).corners(),
                times.stream().mapToDouble(ImportTables::least).toArray(),
                times);
    }

    private static int least(double[] values) {
        int found = 0;
        for (int i = 1; i < values.length; i++) {
            found = values[i] < values[found] ? i : found;
        }
        return found;
    }

    private double[] times(Track track, String name) {
        LapSolver solver = LapSolver.on(track);
        Adjustment adjustment = car.adjustment(name);
        return adjustment.legalSettings().stream()
                .mapToDouble(setting -> solver.lapTime(Vehicle.of(car.with(name, setting), Conditions.STANDARD)))
                .toArray();
    }

    /** Counts a circuit in; returns by how much its lap is too slow, s. */
    private double compare(Compared told, Track track, Known known) {
        double miss = LapSolver.on(track).lapTime(vehicle) - known.time();
        told.count++;
        told.squares += miss * miss;
        told.sum += miss;
        int difference =
                Math.abs(track.stations(StationSpacing.DEFAULT).corners().size()
                        - known.corners().size());
        told.same += difference == 0 ? 1 : 0;
        told.near += difference <= 1 ? 1 : 0;
        for (Corner corner : known.corners()) {
            told.radii += Math.pow(tightest(track, known.track(), corner) * corner.minimumRadius() - 1, 2);
            told.corners++;
        }
        for (int i = 0; i < ASKED.size(); i++) {
            int best = least(times(track, ASKED.get(i)));
            told.best[i] += best == known.best()[i] ? 1 : 0;
            told.cost[i] += known.times().get(i)[best] - known.times().get(i)[(int) known.best()[i]];
        }
        return miss;
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
}
