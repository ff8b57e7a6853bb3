package dev.lapwright.logs;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.ColumnChoice;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.samples.SampleColumn;
import dev.lapwright.samples.SampleHeader;
import dev.lapwright.samples.SampleRows;
import dev.lapwright.sense.Oddity;
import dev.lapwright.sense.SampleOddities;
import dev.lapwright.text.CsvTable;
import dev.lapwright.text.Excerpt;
import dev.lapwright.text.FaultList;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Reader of logs of driven laps: comma-separated values under headings in any order. Speed and distance or time must be there;
 * throttle, brake, gear, longitudinal and lateral acceleration and the lap's number may be.
 */
public final class DrivenLogs {
    private static final String REMEDY = "begin the file with a line such as lap,distance,speed,throttle,brake,gear";
    private static final int HEADINGS_SHOWN = 40;
    private static final List<SampleColumn> OPTIONAL = List.of(
            SampleColumn.THROTTLE,
            SampleColumn.BRAKE,
            SampleColumn.GEAR,
            SampleColumn.LONGITUDINAL_ACCELERATION,
            SampleColumn.LATERAL_ACCELERATION);

    private final DocumentSource source;
    private final List<ColumnChoice> choices;
    private final FaultList faults;
    private final List<String> remarks = new ArrayList<>();

    private DrivenLogs(DocumentSource source, List<ColumnChoice> choices) {
        this.source = source;
        this.choices = choices;
        faults = new FaultList(source.name());
    }

    /**
     * The text of a log, unchecked: an existing file, or else the demo log of that name.
     *
     * @throws DocumentException if there is neither
     */
    public static DocumentSource find(String nameOrFile) {
        return LapLogs.find(nameOrFile);
    }

    /**
     * The laps in a text.
     *
     * @param columns which column holds what, where the headings do not tell
     * @throws DocumentException with all that is wrong with it
     */
    public static DrivenLog read(DocumentSource source, List<ColumnChoice> columns) {
        return new DrivenLogs(source, columns).log();
    }

    /**
     * The column that a person chooses by {@code speed=GPS Geschw.} or {@code speed=GPS Geschw.:km/h}.
     *
     * @throws InvalidValueException if there is no equals sign, the column or the unit is not known
     */
    public static ColumnChoice column(String text) {
        return SampleColumn.choice(text);
    }

    /**
     * What is odd about the rows of a log: its clock, distances and speeds, each with its line.
     *
     * @throws DocumentException with all that is wrong with it
     */
    public static List<Oddity> oddities(DocumentSource source, List<ColumnChoice> columns) {
        Read read = new DrivenLogs(source, columns).read();
        DrivenChannels channels = read.channels;
        return SampleOddities.ofLog(
                channels.time(),
                channels.distance(),
                channels.speed(),
                row -> "line " + read.rows.line(row).line());
    }

    /** Headings, rows and what they hold. */
    private record Read(SampleHeader header, SampleRows rows, DrivenChannels channels) {}

    private DrivenLog log() {
        Read read = read();
        List<DrivenLog.Lap> laps = new DrivenLapSplitter(source.name(), read.channels, remarks).laps();
        return new DrivenLog(source.name(), laps, said(read.header, read.channels), remarks);
    }

    private Read read() {
        List<CsvTable.Row> rows = CsvTable.rows(source, REMEDY);
        int at = headerAt(rows);
        SampleHeader header = new SampleHeader(rows.get(at), choices, SampleColumn.OF_DRIVEN_LAPS, faults);
        faults.throwIfAny();
        checkHeader(header, rows.get(at));
        List<String> left = header.notTaken(rows.get(at));
        if (!left.isEmpty()) {
            remarks.add("Headings not understood, their columns not used: "
                    + left.stream()
                            .limit(HEADINGS_SHOWN)
                            .map(heading -> "'" + Excerpt.of(heading) + "'")
                            .collect(Collectors.joining(", "))
                    + (left.size() > HEADINGS_SHOWN ? ", …" : "") + ".");
        }
        int first = at + 1;
        if (first < rows.size() && header.takeUnits(rows.get(first), faults)) {
            first++;
        }
        List<CsvTable.Row> values = samples(header, rows.get(at), rows.subList(first, rows.size()));
        SampleRows samples = new SampleRows(header, values, faults);
        return new Read(header, samples, DrivenChannels.of(source.name(), header, samples, remarks));
    }

    /** The first row that names what is needed, or else the first with the most headings that are known. */
    private int headerAt(List<CsvTable.Row> rows) {
        int best = 0;
        long most = 0;
        for (int i = 0; i < Math.min(CsvTable.PREAMBLE, rows.size()); i++) {
            SampleHeader header =
                    new SampleHeader(rows.get(i), choices, SampleColumn.OF_DRIVEN_LAPS, new FaultList(source.name()));
            long known =
                    SampleColumn.OF_DRIVEN_LAPS.stream().filter(header::has).count();
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

    private void checkHeader(SampleHeader header, CsvTable.Row row) {
        List<String> missing = new ArrayList<>();
        if (!header.has(SampleColumn.SPEED)) {
            missing.add(SampleColumn.SPEED.title());
        }
        if (!header.has(SampleColumn.DISTANCE) && !header.has(SampleColumn.TIME)) {
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

    private static String headings(CsvTable.Row row) {
        List<String> shown = new ArrayList<>();
        row.values().stream().limit(HEADINGS_SHOWN).map(Excerpt::of).forEach(shown::add);
        return String.join(", ", shown) + (row.values().size() > HEADINGS_SHOWN ? ", …" : "");
    }

    /** The rows that hold a sample; those in which a slower channel alone has a value are passed over. */
    private List<CsvTable.Row> samples(SampleHeader header, CsvTable.Row headings, List<CsvTable.Row> rows) {
        List<CsvTable.Row> samples = new ArrayList<>();
        SampleColumn place = header.has(SampleColumn.DISTANCE) ? SampleColumn.DISTANCE : SampleColumn.TIME;
        for (CsvTable.Row row : rows) {
            checkWidth(row, headings.values().size());
            boolean whole = !header.text(SampleColumn.SPEED, row).isEmpty()
                    && !header.text(place, row).isEmpty()
                    && !(header.has(SampleColumn.TIME)
                            && header.text(SampleColumn.TIME, row).isEmpty());
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

    private void checkWidth(CsvTable.Row row, int width) {
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

    private static String said(SampleHeader header, DrivenChannels channels) {
        List<String> missing = OPTIONAL.stream()
                .filter(column -> !header.has(column))
                .map(SampleColumn::title)
                .toList();
        String said = header.said(List.copyOf(SampleColumn.OF_DRIVEN_LAPS), channels.units());
        return said + (missing.isEmpty() ? "" : "; not logged: " + String.join(", ", missing));
    }
}
