package dev.lapwright.documents;

/**
 * Surface of a road, which segments and stations of a circuit share: slope, bank, grip and width, which hold until they are changed, and a
 * speed limit, which holds where it stands.
 *
 * @param slope rad
 * @param bank rad
 * @param grip relative to the reference surface
 * @param widthLeft m
 * @param widthRight m
 * @param speedLimit m/s; infinite for none
 */
record RoadSurface(double slope, double bank, double grip, double widthLeft, double widthRight, double speedLimit) {
    /** What holds before anything is said. */
    static final RoadSurface FIRST = new RoadSurface(0, 0, 1, 5, 5, Double.POSITIVE_INFINITY);

    /** Reads the next surface; what is left out stays. NaN stands for faults reported. */
    RoadSurface next(ObjectReader fields) {
        double newSlope = fields.optional(RoadFields.SLOPE, slope);
        double newBank = fields.optional(RoadFields.BANK, bank);
        double newGrip = fields.optional(RoadFields.GRIP, grip);
        double both = fields.optional(RoadFields.WIDTH, Double.NaN);
        double left = fields.optional(RoadFields.WIDTH_LEFT, widthLeft);
        double right = fields.optional(RoadFields.WIDTH_RIGHT, widthRight);
        if (fields.has(RoadFields.WIDTH)) {
            for (NumberField side : new NumberField[] {RoadFields.WIDTH_LEFT, RoadFields.WIDTH_RIGHT}) {
                if (fields.has(side)) {
                    fields.form(
                            side.name(),
                            "the width is already given by " + RoadFields.WIDTH.name(),
                            "give widthM alone, or widthLeftM and widthRightM");
                }
            }
            left = both / 2;
            right = both / 2;
        }
        double limit = fields.optional(RoadFields.SPEED_LIMIT, Double.POSITIVE_INFINITY);
        return new RoadSurface(newSlope, newBank, newGrip, left, right, limit);
    }

    /** False if a fault has left something undefined. */
    boolean isComplete() {
        return !Double.isNaN(slope + bank + grip + widthLeft + widthRight) && !Double.isNaN(speedLimit);
    }
}
