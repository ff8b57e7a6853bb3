package dev.lapwright.line;

import dev.lapwright.fault.Check;

/**
 * Settings of a line search.
 *
 * @param margin free road kept between the car's side and the road's edge, m
 * @param spacing greatest distance between nodes along the road, m
 */
public record LineChoices(double margin, double spacing) {
    /** A quarter of a metre of margin, nodes every 2 m. */
    public static final LineChoices DEFAULT = new LineChoices(0.25, 2);

    public LineChoices {
        Check.inRange("margin (m)", margin, 0, 20);
        Check.inRange("node spacing (m)", spacing, 0.5, 20);
    }

    /** The same with another margin, m. */
    public LineChoices withMargin(double metres) {
        return new LineChoices(metres, spacing);
    }
}
