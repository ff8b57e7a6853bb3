package dev.lapwright.documents;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Which column of a lap log holds what. */
final class LapLogHeader {
    private record Place(int index, String heading, String unit) {}

    private final Map<LapLogColumn, Place> places = new EnumMap<>(LapLogColumn.class);
    private final int width;

    LapLogHeader(CsvRow header, Faults faults) {
        width = header.values().size();
        for (int i = 0; i < width; i++) {
            String text = header.text(i);
            LapLogColumn.Heading heading = LapLogColumn.of(text);
            if (heading == null) {
                continue;
            }
            if (places.containsKey(heading.column())) {
                faults.form(
                        header.line(),
                        heading.column().title(),
                        "'" + Node.Text.shown(places.get(heading.column()).heading()) + "' and '"
                                + Node.Text.shown(text) + "' both look like it",
                        "keep one, or give the other another name");
                continue;
            }
            if (heading.column() == LapLogColumn.TIME && !LapTimeText.knows(heading.unit())) {
                faults.form(
                        header.line(),
                        "time",
                        "'" + Node.Text.shown(heading.unit()) + "' is no unit of a lap time",
                        "use s, ms or min");
                continue;
            }
            places.put(heading.column(), new Place(i, text.trim(), heading.unit()));
        }
    }

    boolean has(LapLogColumn column) {
        return places.containsKey(column);
    }

    /** How many columns the file has. */
    int width() {
        return width;
    }

    /** A cell of a row; empty where the file has no such column. */
    String text(LapLogColumn column, CsvRow row) {
        Place place = places.get(column);
        return place == null ? "" : row.text(place.index()).trim();
    }

    /** Unit of the times; empty if none is said. */
    String unit() {
        return places.get(LapLogColumn.TIME).unit();
    }

    /** Says which heading was taken for what. */
    String said(boolean clock, boolean blankSetups) {
        List<String> said = new ArrayList<>();
        for (LapLogColumn column : LapLogColumn.values()) {
            Place place = places.get(column);
            if (place == null) {
                if (column == LapLogColumn.LAP) {
                    said.add("lap numbers counted, for there is no such column");
                } else if (column == LapLogColumn.SETUP) {
                    said.add("no column for the setup: all laps are taken for one");
                }
                continue;
            }
            String how = "";
            if (column == LapLogColumn.TIME) {
                how = clock ? " in min:s" : place.unit().isEmpty() ? " in s (assumed)" : " in " + place.unit();
            } else if (column == LapLogColumn.SETUP && blankSetups) {
                how = ", an empty cell like the one above";
            }
            said.add(column.title() + " from '" + Node.Text.shown(place.heading()) + "'" + how);
        }
        return String.join("; ", said);
    }
}
