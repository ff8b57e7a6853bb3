package dev.lapwright.cli.option;

import picocli.CommandLine.Option;

/** Help, as every command has it. */
public final class HelpOption {
    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Shows this help.")
    public boolean help;
}
