package dev.lapwright.cli.document;

import dev.lapwright.car.Unit;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.Lines;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.LapTimeBand;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import dev.lapwright.track.survey.CurvatureBand;
import dev.lapwright.track.survey.ImportReport;
import dev.lapwright.track.survey.ImportedTrack;
import dev.lapwright.track.survey.LapPick;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What an import did to the points, and what came of it. */
public final class ImportSheet implements Sheet {
    private static final String CROSS_VALIDATION = "generalised cross-validation";

    private final ImportedTrack imported;
    private final ImportSource source;
    private final ImportReport report;
    private final LapTimeBand lap;
    private final String car;

    /**
     * @param lap of the car on the track; null if it is not known
     * @param car its name
     */
    public ImportSheet(ImportedTrack imported, ImportSource source, LapTimeBand lap, String car) {
        this.lap = lap;
        this.car = car;
        this.imported = imported;
        this.source = source;
        report = imported.report();
    }

    private static double degrees(double radians) {
        return Unit.RADIAN.convert(radians, Unit.DEGREE);
    }

    @Override
    public void print(Console console) {
        boolean closed = imported.track().isClosed();
        console.line(console.bold(imported.track().name()) + ", " + (closed ? "closed circuit" : "open run") + " of "
                + Numbers.fixed(report.shape().length(), 1) + " m");
        if (!source.file().columns().isEmpty()) {
            Lines.item(console, "Columns", source.file().columns());
        }
        if (!source.file().passedOver().isEmpty()) {
            Lines.item(console, "Passed over", String.join(", ", source.file().passedOver()));
        }
        Lines.item(
                console,
                "Path",
                imported.track().path() == Track.Path.DRIVEN
                        ? "a line that a car drove; no other line is sought beside it"
                        : "the road's own line");
        if (source.pick() != null) {
            Lines.item(
                    console,
                    "Lap",
                    source.pick().how()
                            + (report.log() == null
                                    ? "; its end missed its start by " + Numbers.fixed(source.drift(), 1)
                                            + " m, spread over the lap"
                                    : ""));
        }
        if (report.log() == null) {
            points(console);
        } else {
            log(console, report.log());
        }
        Lines.item(
                console,
                "Radius",
                "smallest " + Numbers.fixed(report.shape().smallestRadius(), 1) + " m, at "
                        + Numbers.fixed(report.shape().smallestRadiusAt(), 0) + " m");
        Lines.item(
                console,
                "Turning",
                Numbers.signed(degrees(report.shape().totalTurning()), 1) + " deg in all, crosses itself "
                        + report.shape().crossings() + (report.shape().crossings() == 1 ? " time" : " times"));
        elevation(console);
        width(console);
        for (String warning : report.warnings()) {
            Lines.item(console, "Look at", warning);
        }
    }

    private void points(Console console) {
        Lines.item(
                console,
                "Points",
                report.pointsUsed() + " used of " + report.pointsRead() + ", stations "
                        + imported.track().points().size());
        Lines.item(
                console,
                "Smoothing",
                smoothing(report.smoothing().wavelength(), report.smoothing().chosen(), "restricted likelihood")
                        + "; moves points by up to "
                        + Numbers.fixed(report.smoothing().largestMove(), 2) + " m, at "
                        + Numbers.fixed(report.smoothing().largestMoveAt(), 0)
                        + " m");
        Lines.item(
                console,
                "Errors",
                Double.isNaN(report.smoothing().noise())
                        ? "cannot be told: the line goes through the points"
                        : "points " + Numbers.fixed(report.smoothing().noise(), 2) + " m across the line"
                                + wander()
                                + ", which leaves the curvature uncertain by "
                                + Numbers.fixed(1000 * report.smoothing().curvatureUncertainty(), 2)
                                + " per km (one standard deviation)");
        if (imported.band() != null) {
            corners(console, imported.band().corners());
        }
        if (lap != null) {
            Lines.item(
                    console,
                    "Lap time",
                    Numbers.fixed(lap.lapTime(), 1) + " s with " + car + ", to "
                            + Numbers.fixed(lap.nineOfTen(), lap.nineOfTen() < 1 ? 2 : 1)
                            + " s either way in nine of ten: what the points' errors leave open");
        }
    }

