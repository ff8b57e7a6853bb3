/**
 * Charts of results, saved as SVG and PNG. A chart is a {@code JFreeChart}, to be altered at will before it is saved.
 */
// JFreeChart names its module in its manifest, without a descriptor.
@SuppressWarnings({"requires-automatic", "requires-transitive-automatic"})
module dev.lapwright.charts {
    requires transitive dev.lapwright.core;
    requires transitive java.desktop;
    requires transitive org.jfree.jfreechart;
    requires org.jfree.svg;

    exports dev.lapwright.charts;
    exports dev.lapwright.charts.gearing;
    exports dev.lapwright.charts.lap;
    exports dev.lapwright.charts.log;
    exports dev.lapwright.charts.ride;
    exports dev.lapwright.charts.setup;
    exports dev.lapwright.charts.sweep;
    exports dev.lapwright.charts.track;
}
