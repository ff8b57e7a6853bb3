package dev.lapwright.samples;

import dev.lapwright.files.ColumnChoice;
import dev.lapwright.text.CsvTable;
import dev.lapwright.text.Excerpt;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.TextPlace;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVRecord;

/** Headings of a survey or a logged lap understood: which column holds what, in which unit. */
public final class SampleHeader {
    /** @param unitSaid whether the file or the user named the unit, so that it is not merely assumed */
    public record Place(int index, String heading, String unit, double factor, boolean unitSaid) {}

    private final Map<SampleColumn, Place> places = new EnumMap<>(SampleColumn.class);
    private final List<String> headings;

    /**
     * Reads a row of headings; faults are gathered.
     *
     * @param wanted what is looked for; other columns are passed over
     */
    public SampleHeader(CsvTable.Row header, List<ColumnChoice> choices, Set<SampleColumn> wanted, FaultList faults) {
        CSVRecord row = header.values();
        TextPlace line = header.line();
        headings = row.toList();
        for (ColumnChoice choice : choices) {
            SampleColumn column = SampleColumn.named(choice.column());
            int index = index(row, choice.heading());
            if (!wanted.contains(column)) {
                faults.form(line, column.title(), "it is not read here", "leave this choice out");
            } else if (index < 0) {
                faults.form(
                        line,
                        column.title(),
                        "no column is headed '" + choice.heading() + "'",
                        "the headings are: " + String.join(", ", row.toList()));
            } else if (places.containsKey(column)) {
                faults.form(line, column.title(), "it is chosen twice", "choose one column");
            } else {
                place(
                        column,
                        index,
                        choice.heading(),
                        choice.unit().isEmpty() ? unitIn(choice.heading(), column) : choice.unit());
            }
        }
        Map<SampleColumn, Integer> seen = new EnumMap<>(SampleColumn.class);
        for (int i = 0; i < row.size(); i++) {
            SampleColumn.Heading heading = SampleColumn.of(row.get(i));
            if (heading == null
                    || !wanted.contains(heading.column())
                    || isChosen(choices, heading.column(), row.get(i))) {
                continue;
            }
            Integer other = seen.put(heading.column(), i);
            if (other != null) {
                String title = heading.column().title();
                faults.form(
                        line,
                        title,
                        "two columns have this name: '" + Excerpt.of(row.get(other)) + "' and '"
                                + Excerpt.of(row.get(i)) + "'",
                        "keep one, or choose it, as in --column \"" + title + "=" + Excerpt.of(row.get(i)) + "\"");
            }
            if (!heading.unknown().isEmpty()) {
                refuseUnit(heading.column(), heading.unknown(), row.get(i), line, faults);
            }
            place(heading.column(), i, row.get(i), heading.unit());
        }
    }

    private static void refuseUnit(SampleColumn column, String unit, String heading, TextPlace line, FaultList faults) {
        List<String> units = column.units();
        faults.form(
                line,
                column.title(),
                "'" + Excerpt.of(unit) + "' is no unit that is known for it",
                units.isEmpty()
                        ? "leave the unit out"
                        : "use one of: " + String.join(", ", units) + "; or say it, as in --column \"" + column.title()
                                + "=" + Excerpt.of(heading) + ":" + units.get(0) + "\"");
    }

    /** The unit that a chosen heading names, as in Pace [km/h]; empty if there is none. */
    private static String unitIn(String text, SampleColumn column) {
        SampleColumn.Heading heading = SampleColumn.of(text);
        if (heading != null && heading.column() == column) {
            return heading.unit();
        }
        int open = Math.max(text.lastIndexOf('('), text.lastIndexOf('['));
        String unit = open < 0
                ? ""
                : text.substring(open + 1).replaceAll("[)\\]].*$", "").trim();
        return !unit.isEmpty() && column.knows(unit) ? unit : "";
    }

    private boolean isChosen(List<ColumnChoice> choices, SampleColumn column, String heading) {
        return choices.stream()
                .anyMatch(
                        c -> c.heading().equalsIgnoreCase(heading.trim()) || SampleColumn.named(c.column()) == column);
    }

    private static int index(CSVRecord row, String heading) {
        for (int i = 0; i < row.size(); i++) {
            if (row.get(i).trim().equalsIgnoreCase(heading)) {
                return i;
            }
        }
        return -1;
    }

