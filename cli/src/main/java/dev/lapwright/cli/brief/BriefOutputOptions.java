package dev.lapwright.cli.brief;

import picocli.CommandLine.Option;

/** Options that say where a brief is written. */
public final class BriefOutputOptions {
    @Option(
            names = "--out",
            paramLabel = "FILE|FOLDER",
            description = "The page, ending in .html; the same as JSON goes beside it. Or a folder for both. Without it"
                    + " brief-CAR-CIRCUIT.html in this folder.")
    public String out;

    @Option(names = "--json", description = "Also prints the result for machines, as JSON.")
    public boolean json;

    @Option(names = "--force", description = "Lets existing files be overwritten.")
    public boolean force;
}
