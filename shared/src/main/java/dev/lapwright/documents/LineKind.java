package dev.lapwright.documents;

/** What a line was looked for as. */
public enum LineKind {
    /** The road's own path. */
    MIDDLE("middle"),
    /** The least bending. */
    SMOOTHEST("smoothest"),
    /** The least time. */
    FASTEST("fastest");

    private final String word;

    LineKind(String word) {
        this.word = word;
    }

    /** As written in a document and on the command line. */
    public String word() {
        return word;
    }
}
