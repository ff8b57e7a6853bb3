package dev.lapwright.cli.document;

import dev.lapwright.car.Unit;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.Lines;
import dev.lapwright.report.Numbers;
import dev.lapwright.track.survey.ImportReport;
import dev.lapwright.track.survey.ImportedTrack;
import dev.lapwright.track.survey.LapPick;
import java.util.LinkedHashMap;
import java.util.Map;

/** What an import did to the points, and what came of it. */
public final class ImportSheet implements Sheet {
    private final ImportedTrack imported;
    private final ImportSource source;
    private final ImportReport report;

    public ImportSheet(ImportedTrack imported, ImportSource source) {
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
                + Numbers.fixed(report.length(), 1) + " m");
        if (!source.columns().isEmpty()) {
            Lines.item(console, "Columns", source.columns());
        }
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
                "smallest " + Numbers.fixed(report.smallestRadius(), 1) + " m, at "
                        + Numbers.fixed(report.smallestRadiusAt(), 0) + " m");
        Lines.item(
                console,
                "Turning",
                Numbers.signed(degrees(report.totalTurning()), 1) + " deg in all, crosses itself " + report.crossings()
                        + (report.crossings() == 1 ? " time" : " times"));
        elevation(console);
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
                smoothing(report.smoothing(), report.smoothingChosen()) + "; moves points by up to "
                        + Numbers.fixed(report.largestMove(), 2) + " m, at " + Numbers.fixed(report.largestMoveAt(), 0)
                        + " m");
        Lines.item(
                console,
                "Errors",
                Double.isNaN(report.noise())
                        ? "cannot be told: the line goes through the points"
                        : "points " + Numbers.fixed(report.noise(), 2)
                                + " m across the line, which leaves the curvature"
                                + " uncertain by " + Numbers.fixed(1000 * report.curvatureUncertainty(), 2)
                                + " per km (both one standard deviation, if the points err independently)");
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
                "of lateral acceleration: " + smoothing(report.smoothing(), report.smoothingChosen()));
        Lines.item(
                console,
                "Errors",
                Double.isNaN(log.accelerationNoise())
                        ? "cannot be told: the curve goes through the samples"
                        : "samples " + Numbers.fixed(log.accelerationNoise(), 2)
                                + " m/s2, which leaves the curvature uncertain by "
                                + Numbers.fixed(1000 * report.curvatureUncertainty(), 2)
                                + " per km (both one standard deviation, if the samples err independently)");
        if (imported.track().isClosed()) {
            Lines.item(
                    console,
                    "Closing",
                    "the log turned " + Numbers.fixed(Math.abs(degrees(log.headingError())), 1) + " deg too "
                            + (log.headingError() * report.totalTurning() < 0 ? "little" : "much")
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
                "climbs " + Numbers.fixed(report.climb(), 1) + " m in all, slope up to "
                        + Numbers.fixed(degrees(elevation.steepestSlope()), 1) + " deg; "
                        + smoothing(elevation.smoothing(), elevation.smoothingChosen()) + ", moves points by up to "
                        + Numbers.fixed(elevation.largestMove(), 2) + " m");
    }

    private static String smoothing(double wavelength, boolean chosen) {
        return wavelength == 0
                ? "none"
                : "waves of " + Numbers.fixed(wavelength, 1) + " m lose half their height"
                        + (chosen ? " (chosen by generalised cross-validation)" : " (set by hand)");
    }

    @Override
    public Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("kind", "import");
        tree.put("name", imported.track().name());
        tree.put("closed", imported.track().isClosed());
        tree.put("pointsRead", report.pointsRead());
        tree.put("pointsUsed", report.pointsUsed());
        tree.put("smoothingM", report.smoothing());
        tree.put("smoothingChosen", report.smoothingChosen());
        tree.put("noiseM", report.noise());
        tree.put("curvatureUncertaintyPerM", report.curvatureUncertainty());
        tree.put("largestMoveM", report.largestMove());
        tree.put("largestMoveAtM", report.largestMoveAt());
        tree.put("smallestRadiusM", report.smallestRadius());
        tree.put("smallestRadiusAtM", report.smallestRadiusAt());
        tree.put("totalTurningDeg", degrees(report.totalTurning()));
        tree.put("crossings", report.crossings());
        tree.put("lengthM", report.length());
        tree.put("climbM", report.climb());
        if (!source.columns().isEmpty()) {
            tree.put("columns", source.columns());
        }
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
        tree.put("warnings", report.warnings());
        return tree;
    }
}
