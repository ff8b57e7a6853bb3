package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** Help, as every command has it. */
final class HelpOption {
    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Shows this help.")
    boolean help;
}
