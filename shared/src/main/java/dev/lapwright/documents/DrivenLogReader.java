package dev.lapwright.documents;

import java.util.ArrayList;
import java.util.List;

/** Reads one log of driven laps. */
final class DrivenLogReader {
    private static final String REMEDY = "begin the file with a line such as lap,distance,speed,throttle,brake,gear";
    private static final int HEADINGS_SHOWN = 40;
    private static final List<CsvColumn> OPTIONAL = List.of(
            CsvColumn.THROTTLE,
            CsvColumn.BRAKE,
            CsvColumn.GEAR,
            CsvColumn.LONGITUDINAL_ACCELERATION,
            CsvColumn.LATERAL_ACCELERATION);

    private final DocumentSource source;
    private final List<ColumnChoice> choices;
    private final Faults faults;
    private final List<String> remarks = new ArrayList<>();

    DrivenLogReader(DocumentSource source, List<ColumnChoice> choices) {
        this.source = source;
        this.choices = choices;
        faults = new Faults(source.name());
    }

    DrivenLog log() {
        List<CsvRow> rows = CsvTable.rows(source, REMEDY);
        int at = headerAt(rows);
        CsvHeader header = new CsvHeader(rows.get(at), choices, CsvColumn.OF_DRIVEN_LAPS, faults);
        faults.throwIfAny();
        checkHeader(header, rows.get(at));
        int first = at + 1;
        if (first < rows.size() && header.takeUnits(rows.get(first))) {
            first++;
        }
        List<CsvRow> values = samples(header, rows.get(at), rows.subList(first, rows.size()));
        DrivenChannels channels =
                DrivenChannels.of(source.name(), header, new CsvRows(header, values, faults), remarks);
        List<DrivenLogLap> laps = new DrivenLapCutter(source.name(), channels, remarks).laps();
        return new DrivenLog(source.name(), laps, said(header, channels), remarks);
    }

    /** The first row that names what is needed, or else the first with the most headings that are known. */
    private int headerAt(List<CsvRow> rows) {
        int best = 0;
        long most = 0;
        for (int i = 0; i < Math.min(CsvTable.PREAMBLE, rows.size()); i++) {
            CsvHeader header = new CsvHeader(rows.get(i), choices, CsvColumn.OF_DRIVEN_LAPS, new Faults(source.name()));
            long known = CsvColumn.OF_DRIVEN_LAPS.stream().filter(header::has).count();
            if (header.isDrivenLap()) {
                return i;
            }
            if (known > most) {
                best = i;
                most = known;
            }
        }
        return best;
    }

    private void checkHeader(CsvHeader header, CsvRow row) {
        List<String> missing = new ArrayList<>();
        if (!header.has(CsvColumn.SPEED)) {
            missing.add(CsvColumn.SPEED.title());
        }
        if (!header.has(CsvColumn.DISTANCE) && !header.has(CsvColumn.TIME)) {
            missing.add("distance or time");
        }
        if (!missing.isEmpty()) {
            faults.form(
                    row.line(),
                    "",
                    "no heading is known for " + String.join(" and ", missing) + "; the headings are: " + headings(row),
                    "head the column so, or say which it is, as in --column speed=HEADING:km/h");
            faults.throwIfAny();
        }
    }

    private static String headings(CsvRow row) {
        List<String> shown = new ArrayList<>();
        row.values().stream().limit(HEADINGS_SHOWN).map(Node.Text::shown).forEach(shown::add);
        return String.join(", ", shown) + (row.values().size() > HEADINGS_SHOWN ? ", …" : "");
    }

    /** The rows that hold a sample; those in which a slower channel alone has a value are passed over. */
    private List<CsvRow> samples(CsvHeader header, CsvRow headings, List<CsvRow> rows) {
        List<CsvRow> samples = new ArrayList<>();
        CsvColumn place = header.has(CsvColumn.DISTANCE) ? CsvColumn.DISTANCE : CsvColumn.TIME;
        for (CsvRow row : rows) {
            checkWidth(row, headings.values().size());
            boolean whole = !header.text(CsvColumn.SPEED, row).isEmpty()
                    && !header.text(place, row).isEmpty()
                    && !(header.has(CsvColumn.TIME)
                            && header.text(CsvColumn.TIME, row).isEmpty());
            if (whole) {
                samples.add(row);
            }
        }
        int passed = rows.size() - samples.size();
        if (samples.isEmpty()) {
            throw new DocumentException(source.name(), "there are headings and no samples", "log a lap");
        }
        if (passed > 0) {
            remarks.add(passed + (passed == 1 ? " row" : " rows") + " without speed, distance or time passed over.");
        }
        return samples;
    }

    private void checkWidth(CsvRow row, int width) {
        boolean wide = false;
        for (int i = width; i < row.values().size(); i++) {
            wide |= !row.text(i).isEmpty();
        }
        if (wide) {
            faults.form(
                    row.line(),
                    "",
                    "it has " + row.values().size() + " cells under " + width
                            + " headings, which looks like decimal commas between commas",
                    "write decimal points, or part the cells with semicolons");
            faults.throwIfAny();
        }
    }

    private static String said(CsvHeader header, DrivenChannels channels) {
        List<String> missing = OPTIONAL.stream()
                .filter(column -> !header.has(column))
                .map(CsvColumn::title)
                .toList();
        String said = header.said(List.copyOf(CsvColumn.OF_DRIVEN_LAPS), channels.units());
        return said + (missing.isEmpty() ? "" : "; not logged: " + String.join(", ", missing));
    }
}
