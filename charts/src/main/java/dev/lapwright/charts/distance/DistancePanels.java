package dev.lapwright.charts.distance;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.PagedPanels;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.track.Corner;
import dev.lapwright.track.Stations;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.Marker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleInsets;

/** Panels above each other over one axis of distance, with corners shaded, sectors ruled off and a strip that names both. */
public final class DistancePanels {
    private static final int STRIP_WEIGHT = 62;

    private final Stations stations;
    private final ChartStyle style;
    private final PagedPanels panels;

    /** @param sectorTimes to write beside each sector's number, s; empty for the numbers alone */
    public DistancePanels(Stations stations, double[] sectorTimes, ChartStyle style) {
        this.stations = stations;
        this.style = style;
        UnitAxis distance = new UnitAxis("Distance (m)", style, 1);
        double[] s = stations.s();
        distance.setRange(s[0], s[s.length - 1]);
        panels = new PagedPanels(distance, stations.corners().size());
        panels.setGap(10);
        panels.setInsets(RectangleInsets.ZERO_INSETS);
        panels.setOutlineVisible(false);
        panels.add(strip(sectorTimes), STRIP_WEIGHT);
    }

    private XYPlot strip(double[] sectorTimes) {
        UnitAxis none = new UnitAxis("", style, 0);
        none.setRange(0, 1);
        none.setVisible(false);
        XYPlot strip = new XYPlot(null, null, none, null);
        ChartLayout.style(strip, style);
        strip.setDomainGridlinesVisible(false);
        strip.setRangeGridlinesVisible(false);
        strip.addAnnotation(new CornerStrip(stations.corners(), sectors(sectorTimes), style));
        return strip;
    }

    private List<CornerStrip.Sector> sectors(double[] times) {
        double[] ends = stations.track().sectorEnds();
        List<CornerStrip.Sector> sectors = new ArrayList<>();
        for (int i = 0; i < ends.length; i++) {
            String name = "Sector " + (i + 1);
            List<String> texts = times.length > 0
                    ? List.of(name + ": " + NumberText.lapTime(times[i]), name, "S" + (i + 1))
                    : List.of(name, "S" + (i + 1));
            sectors.add(new CornerStrip.Sector(i == 0 ? 0 : ends[i - 1], ends[i], texts));
        }
        return sectors;
    }

    /** Adds a panel below the others; {@code weight} is its share of the height, the strip's being 62. */
    public void add(XYPlot panel, int weight) {
        ChartLayout.style(panel, style);
        panel.setDomainGridlinesVisible(false);
        markCorners(panel);
        markSectors(panel);
        panels.add(panel, weight);
    }

    private void markCorners(XYPlot panel) {
        double[] s = stations.s();
        for (Corner corner : stations.corners()) {
            if (corner.entry() <= corner.exit()) {
                panel.addDomainMarker(band(corner.entry(), corner.exit()), Layer.BACKGROUND);
            } else {
                panel.addDomainMarker(band(corner.entry(), s[s.length - 1]), Layer.BACKGROUND);
                panel.addDomainMarker(band(s[0], corner.exit()), Layer.BACKGROUND);
            }
        }
    }

    private Marker band(double from, double to) {
        IntervalMarker band = new IntervalMarker(from, to, style.palette().band());
        band.setOutlinePaint(null);
        band.setAlpha(1);
        return band;
    }

    private void markSectors(XYPlot panel) {
        double[] ends = stations.track().sectorEnds();
        for (int i = 0; i + 1 < ends.length; i++) {
            ValueMarker line = new ValueMarker(ends[i], style.palette().muted(), ChartStyle.dashed(1));
            line.setAlpha(1);
            panel.addDomainMarker(line, Layer.BACKGROUND);
        }
    }

    public PagedPanels plot() {
        return panels;
    }
}
