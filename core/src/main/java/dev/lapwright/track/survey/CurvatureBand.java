package dev.lapwright.track.survey;

import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;

/**
 * The doubt that a survey leaves in a track's curvature: how uncertain it is at each station, and tracks drawn from all those
 * that the points allow. Immutable.
 *
 * <p>It is the posterior of {@link RoadPosterior}: it knows the errors of the points and how rough roads are, not the errors of
 * that model. A drawn track need not close.
 */
public final class CurvatureBand {
    /** The tightest curvature of a track, 1/m. */
    private static final double TIGHTEST = 0.5;
    /** Gentler bends are no corners, m: as where a track's corners are found. */
    private static final double GENTLEST = 400;
    /** Stretches over whose mean the length of errors is found, m. */
    private static final double STRETCH = 30;
    /** No error is shorter than this share of a stretch. */
    private static final double LEAST_SHARE = 1e-3;

    private final Track track;
    private final double[] deviation;
    private final List<double[]> draws;
    private final double widened;

    /**
     * @param deviation at each of the track's points, 1/m; copied
     * @param draws changes of the curvature at each of the track's points, 1/m; not copied
     * @param widened by how much more lap times err than those of the draws spread
     */
    CurvatureBand(Track track, double[] deviation, List<double[]> draws, double widened) {
        this.track = track;
        this.deviation = deviation.clone();
        this.draws = List.copyOf(draws);
        this.widened = widened;
    }

    /** Standard deviation of the curvature at each of the track's points, 1/m; a copy. */
    public double[] deviation() {
        return deviation.clone();
    }

    /**
     * A corner's smallest radius, with the band that the true one should lie in nine times of ten.
     *
     * @param corner of the track
     * @param least radius, m
     * @param greatest radius, m; infinite if it may be straight
     */
    public record CornerBand(Corner corner, double least, double greatest) {
        /** Whether it may be no corner at all. */
        public boolean isDoubtful() {
            return greatest > GENTLEST;
        }
    }

    /** The track's corners with the bands of their radii. */
    public List<CornerBand> corners() {
        List<CornerBand> bands = new ArrayList<>();
        List<TrackPoint> points = track.points();
        for (Corner corner : track.stations(StationSpacing.DEFAULT).corners()) {
            int at = 0;
            for (int i = 0; i < points.size(); i++) {
                at = Math.abs(points.get(i).s() - corner.apex())
                                < Math.abs(points.get(at).s() - corner.apex())
                        ? i
                        : at;
            }
            double curvature = 1 / corner.minimumRadius();
            double half = Track.NINE_OF_TEN * deviation[at];
            bands.add(new CornerBand(
                    corner,
                    1 / (curvature + half),
                    curvature > half ? 1 / (curvature - half) : Double.POSITIVE_INFINITY));
        }
        return bands;
    }

    /**
     * By how much more lap times err than those of the drawn tracks spread: no road is rough in just the way taken. Found on circuits
     * drawn at random; see docs/limits.md.
     */
    public double widened() {
        return widened;
    }

    /** The track with what is not known of its curvature. */
    Track addTo(Track same) {
        return same.withCurvatureDeviation(deviation).doubting(same.doubt().over(errorLength()));
    }

    /**
     * Length over which errors of curvature go together, as laps feel them, m: the mean over stretches of 30 m errs as that of independent
     * pieces of this length, {@linkplain #widened() widened}.
     */
    public double errorLength() {
        List<TrackPoint> points = track.points();
        double spread = 0;
        double local = 0;
        int stretches = Math.max(1, (int) (track.length() / STRETCH));
        int last = points.size() - 1;
        for (int w = 0; w < stretches; w++) {
            int from = (int) ((long) w * last / stretches);
            int to = Math.max(from + 1, (int) ((long) (w + 1) * last / stretches));
            for (int i = from; i < to; i++) {
                local += deviation[i] * deviation[i] / (to - from);
            }
            for (double[] draw : draws) {
                double mean = 0;
                for (int i = from; i < to; i++) {
                    mean += draw[i] / (to - from);
                }
                spread += mean * mean / draws.size();
            }
        }
        double length = track.length() / stretches;
        double pieces = local > 0 ? spread / local : 1;
        return length * Math.max(LEAST_SHARE, Math.min(1, widened * widened * pieces));
    }

    /** How many tracks are drawn. */
    public int draws() {
        return draws.size();
    }

    /**
     * One of the tracks that the points allow; each number always gives the same.
     *
     * @param number from 0 to below {@link #draws()}
     */
    public Track drawn(int number) {
        double[] change = draws.get(number);
        List<TrackPoint> points = new ArrayList<>(change.length);
        for (int i = 0; i < change.length; i++) {
            TrackPoint p = track.points().get(i);
            double curvature = Math.max(-TIGHTEST, Math.min(TIGHTEST, p.curvature() + change[i]));
            points.add(new TrackPoint(
                    p.s(),
                    curvature,
                    p.slope(),
                    p.bank(),
                    p.verticalCurvature(),
                    p.grip(),
                    p.widthLeft(),
                    p.widthRight(),
                    p.speedLimit()));
        }
        return track.isClosed() ? Track.closed(track.name(), points) : Track.open(track.name(), 0, points);
    }
}
