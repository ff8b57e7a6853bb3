/** The {@code lapwright} command. Exports nothing: who wants to call from Java what it does uses the other modules. */
module dev.lapwright.cli {
    requires com.samskivert.jmustache;
    requires dev.lapwright.charts;
    requires dev.lapwright.core;
    requires dev.lapwright.demo;
    requires dev.lapwright.shared;
    requires info.picocli;
    requires jdk.httpserver;

    opens dev.lapwright.cli to
            info.picocli;
    opens dev.lapwright.cli.bench to
            info.picocli;
    opens dev.lapwright.cli.brief to
            info.picocli;
    opens dev.lapwright.cli.document to
            info.picocli;
    opens dev.lapwright.cli.option to
            info.picocli;
    opens dev.lapwright.cli.output to
            info.picocli;
    opens dev.lapwright.cli.page to
            com.samskivert.jmustache;
    opens dev.lapwright.cli.study to
            info.picocli;
}
