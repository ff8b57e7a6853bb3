package dev.lapwright.track;

import java.util.List;

/**
 * A track sampled at the stations of the solver, as columns of one length. Cell i runs from station i to station i + 1; on
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
        corners = CornerFinder.find(track, s, curvature);
    }

    /** Heading by the exact integral of linear curvature; plane position by Gauss-Legendre quadrature in each cell. */
    private void integratePath() {
        final double reach = Math.sqrt(0.6);
        heading[0] = track.startHeading();
        z[0] = track.startAltitude();
        for (int i = 0; i + 1 < s.length; i++) {
            double ds = s[i + 1] - s[i];
            double dx = 0;
            double dy = 0;
            double dz = 0;
            for (int k = -1; k <= 1; k++) {
                double w = 0.5 * (1 + k * reach);
                double weight = k == 0 ? 8.0 / 18 : 5.0 / 18;
                double psi = heading[i] + ds * w * (curvature[i] + 0.5 * w * (curvature[i + 1] - curvature[i]));
                double theta = slope[i] + w * (slope[i + 1] - slope[i]);
                dx += weight * Math.cos(theta) * Math.cos(psi);
                dy += weight * Math.cos(theta) * Math.sin(psi);
                dz += weight * Math.sin(theta);
            }
            heading[i + 1] = heading[i] + 0.5 * ds * (curvature[i] + curvature[i + 1]);
            x[i + 1] = x[i] + ds * dx;
            y[i + 1] = y[i] + ds * dy;
            z[i + 1] = z[i] + ds * dz;
        }
    }

    double headingAt(double distance) {
        int i = 0;
        while (i + 2 < s.length && s[i + 1] <= distance) {
            i++;
        }
        double w = distance - s[i];
        double ds = s[i + 1] - s[i];
        double change = ds > 0 ? (curvature[i + 1] - curvature[i]) / ds : 0;
        return heading[i] + w * (curvature[i] + 0.5 * w * change);
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
