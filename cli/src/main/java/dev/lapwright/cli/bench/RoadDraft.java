package dev.lapwright.cli.bench;

import dev.lapwright.car.Car;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.documents.Documents;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.results.circuit.CircuitImportReport;
import dev.lapwright.results.circuit.RoadEditReport;
import dev.lapwright.surveys.ImportSource;
import dev.lapwright.surveys.Surveys;
import dev.lapwright.track.Corner;
import dev.lapwright.track.RoadEdit;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import dev.lapwright.track.survey.CurvatureBand;
import dev.lapwright.track.survey.ImportChoices;
import dev.lapwright.track.survey.ImportedTrack;
import dev.lapwright.track.survey.SurveyPoint;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * A circuit made on the page, of the points of a file or of clicks, and corrected by hand: read, smoothed, refitted and told by what
 * {@code circuit import} and {@code circuit edit} do it with.
 */
final class RoadDraft {
    private static final int MOST_EDITS = 300;
    /** As many points are told at most, and places of the road. */
    private static final int MOST_POINTS = 2000;

    private static final int MOST_PLACES = 800;

    private static final int ROUNDS = 8;
    /** Apexes as near as that are of one corner, m. */
    private static final double SAME_APEX_M = 2;

    private final String name;
    private final ImportSource source;
    private final ImportedTrack imported;
    /** The road imported, with its corners as they were merged and split. */
    private final Track told;

    private final RoadEdit.Result edited;

    /** @throws dev.lapwright.fault.LapwrightException with what is wrong with the points, the choices or the corrections */
    RoadDraft(Fields asked) {
        asked.only(Set.of(
                "name",
                "file",
                "text",
                "closed",
                "crosses",
                "widthM",
                "corners",
                "accuracyM",
                "smoothingM",
                "edits",
                "told"));
        name = Documents.checkedName("name", asked.text("name", ""));
        double corners = asked.number("corners", -1, -1, 300);
        double accuracy = asked.number("accuracyM", 0, 0, 50);
        ImportChoices choices = new ImportChoices(
                asked.number("closed", 1, 0, 1) > 0,
                asked.has("smoothingM")
                        ? OptionalDouble.of(asked.number("smoothingM", 0, 0, 1e4))
                        : OptionalDouble.empty(),
                OptionalDouble.empty(),
                accuracy > 0 ? OptionalDouble.of(accuracy) : OptionalDouble.empty(),
                asked.number("widthM", 10, 1, 200),
                false,
                asked.number("crosses", 0, 0, 1) > 0,
                corners < 0 ? OptionalInt.empty() : OptionalInt.of((int) corners));
        DocumentSource file = new DocumentSource(asked.text("file", ""), asked.document("text"));
        source = ImportSource.of(Surveys.readFile(file, List.of(), false), choices, OptionalInt.empty());
        imported = source.imported(name, choices);
        told = told(imported.track(), asked.objects("told", MOST_EDITS));
        edited = edited(asked.objects("edits", MOST_EDITS));
    }

    /** Merges and splits corners, one after the other, each by the numbers that the one before left. */
    private static Track told(Track track, List<Fields> all) {
        Track told = track;
        for (Fields one : all) {
            one.only(Set.of("merge", "split", "atM"));
            List<Corner> corners = corners(told);
            boolean merge = one.has("merge");
            int number = (int) one.number(merge ? "merge" : "split", 1, 1, Math.max(1, corners.size()));
            if (corners.isEmpty()) {
                return told;
            }
            Corner corner = corners.get(number - 1);
            RoadEdit edit = RoadEdit.of(told);
            told = (merge ? edit.merged(corner) : edit.split(corner, one.number("atM", 0, 0, told.length())))
                    .edited()
                    .track();
        }
        return told;
    }

    /** The road as corrected; null where nothing is. */
    private RoadEdit.Result edited(List<Fields> corrections) {
        List<Corner> corners = corners(told);
        RoadEdit edit = RoadEdit.of(told);
        for (Fields one : corrections) {
            one.only(Set.of("corner", "radiusM", "widthM"));
            int number = (int) one.number("corner", 0, 0, corners.size());
            Corner corner = corners.get(Math.max(1, number) - 1);
            edit = one.has("radiusM") ? edit.radius(corner, one.number("radiusM", 0, 0, 1e4)) : edit;
            edit = one.has("widthM") ? edit.width(corner, one.number("widthM", 0, 0, 1e4)) : edit;
        }
        return corrections.isEmpty() || corners.isEmpty() ? null : edit.edited();
    }

    private static List<Corner> corners(Track track) {
        return track.stations(StationSpacing.DEFAULT).corners();
    }

    private Track road() {
        return edited == null ? told : edited.track();
    }

