package dev.lapwright.charts;

import java.awt.Color;

/**
 * How colours look to people with and without all kinds of cones, for tests.
 *
 * <p>sRGB transfer function and primaries: IEC 61966-2-1. Lightness and distance: CIE 1976 L*a*b*, white D65. Loss of a kind
 * of cone: F. Viénot, H. Brettel and J. D. Mollon, "Digital video colourmaps for checking the legibility of displays by
 * dichromats", Color Research and Application 24 (1999) 243-252. All matrices here are from memory; the test class checks
 * them against known values.
 */
public final class ColourVision {
    private static final double[][] RGB_TO_XYZ = {
        {0.4124564, 0.3575761, 0.1804375}, {0.2126729, 0.7151522, 0.0721750}, {0.0193339, 0.1191920, 0.9503041}
    };
    private static final double[][] RGB_TO_LMS = {
        {17.8824, 43.5161, 4.11935}, {3.45565, 27.1554, 3.86714}, {0.0299566, 0.184309, 1.46709}
    };
    private static final double[][] NO_LONG = {{0, 2.02344, -2.52581}, {0, 1, 0}, {0, 0, 1}};
    private static final double[][] NO_MEDIUM = {{1, 0, 0}, {0.494207, 0, 1.24827}, {0, 0, 1}};

    public enum Kind {
        ALL_CONES,
        PROTANOPIA,
        DEUTERANOPIA
    }

    private ColourVision() {}

    /** L*, a*, b* of a colour as somebody sees it. */
    public static double[] lab(Color colour, Kind kind) {
        double[] rgb = linear(colour);
        if (kind != Kind.ALL_CONES) {
            double[] lms = times(RGB_TO_LMS, rgb);
            double[] seen = times(kind == Kind.PROTANOPIA ? NO_LONG : NO_MEDIUM, lms);
            rgb = solve(RGB_TO_LMS, seen);
            for (int i = 0; i < 3; i++) {
                rgb[i] = Math.max(0, Math.min(1, rgb[i]));
            }
        }
        double[] xyz = times(RGB_TO_XYZ, rgb);
        double[] white = times(RGB_TO_XYZ, new double[] {1, 1, 1});
        double fx = f(xyz[0] / white[0]);
        double fy = f(xyz[1] / white[1]);
        double fz = f(xyz[2] / white[2]);
        return new double[] {116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)};
    }

    public static double distance(Color a, Color b, Kind kind) {
        double[] p = lab(a, kind);
        double[] q = lab(b, kind);
        return Math.sqrt(Math.pow(p[0] - q[0], 2) + Math.pow(p[1] - q[1], 2) + Math.pow(p[2] - q[2], 2));
    }

    public static double lightness(Color colour) {
        return lab(colour, Kind.ALL_CONES)[0];
    }

    /** Contrast ratio as in WCAG 2.1: (lighter + 0.05) / (darker + 0.05) of the relative luminances. */
    public static double contrast(Color a, Color b) {
        double p = times(RGB_TO_XYZ, linear(a))[1] + 0.05;
        double q = times(RGB_TO_XYZ, linear(b))[1] + 0.05;
        return Math.max(p, q) / Math.min(p, q);
    }

    private static double[] linear(Color colour) {
        double[] rgb = {colour.getRed() / 255.0, colour.getGreen() / 255.0, colour.getBlue() / 255.0};
        for (int i = 0; i < 3; i++) {
            rgb[i] = rgb[i] <= 0.04045 ? rgb[i] / 12.92 : Math.pow((rgb[i] + 0.055) / 1.055, 2.4);
        }
        return rgb;
    }

    private static double f(double t) {
        double small = 6.0 / 29;
        return t > small * small * small ? Math.cbrt(t) : t / (3 * small * small) + 4.0 / 29;
    }

    private static double[] times(double[][] m, double[] v) {
        double[] product = new double[3];
        for (int i = 0; i < 3; i++) {
            product[i] = m[i][0] * v[0] + m[i][1] * v[1] + m[i][2] * v[2];
        }
        return product;
    }

    /** By Cramer's rule. */
    private static double[] solve(double[][] m, double[] v) {
        double[] solution = new double[3];
        for (int k = 0; k < 3; k++) {
            double[][] replaced = {m[0].clone(), m[1].clone(), m[2].clone()};
            for (int i = 0; i < 3; i++) {
                replaced[i][k] = v[i];
            }
            solution[k] = determinant(replaced) / determinant(m);
        }
        return solution;
    }

    private static double determinant(double[][] m) {
        return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
                - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
                + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
    }
}
