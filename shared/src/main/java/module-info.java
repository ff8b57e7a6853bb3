/** The documents: read, checked and written. */
@SuppressWarnings("requires-automatic") // Commons CSV and GeographicLib have no descriptors.
module dev.lapwright.shared {
    requires transitive dev.lapwright.core;
    requires com.fasterxml.jackson.core;
    requires org.apache.commons.csv;
    requires GeographicLib.Java;
    requires io.jenetics.jpx;

    exports dev.lapwright.documents;
    exports dev.lapwright.report;
    exports dev.lapwright.results;
}
