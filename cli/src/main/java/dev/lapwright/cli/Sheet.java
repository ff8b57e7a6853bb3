package dev.lapwright.cli;

import java.util.Map;

/** What a document contains, for people and for machines. */
interface Sheet {
    /** Prints it. */
    void print(Console console);

    /** The same for JSON. */
    Map<String, Object> tree();
}
