package dev.lapwright.fit;

/** Direction of a nuisance on the scale of its doubt: z is 0 as given and has a normal prior of standard deviation 1. */
interface DoubtedDirection extends Direction {
    /** Doubts this far off are no doubts any more: the document is wrong. */
    double MOST = 5;

    /** A quarter of a doubt is some 0.25 % of mass: above kinks and rounding, below the curvature. */
    double QUARTER = 0.25;

    /** Which. */
    FitNuisance nuisance();

    /** One standard deviation, in the nuisance's unit. */
    double doubt();

    /** The run it belongs to, counted from 0; negative for all. */
    int run();

    @Override
    default double step() {
        return QUARTER;
    }

    @Override
    default double kept() {
        return 2 * QUARTER;
    }
}
