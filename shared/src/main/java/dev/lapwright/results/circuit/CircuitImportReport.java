package dev.lapwright.results.circuit;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.results.LapTrace;
import dev.lapwright.study.LapTimeBand;
import dev.lapwright.surveys.ImportSource;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import dev.lapwright.track.survey.CurvatureBand;
import dev.lapwright.track.survey.ImportReport;
import dev.lapwright.track.survey.ImportedTrack;
import dev.lapwright.track.survey.LapPick;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Report of a circuit made from surveyed points or a logged lap: what was done to them, and what came of it.
 *
 * @param imported the circuit
 * @param source the points or the log
 * @param lap time of the car on the circuit, with what the points' errors leave open; null if it is not known
 * @param car its name
 */
public record CircuitImportReport(ImportedTrack imported, ImportSource source, LapTimeBand lap, String car) {
    private static final String CROSS_VALIDATION = "generalised cross-validation";
    private static final String LIKELIHOOD = "restricted likelihood";

    private static final Table<CurvatureBand.CornerBand> CORNERS = Table.<CurvatureBand.CornerBand>of("Corners")
            .value("apexM", corner -> corner.corner().apex())
            .value("radiusM", corner -> corner.corner().minimumRadius())
            .value("leastRadiusM", CurvatureBand.CornerBand::least)
            .value(
                    "greatestRadiusM",
                    corner -> Double.isInfinite(corner.greatest()) ? null : (Double) corner.greatest())
            .value("doubtful", CurvatureBand.CornerBand::isDoubtful);

    /**
     * The report with the lap time of a car, where there is a band and the car gets round.
     *
     * @param name of the car, as it is told
     */
    public static CircuitImportReport of(ImportedTrack imported, ImportSource source, Car car, String name) {
        return new CircuitImportReport(imported, source, lap(imported, car), name);
    }

    private static LapTimeBand lap(ImportedTrack imported, Car car) {
        if (imported.band() == null) {
            return null;
        }
        try {
            return LapTimeBand.of(imported, car, Conditions.STANDARD);
        } catch (NoLapException e) {
            return null;
        }
    }

    private static double degrees(double radians) {
        return Unit.RADIAN.convert(radians, Unit.DEGREE);
    }

    /** All that is to be said, for people and machines. */
    public Report report() {
        Report told = new Report();
        tell(told, imported.report());
        fields(told, imported.report());
        return told;
    }

    private void tell(Report told, ImportReport report) {
        told.title(
                Report.verbatim(imported.track().name()),
                ", " + (imported.track().isClosed() ? "closed circuit" : "open run") + " of "
                        + Numbers.fixed(report.shape().length(), 1) + " m");
        if (!source.file().columns().isEmpty()) {
            told.item("Columns", source.file().columns());
        }
        if (!source.file().passedOver().isEmpty()) {
            told.item("Passed over", String.join(", ", source.file().passedOver()));
        }
        told.item(
                "Path",
                imported.track().path() == Track.Path.DRIVEN
                        ? "a line that a car drove; no other line is sought beside it"
                        : "the road's own line");
        if (source.pick() != null) {
            told.item(
                    "Lap",
                    source.pick().how()
                            + pooled(report)
                            + (report.log() == null
                                    ? "; its end missed its start by " + Numbers.fixed(source.drift(), 1)
                                            + " m, spread over the lap"
                                    : ""));
        }
        if (report.log() == null) {
            points(told, report);
        } else {
            log(told, report);
        }
        told.item(
                "Radius",
                "smallest " + Numbers.fixed(report.shape().smallestRadius(), 1) + " m, at "
                        + Numbers.fixed(report.shape().smallestRadiusAt(), 0) + " m");
        told.item(
                "Turning",
                Numbers.signed(degrees(report.shape().totalTurning()), 1) + " deg in all, crosses itself "
                        + report.shape().crossings() + (report.shape().crossings() == 1 ? " time" : " times"));
        elevation(told, report);
        width(told);
        for (String warning : report.warnings()) {
            told.item("Look at", warning);
        }
    }

