package dev.lapwright.line;

import dev.lapwright.fault.Check;

/**
 * Settings of a line search.
 *
 * @param marginLeft free road kept between the car's left side and the road's left edge, m, where the road has no limit of its own
 * @param marginRight the same on the right
 * @param spacing greatest distance between nodes along the road, m
 */
public record LineChoices(double marginLeft, double marginRight, double spacing) {
    /** A quarter of a metre of margin, nodes every 2 m. */
    public static final LineChoices DEFAULT = new LineChoices(0.25, 2);

    public LineChoices {
        Check.inRange("margin (m)", marginLeft, 0, 20);
        Check.inRange("margin (m)", marginRight, 0, 20);
        Check.inRange("node spacing (m)", spacing, 0.5, 20);
    }

    /** The same margin on both sides, m. */
    public LineChoices(double margin, double spacing) {
        this(margin, margin, spacing);
    }

    /** Whether both sides have the same margin. */
    public boolean isEven() {
        return marginLeft == marginRight;
    }

    /** The same with another margin on both sides, m. */
    public LineChoices withMargin(double metres) {
        return new LineChoices(metres, spacing);
    }

    /** The same with margins of their own, m. */
    public LineChoices withMargins(double left, double right) {
        return new LineChoices(left, right, spacing);
    }
}
