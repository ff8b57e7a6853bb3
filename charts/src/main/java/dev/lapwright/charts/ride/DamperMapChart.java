package dev.lapwright.charts.ride;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.ColourScale;
import dev.lapwright.charts.plot.HeatMap;
import dev.lapwright.charts.plot.LabelSpace;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.OwnLabels;
import dev.lapwright.charts.plot.PlacedText;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.study.ride.DamperMapResult;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;
import org.jfree.data.xy.XYDataset;

/**
 * A measure of a pass over a kerb as a map of fast bump (across) and fast rebound (up): coloured cells, lines of equal value,
 * the best pair ringed, the car's own pair as a diamond, and the lines of rebound once and twice as strong as bump.
 */
public final class DamperMapChart {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.MAP;

    private DamperMapChart() {}

    /**
     * The chart.
     *
     * @param subject what was driven over what, such as {@code Talvex GT, front, half-sine of 40 mm on 1 m at 100 km/h}
     */
    public static JFreeChart of(String subject, DamperMapResult map, RideMeasure measure, ChartStyle style) {
        double[] x = map.bump();
        double[] y = map.rebound();
        double[][] z = new double[y.length][x.length];
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int j = 0; j < y.length; j++) {
            for (int i = 0; i < x.length; i++) {
                z[j][i] = measure.of(map.at(i, j));
                low = Math.min(low, z[j][i]);
                high = Math.max(high, z[j][i]);
            }
        }
        // Light is good, as on the other maps.
        ColourScale ramp = new ColourScale(low, high, style.palette(), true);
        UnitAxis across = new UnitAxis("Fast bump (N s/m at the damper)", style, 1);
        across.setRange(HeatMap.edge(x, 0, -1), HeatMap.edge(x, x.length - 1, 1));
        UnitAxis up = new UnitAxis("Fast rebound (N s/m at the damper)", style, 1);
        up.setRange(HeatMap.edge(y, 0, -1), HeatMap.edge(y, y.length - 1, 1));
        DamperMapResult.Region best = map.best(measure);
        XYPlot plot = new XYPlot(
                SeriesRenderers.single("best", best.bump(), best.rebound()),
                across,
                up,
                SeriesRenderers.fastest(style, SeriesRenderers.RING));
        plot.setDataset(
                1,
                SeriesRenderers.single(
                        "own", map.car().damper().fastBump(), map.car().damper().fastRebound()));
        plot.setRenderer(1, SeriesRenderers.baselineOnMap(style));
        ChartLayout.style(plot, style);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinesVisible(false);
        double own = measure.of(map.own());
        HeatMap cells = new HeatMap(x, y, z, ramp, own, "as it is", NumberText::fixed, style)
                .clearOf(new double[][] {{best.bump()}, {best.rebound()}})
                .clearOf(new double[][] {
                    {map.car().damper().fastBump()}, {map.car().damper().fastRebound()}
                });
        plot.getRenderer().addAnnotation(cells, Layer.BACKGROUND);
        addRatios(plot, cells, across, up, style);
        String facts = ChartLayout.facts(
                "as it is (diamond) " + text(own, measure),
                "best (ring) " + text(measure.of(best.pass()), measure) + " at bump " + whole(best.bump())
                        + ", rebound " + whole(best.rebound()),
                "lighter is better");
        JFreeChart chart = ChartLayout.chart(capital(measure.label()) + ": " + subject, facts, plot, style);
        UnitAxis scale = new UnitAxis(capital(measure.label()) + " (" + measure.unit() + ")", style, 0);
        chart.addSubtitle(ChartLayout.colourScale(ramp, scale, style));
        return chart;
    }

    private static void addRatios(XYPlot plot, HeatMap cells, UnitAxis across, UnitAxis up, ChartStyle style) {
        DefaultXYDataset lines = new DefaultXYDataset();
        List<LineNote> notes = new ArrayList<>();
        addRatio(notes, lines, "rebound = bump", bump -> bump, 1, across, up);
        addRatio(notes, lines, "rebound = 2 bump", bump -> 2 * bump, 2, across, up);
        for (int i = 0; i < lines.getSeriesCount(); i++) {
            cells.clearOf(new double[][] {
                {lines.getXValue(i, 0), lines.getXValue(i, 1)}, {lines.getYValue(i, 0), lines.getYValue(i, 1)}
            });
        }
        LineNotes names = new LineNotes(notes, List.of(place(plot.getDataset(0)), place(plot.getDataset(1))), style);
        cells.clearOf(names);
        plot.addAnnotation(names);
        // Light dashes on a dark line: seen on every colour of the map, and on neither side exchanged with the paper.
        XYLineAndShapeRenderer dashed = SeriesRenderers.of(2, style);
        XYLineAndShapeRenderer under = SeriesRenderers.of(2, style);
        for (int i = 0; i < 2; i++) {
            dashed.setSeriesPaint(i, HeatMap.ON_DARK);
            dashed.setSeriesStroke(i, ChartStyle.dashed(1.5));
            under.setSeriesPaint(i, HeatMap.ON_LIGHT);
            under.setSeriesStroke(i, ChartStyle.solid(2.5));
        }
        plot.setDataset(3, lines);
        plot.setRenderer(3, under);
        plot.setDataset(2, lines);
        plot.setRenderer(2, dashed);
    }

    private static double[] place(XYDataset mark) {
        return new double[] {mark.getXValue(0, 0), mark.getYValue(0, 0)};
    }

    private static void addRatio(
            List<LineNote> notes,
            DefaultXYDataset lines,
            String name,
            DoubleUnaryOperator rebound,
            double ratio,
            UnitAxis across,
            UnitAxis up) {
        double from = Math.max(across.getLowerBound(), up.getLowerBound() / ratio);
        double to = Math.min(across.getUpperBound(), up.getUpperBound() / ratio);
        if (!(to > from)) {
            return;
        }
        lines.addSeries(name, new double[][] {{from, to}, {rebound.applyAsDouble(from), rebound.applyAsDouble(to)}});
        notes.add(new LineNote(name, from, to, rebound));
    }

    /** The name of a line, and from where to where it runs across. */
    private record LineNote(String name, double from, double to, DoubleUnaryOperator up) {}

    /** Names upon lines, as near their upper ends as there is room for whole ones. */
    private static final class LineNotes extends AbstractXYAnnotation implements OwnLabels {
        private static final long serialVersionUID = 1L;
        private static final double[] PLACES = {0.93, 0.85, 0.75, 0.65, 0.58, 0.5, 0.42, 0.35, 0.28, 0.2};
        /** Half the width of a ring or diamond, px. */
        private static final double MARK = 10;

        private final transient List<LineNote> notes;
        private final transient List<double[]> marks;
        private final ChartStyle style;

        /** @param marks places of ring and diamond, x and y, which are kept free */
        LineNotes(List<LineNote> notes, List<double[]> marks, ChartStyle style) {
            this.notes = List.copyOf(notes);
            this.marks = List.copyOf(marks);
            this.style = style;
        }

        @Override
        public List<PlacedText> labels(Graphics2D g2, Rectangle2D area, ValueAxis across, ValueAxis up) {
            LabelSpace space = new LabelSpace();
            for (double[] mark : marks) {
                double x = across.valueToJava2D(mark[0], area, RectangleEdge.BOTTOM);
                double y = up.valueToJava2D(mark[1], area, RectangleEdge.LEFT);
                space.take(new Rectangle2D.Double(x - MARK, y - MARK, 2 * MARK, 2 * MARK));
            }
            List<PlacedText> placed = new ArrayList<>();
            for (LineNote note : notes) {
                for (double place : PLACES) {
                    double at = note.from + place * (note.to - note.from);
                    PlacedText text = new PlacedText(
                            note.name,
                            across.valueToJava2D(at, area, RectangleEdge.BOTTOM),
                            up.valueToJava2D(note.up.applyAsDouble(at), area, RectangleEdge.LEFT),
                            TextAnchor.CENTER,
                            style.small());
                    Rectangle2D box = text.box(g2);
                    if (area.contains(box) && space.isFree(box, 2)) {
                        space.take(box);
                        placed.add(text);
                        break;
                    }
                }
            }
            return placed;
        }

        @Override
        public void draw(
                Graphics2D g2,
                XYPlot plot,
                Rectangle2D area,
                ValueAxis across,
                ValueAxis up,
                int rendererIndex,
                PlotRenderingInfo info) {
            for (PlacedText text : labels(g2, area, across, up)) {
                text.drawOn(g2, style.palette().ink(), style.palette().background());
            }
        }
    }

    private static String text(double value, RideMeasure measure) {
        return NumberText.fixed(1).format(value) + " " + measure.unit();
    }

    private static String whole(double rate) {
        return NumberText.fixed(0).format(rate);
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
