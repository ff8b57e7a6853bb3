package dev.lapwright.track;

import dev.lapwright.fault.Check;
import java.util.List;

/**
 * Track sampled at the stations of the solver, as columns of one length. Cell i runs from station i to station i + 1; on
 * a closed track the last station is the first again, one length further on. A jump is a cell of no length. Immutable:
 * every accessor returns a copy.
 */
public final class Stations {
    private final Track track;
    private final double[] s;
    private final double[] curvature;
    private final double[] slope;
    private final double[] bank;
    private final double[] verticalCurvature;
    private final double[] grip;
    private final double[] widthLeft;
    private final double[] widthRight;
    private final double[] speedLimit;
    private final double[] heading;
    private final double[] x;
    private final double[] y;
    private final double[] z;
    private final List<Corner> corners;

    /**
     * Position and heading of a point of the path.
     *
     * @param x to the east of the start, m
     * @param y to the north of the start, m
     * @param z altitude, m
     * @param heading rad, counter-clockwise from the x axis
     */
    public record Place(double x, double y, double z, double heading) {
        /** How far to the east a metre to the left of the path leads. */
        public double leftX() {
            return -Math.sin(heading);
        }

        /** How far to the north a metre to the left of the path leads. */
        public double leftY() {
            return Math.cos(heading);
        }
    }

    Stations(Track track, List<TrackPoint> laid) {
        int n = laid.size();
        this.track = track;
        s = new double[n];
        curvature = new double[n];
        slope = new double[n];
        bank = new double[n];
        verticalCurvature = new double[n];
        grip = new double[n];
        widthLeft = new double[n];
        widthRight = new double[n];
        speedLimit = new double[n];
        for (int i = 0; i < n; i++) {
            TrackPoint p = laid.get(i);
            s[i] = p.s();
            curvature[i] = p.curvature();
            slope[i] = p.slope();
            bank[i] = p.bank();
            verticalCurvature[i] = p.verticalCurvature();
            grip[i] = p.grip();
            widthLeft[i] = p.widthLeft();
            widthRight[i] = p.widthRight();
            speedLimit[i] = p.speedLimit();
        }
        heading = new double[n];
        x = new double[n];
        y = new double[n];
        z = new double[n];
        integratePath();
        corners = track.knownCorners().isEmpty() ? CornerFinder.find(track, s, curvature) : track.knownCorners();
    }

    /** Heading by the exact integral of linear curvature; plane position by Gauss-Legendre quadrature in each cell. */
    private void integratePath() {
        heading[0] = track.startHeading();
        z[0] = track.startAltitude();
        for (int i = 0; i + 1 < s.length; i++) {
            double[] moved = moved(i, 1);
            heading[i + 1] = heading[i] + 0.5 * (s[i + 1] - s[i]) * (curvature[i] + curvature[i + 1]);
            x[i + 1] = x[i] + moved[0];
            y[i + 1] = y[i] + moved[1];
            z[i + 1] = z[i] + moved[2];
        }
    }

    /** Change of x, y and z over the first part of a cell. */
    private double[] moved(int cell, double part) {
        final double reach = Math.sqrt(0.6);
        double ds = s[cell + 1] - s[cell];
        double bend = curvature[cell + 1] - curvature[cell];
        double[] sum = new double[3];
        for (int k = -1; k <= 1; k++) {
            double w = 0.5 * part * (1 + k * reach);
            double weight = part * ds * (k == 0 ? 8.0 / 18 : 5.0 / 18);
            double psi = heading[cell] + ds * w * (curvature[cell] + 0.5 * w * bend);
            double theta = slope[cell] + w * (slope[cell + 1] - slope[cell]);
            sum[0] += weight * Math.cos(theta) * Math.cos(psi);
            sum[1] += weight * Math.cos(theta) * Math.sin(psi);
            sum[2] += weight * Math.sin(theta);
        }
        return sum;
    }

