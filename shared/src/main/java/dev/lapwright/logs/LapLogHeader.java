package dev.lapwright.logs;

import dev.lapwright.text.CsvTable;
import dev.lapwright.text.Excerpt;
import dev.lapwright.text.FaultList;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Headings of a lap log understood: which column holds what. */
final class LapLogHeader {
    private record Place(int index, String heading, String unit) {}

    private final Map<Column, Place> places = new EnumMap<>(Column.class);
    private final int width;

    LapLogHeader(CsvTable.Row header, FaultList faults) {
        width = header.values().size();
        for (int i = 0; i < width; i++) {
            String text = header.text(i);
            Column.Heading heading = Column.of(text);
            if (heading == null) {
                continue;
            }
            if (places.containsKey(heading.column())) {
                faults.form(
                        header.line(),
                        heading.column().title(),
                        "'" + Excerpt.of(places.get(heading.column()).heading()) + "' and '" + Excerpt.of(text)
                                + "' both look like it",
                        "keep one, or give the other another name");
                continue;
            }
            if (heading.column() == Column.TIME && !LapTimeText.knows(heading.unit())) {
                faults.form(
                        header.line(),
                        "time",
                        "'" + Excerpt.of(heading.unit()) + "' is no unit of a lap time",
                        "use s, ms or min");
                continue;
            }
            places.put(heading.column(), new Place(i, text.trim(), heading.unit()));
        }
    }

    boolean has(Column column) {
        return places.containsKey(column);
    }

    /** How many columns the file has. */
    int width() {
        return width;
    }

    /** A cell of a row; empty where the file has no such column. */
    String text(Column column, CsvTable.Row row) {
        Place place = places.get(column);
        return place == null ? "" : row.text(place.index()).trim();
    }

    /** Unit of the times; empty if none is said. */
    String unit() {
        return places.get(Column.TIME).unit();
    }

    /** Says which heading was taken for what. */
    String said(boolean clock, boolean blankSetups) {
        List<String> said = new ArrayList<>();
        for (Column column : Column.values()) {
            Place place = places.get(column);
            if (place == null) {
                if (column == Column.LAP) {
                    said.add("lap numbers counted, for there is no such column");
                } else if (column == Column.SETUP) {
                    said.add("no column for the setup: all laps are taken for one");
                }
                continue;
            }
            String how = "";
            if (column == Column.TIME) {
                how = clock ? " in min:s" : place.unit().isEmpty() ? " in s (assumed)" : " in " + place.unit();
            } else if (column == Column.SETUP && blankSetups) {
                how = ", an empty cell like the one above";
            }
            said.add(column.title() + " from '" + Excerpt.of(place.heading()) + "'" + how);
        }
        return String.join("; ", said);
    }

    /** What a column of a lap log may hold, and the headings that say so. */
    enum Column {
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

        Column(String title, String... headings) {
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
        record Heading(Column column, String unit) {}

        /** What a heading says, letter case, spaces and signs aside; null if it is not known. */
        static Heading of(String text) {
            String heading = text.replaceAll("([a-z])([A-Z])", "$1 $2")
                    .toLowerCase(Locale.ROOT)
                    .trim();
            String unit = heading.replaceAll("^[^(\\[]*[(\\[]([^)\\]]*).*$|^.*$", "$1")
                    .trim();
            String name = letters(heading.replaceAll("[(\\[].*$", ""));
            Column whole = byHeading(name.isEmpty() && heading.startsWith("#") ? "no" : name);
            if (whole != null) {
                return new Heading(whole, unit);
            }
            int last = Math.max(heading.lastIndexOf('_'), heading.lastIndexOf(' '));
            Column before = last > 0 ? byHeading(letters(heading.substring(0, last))) : null;
            return before == TIME && LapTimeText.knows(heading.substring(last + 1))
                    ? new Heading(before, heading.substring(last + 1))
                    : null;
        }

        private static Column byHeading(String name) {
            for (Column column : values()) {
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
}
