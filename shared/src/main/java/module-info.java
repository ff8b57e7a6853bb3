/** What is read and written: documents, surveys, logs, results. */
// Commons CSV and GeographicLib have no descriptors; cli is not there yet when shared is compiled.
@SuppressWarnings({"requires-automatic", "module"})
module dev.lapwright.shared {
    requires transitive dev.lapwright.core;
    requires com.fasterxml.jackson.core;
    requires org.apache.commons.csv;
    requires GeographicLib.Java;
    requires java.xml;

    exports dev.lapwright.cache;
    exports dev.lapwright.documents;
    exports dev.lapwright.files;
    exports dev.lapwright.inspection;
    exports dev.lapwright.logs;
    exports dev.lapwright.notebook;
    exports dev.lapwright.report;
    exports dev.lapwright.results;
    exports dev.lapwright.results.car;
    exports dev.lapwright.results.circuit;
    exports dev.lapwright.results.event;
    exports dev.lapwright.results.plan;
    exports dev.lapwright.surveys;

    // What the page of the bench sends is read as strictly as documents are.
    exports dev.lapwright.text to
            dev.lapwright.cli;
}