    private void points(Report told, ImportReport report) {
        told.item(
                "Points",
                report.pointsUsed() + " used of " + report.pointsRead() + ", stations "
                        + imported.track().points().size());
        told.item(
                "Smoothing",
                smoothing(report.smoothing().wavelength(), report.smoothing().chosen(), LIKELIHOOD)
                        + "; moves points by up to "
                        + Numbers.fixed(report.smoothing().largestMove(), 2) + " m, at "
                        + Numbers.fixed(report.smoothing().largestMoveAt(), 0)
                        + " m");
        told.item(
                "Errors",
                Double.isNaN(report.smoothing().noise())
                        ? "cannot be told: the line goes through the points"
                        : "points " + Numbers.fixed(report.smoothing().noise(), 2) + " m across the line"
                                + wander(report.smoothing())
                                + ", which leaves the curvature uncertain by "
                                + Numbers.fixed(1000 * report.smoothing().curvatureUncertainty(), 2)
                                + " per km (one standard deviation)");
        if (report.motion() != null) {
            motion(told, report.motion());
        }
        bands(told);
    }

    private void bands(Report told) {
        if (imported.band() != null) {
            corners(told, imported.band().corners());
        }
        if (lap != null) {
            told.item(
                    "Lap time",
                    Numbers.fixed(lap.lapTime(), 1) + " s with " + car + ", to "
                            + Numbers.fixed(lap.nineOfTen(), lap.nineOfTen() < 1 ? 2 : 1)
                            + " s either way in nine of ten: what "
                            + (imported.report().log() == null ? "the points' errors" : "the samples' errors")
                            + " leave open");
        }
    }

    private static String pooled(ImportReport report) {
        int others = report.laps() - 1;
        return others == 0 ? "" : ", pooled with " + others + (others == 1 ? " other" : " others");
    }

    private static void motion(Report told, ImportReport.MotionReport motion) {
        int knocks = motion.samples() - motion.used();
        told.item(
                "Motion",
                motion.used() + " speeds and lateral accelerations tell the curvature with the positions"
                        + (knocks > 0 ? " (" + knocks + " far from the others left out)" : "")
                        + "; the accelerations err by " + Numbers.fixed(LapTrace.g(motion.accelerationNoise()), 3)
                        + " g, and read " + faults(motion));
    }

    private static String wander(ImportReport.SmoothingReport smoothing) {
        return smoothing.wander() > 0
                ? ", and " + Numbers.fixed(smoothing.wander(), 2) + " m that neighbours have in common, over about "
                        + Numbers.fixed(smoothing.wanderLength(), 0) + " m"
                : "";
    }

    private static void corners(Report told, List<CurvatureBand.CornerBand> corners) {
        List<String> doubtful = corners.stream()
                .filter(CurvatureBand.CornerBand::isDoubtful)
                .map(c -> Numbers.fixed(c.corner().apex(), 0) + " m")
                .toList();
        told.item(
                "Corners",
                corners.size() + " found"
                        + (doubtful.isEmpty()
                                ? ""
                                : "; may be none, as far as the points tell: at " + String.join(", ", doubtful)));
        corners.stream()
                .min(Comparator.comparingDouble(c -> c.corner().minimumRadius()))
                .ifPresent(c -> told.item(
                        "Tightest",
                        "radius " + Numbers.fixed(c.corner().minimumRadius(), 1) + " m, between "
                                + Numbers.fixed(c.least(), 1) + " and " + Numbers.fixed(c.greatest(), 1)
                                + " m in nine of ten"));
    }

    private void log(Report told, ImportReport report) {
        ImportReport.LogReport log = report.log();
        told.item(
                "Samples",
                report.pointsUsed() + " used of " + report.pointsRead() + ", the rest standing or too slow; stations "
                        + imported.track().points().size());
        ImportReport.MotionReport motion = report.motion();
        told.item(
                "Smoothing",
                "of lateral acceleration: "
                        + smoothing(
                                report.smoothing().wavelength(),
                                report.smoothing().chosen(),
                                motion == null ? CROSS_VALIDATION : LIKELIHOOD));
        double noise = motion == null ? log.accelerationNoise() : motion.accelerationNoise();
        told.item(
                "Errors",
                Double.isNaN(noise)
                        ? "cannot be told: the curve goes through the samples"
                        : "samples " + Numbers.fixed(noise, 2)
                                + " m/s2, which leaves the curvature uncertain by "
                                + Numbers.fixed(1000 * report.smoothing().curvatureUncertainty(), 2)
                                + " per km (both one standard deviation, if the samples err independently)");
        if (imported.track().isClosed()) {
            told.item(
                    "Closing",
                    "the log turned " + Numbers.fixed(Math.abs(degrees(log.headingError())), 1) + " deg too "
                            + (log.headingError() * report.shape().totalTurning() < 0 ? "little" : "much")
                            + ", then ended " + Numbers.fixed(log.positionGap(), 1)
                            + " m from its start; closing it changed the curvature by up to "
                            + Numbers.fixed(1000 * log.largestCurvatureChange(), 2) + " per km"
                            + (motion == null ? "" : "; so the logger reads likeliest " + faults(motion)));
        }
        bands(told);
    }

