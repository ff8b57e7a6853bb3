package dev.lapwright.cli;

import java.util.Map;

/** What a document contains, for people, for machines and, of a circuit, as a picture. */
interface Sheet {
    /** Prints it. */
    void print(Console console);

    /** The same for JSON. */
    Map<String, Object> tree();

    /** Draws it as the kind of image that the file's name ends in. */
    default byte[] picture(String fileName) {
        throw new UnsupportedOperationException("only a circuit has a picture");
    }
}
