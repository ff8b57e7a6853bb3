package dev.lapwright.charts.plot;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.axis.ValueAxis;

/** Something in a chart with labels of its own, which others keep clear of. */
public interface OwnLabels {
    /** Where its labels lie in an area of the two axes. */
    List<PlacedText> labels(Graphics2D g2, Rectangle2D area, ValueAxis domain, ValueAxis range);
}
