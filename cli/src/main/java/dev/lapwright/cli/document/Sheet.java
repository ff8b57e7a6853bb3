package dev.lapwright.cli.document;

import dev.lapwright.cli.output.Console;
import java.util.Map;

/** What a document contains, for people and for machines. */
public interface Sheet {
    /** Prints it. */
    void print(Console console);

    /** The same for JSON. */
    Map<String, Object> tree();
}
