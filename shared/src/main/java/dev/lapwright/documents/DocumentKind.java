package dev.lapwright.documents;

/** The kinds of document. */
public enum DocumentKind {
    /** A car with its adjustments. */
    CAR("car", "cars"),
    /** Settings for a car's adjustments. */
    SETUP("setup", "setups"),
    /** A circuit or an open run. */
    CIRCUIT("circuit", "circuits"),
    /** The day: air, wind and grip. */
    CONDITIONS("conditions", "conditions"),
    /** A line driven along a circuit or an open run. */
    LINE("line", "lines");

    /** Name of the field that says what a document or a result is, the first of each. */
    public static final String MARK = "lapwright";

    private final String word;
    private final String folder;

    DocumentKind(String word, String folder) {
        this.word = word;
        this.folder = folder;
    }

    /** As written in a document, before its version: {@code car} in {@code "lapwright": "car/1"}. */
    public String word() {
        return word;
    }

    /** Folder of the demo documents of this kind, and the plural for people. */
    public String folder() {
        return folder;
    }

    /** What the field {@code lapwright} of such a document holds: its kind and the version of its format. */
    public String mark() {
        return word + "/1";
    }
}
