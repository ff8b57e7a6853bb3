package dev.lapwright.cli.option;

import picocli.CommandLine.Option;

/** Option {@code --help}, which every command has. */
public final class HelpOption {
    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Shows this help.")
    public boolean help;
}