    private String wander() {
        return report.smoothing().wander() > 0
                ? ", and " + Numbers.fixed(report.smoothing().wander(), 2)
                        + " m that neighbours have in common, over about "
                        + Numbers.fixed(report.smoothing().wanderLength(), 0) + " m"
                : "";
    }

    private static void corners(Console console, List<CurvatureBand.CornerBand> corners) {
        List<String> doubtful = corners.stream()
                .filter(CurvatureBand.CornerBand::isDoubtful)
                .map(c -> Numbers.fixed(c.corner().apex(), 0) + " m")
                .toList();
        Lines.item(
                console,
                "Corners",
                corners.size() + " found"
                        + (doubtful.isEmpty()
                                ? ""
                                : "; may be none, as far as the points tell: at " + String.join(", ", doubtful)));
        corners.stream()
                .min(Comparator.comparingDouble(c -> c.corner().minimumRadius()))
                .ifPresent(c -> Lines.item(
                        console,
                        "Tightest",
                        "radius " + Numbers.fixed(c.corner().minimumRadius(), 1) + " m, between "
                                + Numbers.fixed(c.least(), 1) + " and " + Numbers.fixed(c.greatest(), 1)
                                + " m in nine of ten"));
    }

    private void log(Console console, ImportReport.LogReport log) {
        Lines.item(
                console,
                "Samples",
                report.pointsUsed() + " used of " + report.pointsRead() + ", the rest standing or too slow; stations "
                        + imported.track().points().size());
        Lines.item(
                console,
                "Smoothing",
                "of lateral acceleration: "
                        + smoothing(
                                report.smoothing().wavelength(),
                                report.smoothing().chosen(),
                                CROSS_VALIDATION));
        Lines.item(
                console,
                "Errors",
                Double.isNaN(log.accelerationNoise())
                        ? "cannot be told: the curve goes through the samples"
                        : "samples " + Numbers.fixed(log.accelerationNoise(), 2)
                                + " m/s2, which leaves the curvature uncertain by "
                                + Numbers.fixed(1000 * report.smoothing().curvatureUncertainty(), 2)
                                + " per km (both one standard deviation, if the samples err independently)");
        if (imported.track().isClosed()) {
            Lines.item(
                    console,
                    "Closing",
                    "the log turned " + Numbers.fixed(Math.abs(degrees(log.headingError())), 1) + " deg too "
                            + (log.headingError() * report.shape().totalTurning() < 0 ? "little" : "much")
                            + ", then ended " + Numbers.fixed(log.positionGap(), 1)
                            + " m from its start; closing it changed the curvature by up to "
                            + Numbers.fixed(1000 * log.largestCurvatureChange(), 2) + " per km");
        }
    }

    private void elevation(Console console) {
        ImportReport.ElevationReport elevation = report.elevation();
        if (elevation == null) {
            Lines.item(console, "Elevation", "none: the circuit is flat");
            return;
        }
        Lines.item(
                console,
                "Elevation",
                "climbs " + Numbers.fixed(report.shape().climb(), 1) + " m in all, slope up to "
                        + Numbers.fixed(degrees(elevation.steepestSlope()), 1) + " deg; "
                        + smoothing(elevation.smoothing(), elevation.smoothingChosen(), CROSS_VALIDATION)
                        + ", moves points by up to "
                        + Numbers.fixed(elevation.largestMove(), 2) + " m");
    }

    private void width(Console console) {
        if (!source.hasWidths() && imported.track().path() == Track.Path.ROAD) {
            TrackPoint first = imported.track().points().get(0);
            Lines.item(
                    console,
                    "Width",
                    "not known: taken as " + Numbers.fixed(first.widthLeft() + first.widthRight(), 1)
                            + " m (--width-m). It changes no lap on this line; a line sought between the edges gains"
                            + " about 0.2 to 1.7 % of a lap by each metre");
        }
    }