    double headingAt(double distance) {
        return headingIn(cellAt(distance), distance);
    }

    private int cellAt(double distance) {
        int low = 0;
        int high = s.length - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (s[middle] <= distance) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private double headingIn(int cell, double distance) {
        double w = distance - s[cell];
        double ds = s[cell + 1] - s[cell];
        double change = ds > 0 ? (curvature[cell + 1] - curvature[cell]) / ds : 0;
        return heading[cell] + w * (curvature[cell] + 0.5 * w * change);
    }

    /** Where the path is at a distance (m) within its length. */
    public Place placeAt(double distance) {
        Check.inRange("distance (m)", distance, 0, s[s.length - 1]);
        int i = cellAt(distance);
        double ds = s[i + 1] - s[i];
        double part = ds > 0 ? (distance - s[i]) / ds : 0;
        double[] moved = moved(i, part);
        return new Place(x[i] + moved[0], y[i] + moved[1], z[i] + moved[2], headingIn(i, distance));
    }

    /** Number of stations: one more than there are cells. */
    public int count() {
        return s.length;
    }

    /** The track these stations lie on. */
    public Track track() {
        return track;
    }

    /** Distance along the road surface, m. */
    public double[] s() {
        return s.clone();
    }

    /** Curvature, 1/m, positive to the left. */
    public double[] curvature() {
        return curvature.clone();
    }

    /** Slope along the path, rad, positive uphill. */
    public double[] slope() {
        return slope.clone();
    }

    /** Bank, rad, positive lowers the left side. */
    public double[] bank() {
        return bank.clone();
    }

    /** Vertical curvature, 1/m, positive in a dip. */
    public double[] verticalCurvature() {
        return verticalCurvature.clone();
    }

    /** Grip factor of the surface. */
    public double[] grip() {
        return grip.clone();
    }

    /** Free width to the left, m. */
    public double[] widthLeft() {
        return widthLeft.clone();
    }

    /** Free width to the right, m. */
    public double[] widthRight() {
        return widthRight.clone();
    }

    /** Speed limit by rule, m/s; positive infinity where there is none. */
    public double[] speedLimit() {
        return speedLimit.clone();
    }

    /** Heading, rad, counter-clockwise from the x axis; continuous, so a closed left-hand circuit ends 2π higher. */
    public double[] heading() {
        return heading.clone();
    }

    /** East coordinate relative to the start, m. */
    public double[] x() {
        return x.clone();
    }

    /** North coordinate relative to the start, m. */
    public double[] y() {
        return y.clone();
    }

    /** Altitude, m. */
    public double[] z() {
        return z.clone();
    }

    /** The corners in driving order. */
    public List<Corner> corners() {
        return corners;
    }

    /** How far the path's end lies from its start on the plane, m. */
    public double planeGap() {
        int end = s.length - 1;
        return Math.hypot(x[end] - x[0], y[end] - y[0]);
    }

    /** How far the path's end lies above its start, m. */
    public double altitudeGap() {
        return z[s.length - 1] - z[0];
    }

    /** Sum of all rises along the path, m. */
    public double climb() {
        double sum = 0;
        for (int i = 0; i + 1 < z.length; i++) {
            sum += Math.max(0, z[i + 1] - z[i]);
        }
        return sum;
    }

    /** Total change of heading from start to end, rad: ±2π round a simple closed loop. */
    public double totalTurning() {
        return heading[s.length - 1] - heading[0];
    }

    /** Change of heading from the entry of one of these corners to its exit, rad, positive to the left. */
    public double turning(Corner corner) {
        double end = s[s.length - 1];
        double entry = headingAt(Math.max(0, Math.min(corner.entry(), end)));
        double exit = headingAt(Math.max(0, Math.min(corner.exit(), end)));
        return corner.entry() <= corner.exit() ? exit - entry : exit - entry + totalTurning();
    }
}