    private void place(SampleColumn column, int index, String heading, String unit) {
        String known = unit.isEmpty() ? column.assumedUnit() : unit;
        places.put(column, new Place(index, heading.trim(), known, column.factor(known), !unit.isEmpty()));
    }

    public boolean has(SampleColumn... columns) {
        for (SampleColumn column : columns) {
            if (!places.containsKey(column)) {
                return false;
            }
        }
        return true;
    }

    /** A cell of a row; empty where the file has no such column. */
    public String text(SampleColumn column, CsvTable.Row row) {
        Place place = places.get(column);
        return place == null ? "" : row.text(place.index());
    }

    public Place place(SampleColumn column) {
        return places.get(column);
    }

    /** Headings of columns that were taken for nothing, in order; blank ones aside. */
    public List<String> notTaken(CsvTable.Row header) {
        List<String> left = new ArrayList<>();
        for (int i = 0; i < header.values().size(); i++) {
            int at = i;
            String heading = header.values().get(i).trim();
            if (!heading.isEmpty() && places.values().stream().noneMatch(place -> place.index() == at)) {
                left.add(heading);
            }
        }
        return left;
    }

    public boolean isSurvey() {
        return has(SampleColumn.X, SampleColumn.Y) || has(SampleColumn.LONGITUDE, SampleColumn.LATITUDE);
    }

    public boolean isDrivenLap() {
        return has(SampleColumn.SPEED) && (has(SampleColumn.DISTANCE) || has(SampleColumn.TIME));
    }

    public boolean isLog() {
        return has(SampleColumn.SPEED, SampleColumn.LATERAL_ACCELERATION)
                && (has(SampleColumn.DISTANCE) || has(SampleColumn.TIME));
    }

    /** Takes the units from a row that holds nothing but units, as loggers write below the headings; false if it does not. */
    public boolean takeUnits(CsvTable.Row row, FaultList faults) {
        boolean any = false;
        boolean numbers = false;
        List<Map.Entry<SampleColumn, Place>> unknown = new ArrayList<>();
        Map<SampleColumn, Place> read = new EnumMap<>(SampleColumn.class);
        for (Map.Entry<SampleColumn, Place> entry : places.entrySet()) {
            Place place = entry.getValue();
            String unit =
                    row.text(place.index()).replaceAll("[()\\[\\]]|^[-#]$", "").trim();
            any = any || !unit.isEmpty();
            numbers |= unit.matches("[-+]?[0-9.,:].*");
            if (!unit.isEmpty() && !entry.getKey().knows(unit)) {
                unknown.add(entry);
                continue;
            }
            read.put(
                    entry.getKey(),
                    unit.isEmpty()
                            ? place
                            : new Place(
                                    place.index(),
                                    place.heading(),
                                    unit,
                                    entry.getKey().factor(unit),
                                    true));
        }
        if (numbers || !any) {
            return false;
        }
        for (Map.Entry<SampleColumn, Place> entry : unknown) {
            Place place = entry.getValue();
            refuseUnit(entry.getKey(), row.text(place.index()), place.heading(), row.line(), faults);
        }
        places.putAll(read);
        return true;
    }

    /** Headings of the columns that hold none of these. */
    public List<String> passedOver(List<SampleColumn> columns) {
        List<String> passed = new ArrayList<>();
        for (int i = 0; i < headings.size(); i++) {
            int index = i;
            boolean taken =
                    columns.stream().anyMatch(c -> has(c) && places.get(c).index() == index);
            if (!taken && !headings.get(i).isBlank()) {
                passed.add(Excerpt.of(headings.get(i)));
            }
        }
        return passed;
    }

    /** Says which heading was taken for what, of these columns as far as they are there. */
    public String said(List<SampleColumn> columns) {
        return said(columns, Map.of());
    }

    /** The same where units may have been told by the values. */
    public String said(List<SampleColumn> columns, Map<SampleColumn, String> told) {
        List<String> said = new ArrayList<>();
        for (SampleColumn column : columns) {
            Place place = places.get(column);
            if (place != null) {
                String assumed = place.unitSaid() || place.unit().isEmpty() ? "" : " (assumed)";
                String unit = told.getOrDefault(column, place.unit() + assumed);
                said.add(column.title() + " from '" + Excerpt.of(place.heading()) + "'"
                        + (unit.isEmpty() ? "" : " in " + unit));
            }
        }
        return String.join("; ", said);
    }
}