    /**
     * What the page shows of it.
     *
     * @param car that drives it, to say what the points' errors mean
     * @param carName under which it is told
     */
    Map<String, Object> tree(Car car, String carName) {
        Stations road = road().stations(StationSpacing.DEFAULT);
        List<SurveyPoint> points =
                source.survey() == null ? List.of() : source.survey().points();
        double[] away = away(road, points);
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "road");
        tree.put("lengthM", road().length());
        tree.put(
                "points",
                thinned(
                        points.size(),
                        MOST_POINTS,
                        i -> List.of(points.get(i).x(), points.get(i).y())));
        double[] x = road.x();
        double[] y = road.y();
        tree.put("road", thinned(road.count(), MOST_PLACES, i -> List.of(x[i] + away[0], y[i] + away[1])));
        double[] s = road.s();
        double[] curvature = road.curvature();
        tree.put("curvature", thinned(road.count(), MOST_PLACES, i -> List.of(s[i], 1000 * curvature[i])));
        tree.put("band", band());
        tree.put("corners", cornersOf(road, away));
        List<Map<String, Object>> blocks = new ArrayList<>(ReportBlocks.of(
                CircuitImportReport.of(imported, source, car, carName).report()));
        if (edited != null) {
            blocks.addAll(ReportBlocks.of(new RoadEditReport(told, edited).report()));
        }
        tree.put("blocks", RoadWords.on(blocks));
        return tree;
    }

    private interface Row {
        List<Double> at(int index);
    }

    /** Some of many, the last among them. */
    private static List<List<Double>> thinned(int count, int most, Row row) {
        int step = Math.max(1, (count + most - 1) / most);
        List<List<Double>> rows = new ArrayList<>();
        for (int i = 0; i < count; i += step) {
            rows.add(row.at(i));
        }
        if (count > 0 && (count - 1) % step > 0) {
            rows.add(row.at(count - 1));
        }
        return rows;
    }

    /** Where the curvature lies nine times of ten as far as the points tell, per km: distance, least, greatest. */
    private List<List<Double>> band() {
        CurvatureBand band = imported.band();
        if (band == null) {
            return List.of();
        }
        double[] deviation = band.deviation();
        List<TrackPoint> points = imported.track().points();
        return thinned(
                points.size(),
                MOST_PLACES,
                i -> List.of(
                        points.get(i).s(),
                        1000 * (points.get(i).curvature() - Track.NINE_OF_TEN * deviation[i]),
                        1000 * (points.get(i).curvature() + Track.NINE_OF_TEN * deviation[i])));
    }

    /** The corners of the road imported, where they lie on the one corrected. */
    private List<Map<String, Object>> cornersOf(Stations road, double... away) {
        List<Corner> were = corners(told);
        List<Corner> are = road.corners();
        List<CurvatureBand.CornerBand> bands =
                imported.band() == null ? List.of() : imported.band().corners();
        List<Map<String, Object>> rows = new ArrayList<>();
        for (int i = 0; i < were.size(); i++) {
            Corner corner = were.size() == are.size() ? are.get(i) : were.get(i);
            Stations.Place place = road.placeAt(Math.min(corner.apex(), road().length()));
            double side = corner.left() ? 1 : -1;
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("number", i + 1);
            one.put("label", were.get(i).label());
            one.put("at", List.of(place.x() + away[0], place.y() + away[1]));
            one.put("inwards", List.of(side * place.leftX(), side * place.leftY()));
            one.put("radiusM", corner.minimumRadius());
            one.put("entryM", were.get(i).entry());
            one.put("exitM", were.get(i).exit());
            double apex = were.get(i).apex();
            // The band is of the corners that were imported.
            List<Corner> first = corners(imported.track());
            for (int k = 0; k < Math.min(bands.size(), first.size()); k++) {
                if (Math.abs(first.get(k).apex() - apex) < SAME_APEX_M) {
                    one.put("leastM", bands.get(k).least());
                    one.put(
                            "greatestM",
                            Double.isFinite(bands.get(k).greatest())
                                    ? bands.get(k).greatest()
                                    : null);
                }
            }
            rows.add(one);
        }
        return rows;
    }

    /** How far the road, which begins at 0, 0, is to be moved to lie on its points: the mean way from it to them, again and again. */
    private static double[] away(Stations road, List<SurveyPoint> points) {
        double[] away = {0, 0};
        double[] x = road.x();
        double[] y = road.y();
        if (points.isEmpty()) {
            return away;
        }
        away[0] = points.get(0).x() - x[0];
        away[1] = points.get(0).y() - y[0];
        int step = Math.max(1, points.size() / 200);
        for (int round = 0; round < ROUNDS; round++) {
            double[] sum = new double[3];
            for (int k = 0; k < points.size(); k += step) {
                double px = points.get(k).x() - away[0];
                double py = points.get(k).y() - away[1];
                int near = 0;
                for (int i = 1; i < x.length; i++) {
                    near = square(x[i] - px, y[i] - py) < square(x[near] - px, y[near] - py) ? i : near;
                }
                sum[0] += px - x[near];
                sum[1] += py - y[near];
                sum[2]++;
            }
            away[0] += sum[0] / sum[2];
            away[1] += sum[1] / sum[2];
        }
        return away;
    }

    private static double square(double x, double y) {
        return x * x + y * y;
    }

    /** Writes the document, and enters it among the circuits of the bench. */
    Map<String, Object> kept(SavedFiles saved, Catalogue catalogue) {
        Path file = saved.save(name, ".json", DocumentWriter.text(road()));
        catalogue.enterCircuit(file.toString());
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "kept");
        tree.put("circuit", file.toString());
        tree.put("title", road().name());
        return tree;
    }
}
