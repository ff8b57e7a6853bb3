package dev.lapwright.documents;

import java.util.List;
import java.util.Locale;

/** What a column of a lap log may hold, and the headings that say so. */
enum LapLogColumn {
    LAP("lap", "lap", "laps", "lapnumber", "lapno", "lapnr", "number", "no", "nr", "n", "runde", "tour"),
    TIME("time", "time", "laptime", "laptimes", "times", "t", "seconds", "rundenzeit", "zeit", "temps"),
    SETUP(
            "setup",
            "setup",
            "setups",
            "configuration",
            "config",
            "variant",
            "setting",
            "settings",
            "specification",
            "spec"),
    RUN("run", "run", "runno", "stint", "outing"),
    FLAG("flag", "flag", "flags", "status", "type", "laptype", "mark");

    private final String title;
    private final List<String> headings;

    LapLogColumn(String title, String... headings) {
        this.title = title;
        this.headings = List.of(headings);
    }

    String title() {
        return title;
    }

    /**
     * A heading understood.
     *
     * @param unit in brackets or behind an underscore; empty if there is none
     */
    record Heading(LapLogColumn column, String unit) {}

    /** What a heading says, letter case, spaces and signs aside; null if it is not known. */
    static Heading of(String text) {
        String heading = text.replaceAll("([a-z])([A-Z])", "$1 $2")
                .toLowerCase(Locale.ROOT)
                .trim();
        String unit =
                heading.replaceAll("^[^(\\[]*[(\\[]([^)\\]]*).*$|^.*$", "$1").trim();
        String name = letters(heading.replaceAll("[(\\[].*$", ""));
        LapLogColumn whole = byHeading(name.isEmpty() && heading.startsWith("#") ? "no" : name);
        if (whole != null) {
            return new Heading(whole, unit);
        }
        int last = Math.max(heading.lastIndexOf('_'), heading.lastIndexOf(' '));
        LapLogColumn before = last > 0 ? byHeading(letters(heading.substring(0, last))) : null;
        return before == TIME && LapTimeText.knows(heading.substring(last + 1))
                ? new Heading(before, heading.substring(last + 1))
                : null;
    }

    private static LapLogColumn byHeading(String name) {
        for (LapLogColumn column : values()) {
            if (column.headings.contains(name)) {
                return column;
            }
        }
        return null;
    }

    private static String letters(String text) {
        return text.replaceAll("[^\\p{L}]", "");
    }
}
