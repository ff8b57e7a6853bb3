package dev.lapwright.cli;

import dev.lapwright.cli.option.CacheFolder;
import dev.lapwright.cli.output.Console;

/** Entry point of the process. */
public final class Main {
    private Main() {}

    /** Runs the command with the process's own streams and ends it with the exit code. */
    public static void main(String[] arguments) {
        Console console = Console.ofProcess(CacheFolder.ofProcess());
        System.exit(Lapwright.run(console, arguments));
    }
}
