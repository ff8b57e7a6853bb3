package dev.lapwright.charts;

import java.awt.Stroke;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;

/** How driven lines and the road they lie on are told apart, on the map as in the panel beneath it. */
final class LineStrokes {
    /** Edges of the road and its centre line, px. */
    static final double THIN = 1;

    private LineStrokes() {}

    /** A renderer of driven lines. */
    static XYLineAndShapeRenderer of(int count, ChartStyle style) {
        return Lines.of(count, style);
    }

    /** The road's own path: fine dashes. */
    static Stroke centreLine() {
        return ChartStyle.dashed(THIN);
    }

    /** A renderer of the centre line, the left edge and the right edge; the last is not in the legend. */
    static XYLineAndShapeRenderer road(ChartStyle style) {
        XYLineAndShapeRenderer road = Lines.of(3, style);
        road.setSeriesPaint(0, style.palette().muted());
        road.setSeriesStroke(0, centreLine());
        for (int edge = 1; edge <= 2; edge++) {
            road.setSeriesPaint(edge, style.palette().ink());
            road.setSeriesStroke(edge, ChartStyle.solid(THIN));
        }
        road.setSeriesVisibleInLegend(2, false);
        return road;
    }
}
