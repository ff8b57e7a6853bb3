package dev.lapwright.track.survey;

import java.util.Arrays;

/**
 * The straights of a road, by the expected squares of its curvature at even steps: a hidden Markov chain of two states. A straight's
 * curvature is normal about 0 with a small deviation, which is found; a bend's with a large one. Lengths of both are geometric.
 * Its states' probabilities are those of the forward and backward passes (Rabiner, Proceedings of the IEEE 77, 1989, from memory).
 */
final class Straights {
    /** Mean length of straights and of bends, m: ours, usual for circuits. */
    private static final double LENGTH = 100;

    private static final double BEND_LENGTH = 80;
    /** Curvatures within this tell one thing once, m. */
    private static final double TELLS_ONCE = 15;
    /** Deviation of a bend's curvature over the root mean square of the circuit's. */
    private static final double BENDS = 2;
    /** Share of the circuit that is taken for straight at first. */
    private static final double FIRST_SHARE = 1.0 / 3;
    /** Least deviation of a straight's curvature, 1/m. */
    private static final double STRAIGHTEST = 1e-4;

    private static final double SURE = 50;

    private final boolean closed;
    private final double step;
    private final double bend;
    private double variance = Double.NaN;

    /**
     * @param step m
     * @param rootMeanSquare of the curvature, 1/m
     */
    Straights(boolean closed, double step, double rootMeanSquare) {
        this.closed = closed;
        this.step = step;
        bend = Math.pow(BENDS * rootMeanSquare, 2);
    }

    /**
     * Precision with which the curvature is 0, m²: that of a straight or a bend, by their probabilities.
     *
     * @param squares expected squares of the curvature, 1/m²; not modified
     */
    double[] precisions(double[] squares) {
        int n = squares.length;
        if (Double.isNaN(variance)) {
            variance = Math.max(
                    STRAIGHTEST * STRAIGHTEST, Arrays.stream(squares).sorted().toArray()[(int) (FIRST_SHARE * n)]);
        }
        double[] straight = probabilities(squares);
        double sum = 0;
        double count = 0;
        for (int i = 0; i < n; i++) {
            sum += straight[i] * squares[i];
            count += straight[i];
        }
        variance = Math.max(STRAIGHTEST * STRAIGHTEST, count > 0 ? sum / count : 0);
        double[] precision = new double[n];
        for (int i = 0; i < n; i++) {
            precision[i] = step / TELLS_ONCE * (straight[i] / variance + (1 - straight[i]) / bend);
        }
        return precision;
    }

    /** Probabilities of being straight; a closed line is gone round once before and once after. */
    private double[] probabilities(double[] squares) {
        int n = squares.length;
        double[] likelier = new double[n];
        for (int i = 0; i < n; i++) {
            double log = Math.log(bend / variance) + squares[i] * (1 / bend - 1 / variance);
            likelier[i] = Math.exp(Math.max(-SURE, Math.min(SURE, 0.5 * step / TELLS_ONCE * log)));
        }
        double ends = Math.min(0.5, step / LENGTH);
        double begins = Math.min(0.5, step / BEND_LENGTH);
        int rounds = closed ? 3 : 1;
        int first = closed ? n : 0;
        double[] before = new double[rounds * n];
        double p = 0.5;
        for (int i = 0; i < before.length; i++) {
            double q = i == 0 ? p : p * (1 - ends) + (1 - p) * begins;
            p = likelier[i % n] * q / (likelier[i % n] * q + 1 - q);
            before[i] = p;
        }
        double[] straight = new double[n];
        double after = 1;
        for (int i = before.length - 1; i >= first; i--) {
            if (i < first + n) {
                straight[i - first] = before[i] * after / (before[i] * after + 1 - before[i]);
            }
            double here = likelier[i % n] * after;
            after = ((1 - ends) * here + ends) / (begins * here + 1 - begins);
        }
        return straight;
    }
}
