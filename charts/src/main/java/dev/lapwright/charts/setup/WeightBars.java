package dev.lapwright.charts.setup;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.study.weight.WeightResult;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;

/**
 * Bars of what a kilogram costs in each corner and on each straight, in driving order: time for a kilogram (ms/kg), and beside it the
 * percent of the time there that a percent of mass costs.
 */
public final class WeightBars {
    private static final double MS = 1000;

    /** Least reach of the axes, ms/kg and percent per percent: a smaller effect is drawn small. */
    private static final double LEAST = 0.1;

    /** Room beside the bars for their labels, as a share of their reach; and for the heading where there are none. */
    private static final double ROOM = 0.22;

    private static final double LEAST_ROOM = 0.12;

    private WeightBars() {}

    /** Pages of less than this have the panels beneath each other, px. */
    public static final int NARROW_BELOW = RowPanels.NARROW_BELOW;

    /** The size it is designed for, with so many parts of the lap. */
    public static ImageSize size(int parts) {
        return RowPanels.size(parts);
    }

    /** Its height on a narrow page, where the panels stand beneath each other, px. */
    public static int narrowHeight(int parts) {
        return RowPanels.narrowHeight(parts, 2);
    }

    /**
     * The chart.
     *
     * @param subject what has been looked at, such as {@code Talvex GT at Castelvane}
     */
    public static JFreeChart of(String subject, WeightResult result, ChartStyle style) {
        List<WeightResult.Place> places = result.places();
        RowPanels panels =
                new RowPanels(places.stream().map(WeightResult.Place::label).toList(), style);
        add(panels, "A kilogram more", "Change of time there (ms/kg)", places, place -> MS * place.perKg(), style);
        add(
                panels,
                "By the time spent there",
                "Percent of that time for a percent of mass (%/%)",
                places,
                place -> place.perKg() * result.mass() / place.time(),
                style);
        JFreeChart chart = ChartLayout.chart(
                "What a kilogram costs: " + subject,
                ChartLayout.facts(
                        "on the lap " + text(result.atCentre()) + " ms/kg at the centre of gravity",
                        text(result.overFront()) + " over the front axle",
                        text(result.overRear()) + " over the rear axle",
                        "minus is faster"),
                panels.plot(),
                style);
        chart.addLegend(ChartLayout.legend(() -> legend(style), style));
        return chart;
    }

    private static String text(WeightResult.Worth worth) {
        return NumberText.signed(2).format(MS * worth.perKg());
    }

    private static void add(
            RowPanels panels,
            String title,
            String label,
            List<WeightResult.Place> places,
            ToDoubleFunction<WeightResult.Place> value,
            ChartStyle style) {
        double faster = 0;
        double slower = LEAST;
        List<RowBars.Bar> bars = new ArrayList<>();
        for (WeightResult.Place place : places) {
            double change = value.applyAsDouble(place);
            faster = Math.max(faster, -change);
            slower = Math.max(slower, change);
            boolean corner = place.corner().isPresent();
            bars.add(new RowBars.Bar(
                    bars.size(),
                    change,
                    0.22,
                    0.78,
                    style.colour(corner ? 2 : 1),
                    corner,
                    NumberText.signed(2).format(change)));
        }
        double reach = faster + slower;
        UnitAxis axis = new UnitAxis(label, style, 0, NumberText::signed).withCloseTicks();
        axis.setRange(-faster - (faster > 0 ? ROOM : LEAST_ROOM) * reach, slower + ROOM * reach);
        RowBars.Heading heading = new RowBars.Heading(title, "faster", "slower");
        panels.add(axis, new RowBars(heading, bars, places.size(), Double.NaN, style), 1);
    }

    private static LegendItemCollection legend(ChartStyle style) {
        LegendItemCollection items = new LegendItemCollection();
        items.add(RankedWorth.item("corner", style.colour(2), true, style));
        items.add(RankedWorth.item("between corners", style.colour(1), false, style));
        return items;
    }
}
