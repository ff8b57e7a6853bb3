package dev.lapwright.slip;

/**
 * Normalised force of a tyre over slip: g(ρ) = sin(1.5 atan(√3 ρ)) with ρ slip over the slip of the peak, g(1) = 1. It is the curve of which the fast
 * model takes drag of cornering, fall of stiffness and the peaks of two wheels at one slip angle. Source: Pacejka, Tire and Vehicle
 * Dynamics, chapter 4 (similarity method, formula with C = 1.5 and E = 0), from memory.
 *
 * <p>With θ = atan(√3 ρ) the sine of 1.5 θ is sin θ cos(θ/2) + cos θ sin(θ/2), roots of ρ² alone: no angle is taken.
 */
final class SlipCurve {
    /** Slip of the peak over that at which the first stiffness alone would give it. */
    static final double SHAPE = 1.5 * Math.sqrt(3);

    private static final double ROOT = Math.sqrt(3);
    /** ρ² below which the series stands, whose next term is some 30 times ρ². */
    private static final double SMALL = 1e-8;
    /** Twice the third coefficient of the series of g: g = SHAPE ρ + THIRD/2 ρ³. */
    private static final double THIRD = -2 * 1.0625 * 3 * Math.sqrt(3);

    private SlipCurve() {}

    /** g(ρ)/ρ at ρ². */
    static double chord(double square) {
        double c = 1 / Math.sqrt(1 + 3 * square);
        double half = Math.sqrt(0.5 * (1 + c));
        return ROOT * c * (half + 0.5 * c / half);
    }

    /** (g'(ρ) - g(ρ)/ρ)/ρ² at ρ²: twice the derivative of {@link #chord} by ρ². */
    static double chordRate(double square) {
        if (square < SMALL) {
            return THIRD;
        }
        double c = 1 / Math.sqrt(1 + 3 * square);
        double half = Math.sqrt(0.5 * (1 + c));
        double rise = SHAPE * c * c * (c * half - 0.5 * (1 - c * c) / half);
        return (rise - ROOT * c * (half + 0.5 * c / half)) / square;
    }
}