    private static String faults(ImportReport.MotionReport motion) {
        return Numbers.signed(LapTrace.g(motion.bias()), 3) + " g and " + Numbers.signed(100 * motion.scale(), 1)
                + " % too much";
    }

    private static void elevation(Report told, ImportReport report) {
        ImportReport.ElevationReport elevation = report.elevation();
        if (elevation == null) {
            told.item("Elevation", "none: the circuit is flat");
            return;
        }
        told.item(
                "Elevation",
                "climbs " + Numbers.fixed(report.shape().climb(), 1) + " m in all, slope up to "
                        + Numbers.fixed(degrees(elevation.steepestSlope()), 1) + " deg; "
                        + smoothing(elevation.smoothing(), elevation.smoothingChosen(), CROSS_VALIDATION)
                        + ", moves points by up to "
                        + Numbers.fixed(elevation.largestMove(), 2) + " m");
    }

    private void width(Report told) {
        if (!source.hasWidths() && imported.track().path() == Track.Path.ROAD) {
            TrackPoint first = imported.track().points().get(0);
            told.item(
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

    private void fields(Report told, ImportReport report) {
        told.field("kind", "import");
        told.field("name", imported.track().name());
        told.field("closed", imported.track().isClosed());
        told.field("pointsRead", report.pointsRead());
        told.field("pointsUsed", report.pointsUsed());
        told.field("smoothingM", report.smoothing().wavelength());
        told.field("smoothingChosen", report.smoothing().chosen());
        told.field("noiseM", report.smoothing().noise());
        told.field("wanderM", report.smoothing().wander());
        if (report.smoothing().wander() > 0) {
            told.field("wanderLengthM", report.smoothing().wanderLength());
        }
        told.field("curvatureUncertaintyPerM", report.smoothing().curvatureUncertainty());
        told.field("largestMoveM", report.smoothing().largestMove());
        told.field("largestMoveAtM", report.smoothing().largestMoveAt());
        told.field("smallestRadiusM", report.shape().smallestRadius());
        told.field("smallestRadiusAtM", report.shape().smallestRadiusAt());
        told.field("totalTurningDeg", degrees(report.shape().totalTurning()));
        told.field("crossings", report.shape().crossings());
        told.field("lengthM", report.shape().length());
        told.field("climbM", report.shape().climb());
        if (!source.file().columns().isEmpty()) {
            told.field("columns", source.file().columns());
        }
        told.field("passedOver", source.file().passedOver());
        told.field("path", imported.track().path().word());
        told.field("widthsKnown", source.hasWidths());
        LapPick pick = source.pick();
        if (pick != null) {
            Map<String, Object> lap = new LinkedHashMap<>();
            lap.put("number", pick.number());
            lap.put("count", pick.count());
            lap.put("how", pick.how());
            lap.put("driftM", source.drift());
            lap.put("pooled", report.laps());
            told.field("lap", lap);
        }
        ImportReport.LogReport log = report.log();
        if (log != null) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("slowSamples", log.slow());
            one.put("accelerationNoiseG", LapTrace.g(log.accelerationNoise()));
            one.put("headingErrorDeg", degrees(log.headingError()));
            one.put("positionGapM", log.positionGap());
            one.put("largestCurvatureChangePerM", log.largestCurvatureChange());
            told.field("log", one);
        }
        ImportReport.MotionReport motion = report.motion();
        if (motion != null) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("samples", motion.samples());
            one.put("used", motion.used());
            one.put("accelerationNoiseG", LapTrace.g(motion.accelerationNoise()));
            one.put("biasG", LapTrace.g(motion.bias()));
            one.put("scalePercent", 100 * motion.scale());
            told.field("motion", one);
        }
        ImportReport.ElevationReport elevation = report.elevation();
        if (elevation != null) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("smoothingM", elevation.smoothing());
            one.put("smoothingChosen", elevation.smoothingChosen());
            one.put("noiseM", elevation.noise());
            one.put("largestMoveM", elevation.largestMove());
            one.put("steepestSlopeDeg", degrees(elevation.steepestSlope()));
            told.field("elevation", one);
        }
        if (imported.band() != null) {
            told.field("corners", CORNERS, imported.band().corners());
        }
        if (lap != null) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("car", car);
            one.put("lapTimeS", lap.lapTime());
            one.put("nineOfTenS", lap.nineOfTen());
            told.field("lapTime", one);
        }
        told.field("warnings", report.warnings());
    }
}
