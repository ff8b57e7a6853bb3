package dev.lapwright.charts.setup;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;

/**
 * Chart of which axle reaches its limit first in entry, lift-off, middle and exit of each corner: to the right the front
 * (understeer), to the left the rear (oversteer); a bar's length is the lateral acceleration that the other axle has in
 * reserve (g). All phases have one scale.
 */
public final class BalancePhases {
    /** Least reach of the axes, g. */
    private static final double LEAST = 0.02;
    /** Room beside the bars for their labels, as a share of the longest. */
    private static final double ROOM = 0.55;

    private record Phase(String name, ToDoubleFunction<BalanceBars> reserve) {}

    private static final List<Phase> PHASES = List.of(
            new Phase("Entry", BalanceBars::entry),
            new Phase("Lift-off", BalanceBars::liftOff),
            new Phase("Middle", BalanceBars::middle),
            new Phase("Exit", BalanceBars::exit));

    private BalancePhases() {}

    /** Pages of less than this have the panels beneath each other, px. */
    public static final int NARROW_BELOW = RowPanels.NARROW_BELOW;

    /** The size it is designed for, with so many corners. */
    public static ImageSize size(int corners) {
        return RowPanels.size(corners);
    }

    /** Its height on a narrow page, where the panels stand beneath each other, px. */
    public static int narrowHeight(int corners) {
        return RowPanels.narrowHeight(corners, PHASES.size());
    }

    /**
     * The chart.
     *
     * @param subject what has been looked at, such as {@code Talvex GT at Castelvane}
     * @param all corners in driving order; of more than 300 the first are drawn, and the chart says so
     */
    public static JFreeChart of(String subject, List<BalanceBars> all, ChartStyle style) {
        if (all.isEmpty()) {
            return ChartLayout.message("Balance at the limit: " + subject, "there are no corners to show", style);
        }
        List<BalanceBars> corners = all.subList(0, Math.min(all.size(), RowPanels.MOST));
        RowPanels panels =
                new RowPanels(corners.stream().map(BalanceBars::corner).toList(), style);
        double reach = LEAST;
        for (BalanceBars corner : corners) {
            for (Phase phase : PHASES) {
                double reserve = g(phase, corner);
                reach = Double.isNaN(reserve) ? reach : Math.max(reach, Math.abs(reserve));
            }
        }
        for (Phase phase : PHASES) {
            UnitAxis axis = new UnitAxis("Reserve (g)", style, 0, NumberText::signed).withCloseTicks();
            axis.setRange(-(1 + ROOM) * reach, (1 + ROOM) * reach);
            panels.add(axis, bars(phase, corners, style), 1);
        }
        JFreeChart chart = ChartLayout.chart(
                "Balance at the limit: " + subject,
                ChartLayout.facts(
                        "bars: lateral acceleration that the other axle has in reserve when the first reaches its limit",
                        "\u2013 no such phase"
                                + (corners.size() < all.size()
                                        ? ", the first " + corners.size() + " of " + all.size() + " corners"
                                        : "")),
                panels.plot(),
                style);
        chart.addLegend(ChartLayout.legend(() -> legend(style), style));
        return chart;
    }

    private static double g(Phase phase, BalanceBars corner) {
        return phase.reserve.applyAsDouble(corner) / StandardAtmosphere.GRAVITY;
    }

    private static RowBars bars(Phase phase, List<BalanceBars> corners, ChartStyle style) {
        List<RowBars.Bar> bars = new ArrayList<>();
        for (int row = 0; row < corners.size(); row++) {
            double reserve = g(phase, corners.get(row));
            boolean front = reserve >= 0;
            String text =
                    Double.isNaN(reserve) ? "\u2013" : NumberText.signed(2).format(reserve);
            bars.add(new RowBars.Bar(row, reserve, 0.25, 0.75, style.colour(front ? 2 : 1), front, text));
        }
        RowBars.Heading heading = new RowBars.Heading(phase.name, "oversteer", "understeer");
        return new RowBars(heading, bars, corners.size(), Double.NaN, style);
    }

    private static LegendItemCollection legend(ChartStyle style) {
        LegendItemCollection items = new LegendItemCollection();
        items.add(RankedWorth.item("front at its limit first: understeer", style.colour(2), true, style));
        items.add(RankedWorth.item("rear at its limit first: oversteer", style.colour(1), false, style));
        return items;
    }

    /**
     * Which axle reaches its limit first in each phase of a corner, and by how much, as {@link BalancePhases} draws it: the
     * lateral acceleration that the other axle has in reserve, m/s². Positive: the front is at its limit first (understeer);
     * negative: the rear is (oversteer); NaN where the corner has no such phase.
     *
     * @param corner label, such as {@code T3 Needle}; not blank
     * @param entry braking while turning, m/s²
     * @param liftOff off the throttle, m/s²
     * @param middle steady, m/s²
     * @param exit under power, m/s²
     */
    public record BalanceBars(String corner, double entry, double liftOff, double middle, double exit) {
        public BalanceBars {
            if (corner.isBlank()) {
                throw new InvalidValueException("corner", "its label is blank", "give each corner its label");
            }
            check(corner + " entry", entry);
            check(corner + " lift-off", liftOff);
            check(corner + " middle", middle);
            check(corner + " exit", exit);
        }

        private static void check(String name, double reserve) {
            if (!Double.isNaN(reserve)) {
                Check.finite(name, reserve);
            }
        }
    }
}