    private static String smoothing(double wavelength, boolean chosen, String criterion) {
        return wavelength == 0
                ? "none"
                : "waves of " + Numbers.fixed(wavelength, 1) + " m lose half their height"
                        + (chosen ? " (chosen by " + criterion + ")" : " (set by hand)");
    }

    @Override
    public Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("kind", "import");
        tree.put("name", imported.track().name());
        tree.put("closed", imported.track().isClosed());
        tree.put("pointsRead", report.pointsRead());
        tree.put("pointsUsed", report.pointsUsed());
        tree.put("smoothingM", report.smoothing().wavelength());
        tree.put("smoothingChosen", report.smoothing().chosen());
        tree.put("noiseM", report.smoothing().noise());
        tree.put("wanderM", report.smoothing().wander());
        if (report.smoothing().wander() > 0) {
            tree.put("wanderLengthM", report.smoothing().wanderLength());
        }
        tree.put("curvatureUncertaintyPerM", report.smoothing().curvatureUncertainty());
        tree.put("largestMoveM", report.smoothing().largestMove());
        tree.put("largestMoveAtM", report.smoothing().largestMoveAt());
        tree.put("smallestRadiusM", report.shape().smallestRadius());
        tree.put("smallestRadiusAtM", report.shape().smallestRadiusAt());
        tree.put("totalTurningDeg", degrees(report.shape().totalTurning()));
        tree.put("crossings", report.shape().crossings());
        tree.put("lengthM", report.shape().length());
        tree.put("climbM", report.shape().climb());
        if (!source.file().columns().isEmpty()) {
            tree.put("columns", source.file().columns());
        }
        tree.put("passedOver", source.file().passedOver());
        tree.put("path", imported.track().path().word());
        tree.put("widthsKnown", source.hasWidths());
        LapPick pick = source.pick();
        if (pick != null) {
            Map<String, Object> lap = new LinkedHashMap<>();
            lap.put("number", pick.number());
            lap.put("count", pick.count());
            lap.put("how", pick.how());
            lap.put("driftM", source.drift());
            tree.put("lap", lap);
        }
        ImportReport.LogReport log = report.log();
        if (log != null) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("slowSamples", log.slow());
            one.put("accelerationNoiseMps2", log.accelerationNoise());
            one.put("headingErrorDeg", degrees(log.headingError()));
            one.put("positionGapM", log.positionGap());
            one.put("largestCurvatureChangePerM", log.largestCurvatureChange());
            tree.put("log", one);
        }
        ImportReport.ElevationReport elevation = report.elevation();
        if (elevation != null) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("smoothingM", elevation.smoothing());
            one.put("smoothingChosen", elevation.smoothingChosen());
            one.put("noiseM", elevation.noise());
            one.put("largestMoveM", elevation.largestMove());
            one.put("steepestSlopeDeg", degrees(elevation.steepestSlope()));
            tree.put("elevation", one);
        }
        if (imported.band() != null) {
            List<Map<String, Object>> corners = new ArrayList<>();
            for (CurvatureBand.CornerBand corner : imported.band().corners()) {
                Map<String, Object> one = new LinkedHashMap<>();
                one.put("apexM", corner.corner().apex());
                one.put("radiusM", corner.corner().minimumRadius());
                one.put("leastRadiusM", corner.least());
                if (!Double.isInfinite(corner.greatest())) {
                    one.put("greatestRadiusM", corner.greatest());
                }
                one.put("doubtful", corner.isDoubtful());
                corners.add(one);
            }
            tree.put("corners", corners);
        }
        if (lap != null) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("car", car);
            one.put("lapTimeS", lap.lapTime());
            one.put("nineOfTenS", lap.nineOfTen());
            tree.put("lapTime", one);
        }
        tree.put("warnings", report.warnings());
        return tree;
    }
}
