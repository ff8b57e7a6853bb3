package dev.lapwright.documents;

/** Kinds of line by what was sought: the road's own path, the least curvature, the least time. */
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
